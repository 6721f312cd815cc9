import { BRIEF_PLACE } from '../../checks'
import { decide, makeDesignLimit } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated } from '../../terms'

/** Grade R of MIL-PRF-50884F, 1.2.3: soldered on three times, off twice. */
const GRADE_R = { on: 3, off: 2 }

export const reworkGrade = defineItem({
  id: 'rework-grade',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is it stated how many solderings and removals a land must bear?',
  titles: { meets: 'Solderings of a land are stated', fails: 'Solderings and removals contradict each other' },
  appliesTo: { needs: ['soldering'], says: 'designs that are soldered' },
  limits: [],
  sourceKeys: ['militaryFlexRework'],
  restsOn: ['brief.acceptance.solderingsOnCount', 'brief.acceptance.solderingsOffCount', 'brief.solderedAssembly'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [{ path: 'brief.acceptance.solderingsOnCount', worse: 'smaller' }],
  check: (context) => {
    const { acceptance, solderedAssembly } = context.design.brief
    const { solderingsOnCount, solderingsOffCount } = acceptance
    if (solderedAssembly === null) return askFor([{ path: ['brief', 'solderedAssembly'], label: 'soldered assembly' }])
    if (solderingsOnCount === null || solderingsOffCount === null) {
      return askFor(findUnstated(context, 'acceptance', ['solderingsOnCount', 'solderingsOffCount']))
    }
    const isBeyond = solderingsOnCount > GRADE_R.on || solderingsOffCount > GRADE_R.off
    return [
      decide({
        value: solderingsOnCount,
        limit: makeDesignLimit({
          key: 'solderingsOnCount',
          value: solderingsOffCount + 1,
          unit: 'count',
          sense: 'at-least',
          sourceKey: 'exactArithmetic',
          name: 'one more than removals',
        }),
        places: [BRIEF_PLACE],
        what: 'solderings of a land',
        equation: 'a part comes off only where it was soldered on, and one stays',
        sourceKey: 'militaryFlexRework',
        isTyped: true,
        cautions: isBeyond
          ? [
              `More than grade R of MIL-PRF-50884F, ${GRADE_R.on} on and ${GRADE_R.off} off: a test to that grade does not show it.`,
            ]
          : [],
      }),
    ]
  },
})
