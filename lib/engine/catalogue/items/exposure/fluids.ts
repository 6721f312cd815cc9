import { notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, checkSeen, findUnstated } from '../../terms'

const FLUIDS = ['oils', 'coolants', 'cleaners', 'light'] as const

export const fluids = defineItem({
  id: 'fluids',
  section: 'materials',
  severity: 'minor',
  question: 'Which fluids and light reach film and adhesive, and do these withstand them?',
  titles: {
    meets: 'Film and adhesive withstand what reaches them',
    fails: 'Something reaches a material that it attacks',
  },
  appliesTo: { needs: ['layers'], says: 'parts that meet fluids or light' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'brief.exposure.oils',
    'brief.exposure.coolants',
    'brief.exposure.cleaners',
    'brief.exposure.light',
    'brief.exposure.fluidsWithstood',
    'construction.layers.*.materialId',
    'materials',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  onlyWithProfile: true,
  monotone: [{ path: 'brief.exposure.fluidsWithstood', worse: 'no' }],
  check: (context) => {
    const { exposure } = context.design.brief
    const missing = askFor(findUnstated(context, 'exposure', FLUIDS))
    if (FLUIDS.some((fluid) => exposure[fluid] !== null && exposure[fluid] !== 'none')) {
      return [
        ...missing,
        checkSeen(context, 'exposure', 'fluidsWithstood', {
          whenRight: 'Film and adhesive withstand what reaches them.',
          whenWrong: 'Film or adhesive does not withstand what reaches it.',
          sourceKey: 'commonPractice',
        }),
      ]
    }
    return missing.length > 0 ? missing : [notApplicable('no fluid and no light reaches the part')]
  },
})
