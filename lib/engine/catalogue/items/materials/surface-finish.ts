import { hasNickel } from '../../../design'
import { BRIEF_PLACE, checkDistanceToBend } from '../../checks'
import { cannotTell, decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const surfaceFinish = defineItem({
  id: 'surface-finish',
  section: 'materials',
  severity: 'major',
  question: 'Does the surface finish suit bending, with brittle nickel kept out of it?',
  titles: { meets: 'The finish suits the bends', fails: 'A nickel finish comes too near a bend' },
  appliesTo: { needs: ['bends'], says: 'designs with a bend' },
  limits: ['nickelToBendMm'],
  sourceKeys: ['ipc4552', 'ipc4556', 'ipc4553', 'ipc4554'],
  restsOn: ['brief.surfaceFinish', 'brief.solderedAssembly', 'bends', 'features.coverlayOpenings'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.coverlayOpenings[].nearestBend.distanceMm', worse: 'smaller' }],
  check: (context) => {
    const { surfaceFinish: finish } = context.design.brief
    if (finish === null) return [notComputed(['brief', 'surfaceFinish'], 'surface finish', [BRIEF_PLACE])]
    const openings = hasNickel(finish)
      ? checkDistanceToBend(context, { list: 'coverlayOpenings', limit: context.getLimit('nickelToBendMm') })
      : []
    if (openings.length > 0) return openings
    if (hasNickel(finish)) {
      return [
        cannotTell(
          'nickel beside the bends',
          {
            because: 'the finish holds nickel, and no coverlay opening is listed',
            decidedBy: 'list the openings with their distances from the bends',
          },
          [BRIEF_PLACE],
        ),
      ]
    }
    return [
      decide({
        value: 0,
        limit: makeNoneAllowed('nickelOpeningsNearBendsCount', 'commonPractice'),
        places: [BRIEF_PLACE],
        what: 'nickel-finished openings near bends',
        equation: 'finish and openings as listed',
        remark: 'The finish holds no nickel.',
      }),
    ]
  },
})
