import type { EvaluationContext } from '../../../context'
import { hasNickel } from '../../../design'
import type { Outcome } from '../../../results'
import { notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'
import { askFor, checkSeen, findUnstated, makeTermOutcome } from '../../terms'

export const skinContact = defineItem({
  id: 'skin-contact',
  section: 'materials',
  severity: 'major',
  question: 'Were the materials and finish that touch the body evaluated for the time that they touch it?',
  titles: { meets: 'What touches the body was evaluated', fails: 'What touches the body is not fit for it' },
  appliesTo: { needs: ['layers'], says: 'parts that are worn on the body' },
  limits: [],
  sourceKeys: ['bodyContact', 'nickelRelease'],
  restsOn: [
    'brief.exposure.skinContact',
    'brief.exposure.touchedFace',
    'brief.exposure.openFinishCovered',
    'brief.exposure.skinMaterialsEvaluated',
    'brief.surfaceFinish',
    'features.coverlayOpenings',
    'features.pads',
    'features.none',
    'construction.layers',
    'construction.zones',
    'materials',
  ],
  decidedWhen: 'early',
  answeredBy: ['lead', 'member'],
  onlyWithProfile: true,
  monotone: [
    { path: 'brief.exposure.skinMaterialsEvaluated', worse: 'no' },
    { path: 'brief.exposure.openFinishCovered', worse: 'no' },
  ],
  check: (context) => {
    const missing = findUnstated(context, 'exposure', ['skinContact'])
    if (missing.length > 0) return askFor(missing)
    if (context.design.brief.exposure.skinContact === 'none') return [notApplicable('no face touches skin')]
    return [
      ...askFor(findUnstated(context, 'exposure', ['touchedFace'])),
      ...checkNickel(context),
      checkSeen(context, 'exposure', 'skinMaterialsEvaluated', {
        whenRight: 'The materials were evaluated for this contact.',
        whenWrong: 'The materials were not evaluated for this contact.',
        sourceKey: 'bodyContact',
      }),
    ]
  },
})

/** Gold over nickel is thin and porous: nickel beneath it may reach the skin wherever the finish is open. */
function checkNickel(context: EvaluationContext): Outcome[] {
  const { surfaceFinish, exposure } = context.design.brief
  if (surfaceFinish === null) return askFor([{ path: ['brief', 'surfaceFinish'], label: 'surface finish' }])
  if (!hasNickel(surfaceFinish)) return []
  const isShut = (['coverlayOpenings', 'pads'] as const).every((list) => readListState(list, context) === 'none')
  if (isShut) return []
  if (exposure.openFinishCovered === true) {
    return [
      checkSeen(context, 'exposure', 'openFinishCovered', {
        whenRight: 'The nickel finish is covered wherever the part is worn.',
        whenWrong: '',
        sourceKey: 'nickelRelease',
      }),
    ]
  }
  return exposure.openFinishCovered === null
    ? askFor(findUnstated(context, 'exposure', ['openFinishCovered']))
    : [makeTermOutcome('fails', 'The finish holds nickel, lies open and touches skin.', 'nickelRelease')]
}
