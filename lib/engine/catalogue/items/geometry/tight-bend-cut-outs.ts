import { checkObserved, listBends, notComputedSection, ROUTING_PLACE } from '../../checks'
import { notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'

export const tightBendCutOuts = defineItem({
  id: 'tight-bend-cut-outs',
  section: 'geometry',
  severity: 'advice',
  question: 'Have cut-outs or slits been considered where a bend is tight and has room for them?',
  titles: { meets: 'Cut-outs were considered at tight bends', fails: 'Cut-outs were not considered at a tight bend' },
  appliesTo: { needs: ['bends'], says: 'bends tighter than the chosen ratio table asks' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [...SECTION_INPUTS, 'bends', 'features.routing.cutOutsConsideredAtTightBends'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.routing.cutOutsConsideredAtTightBends', worse: 'no' }],
  check: (context) => {
    const tight = listBends(context).filter(
      ({ result }) => result.ratio.required !== null && result.ratio.actual < result.ratio.required,
    )
    if (tight.length === 0) {
      const unknown = listBends(context).flatMap((bend) => notComputedSection(bend) ?? [])
      return unknown.length > 0 ? unknown : [notApplicable('no bend is tighter than the chosen ratio table asks')]
    }
    const names = tight.map(({ bend }) => bend.name).join(', ')
    return [
      checkObserved({
        observed: context.design.features.routing.cutOutsConsideredAtTightBends,
        wanted: true,
        path: ['features', 'routing', 'cutOutsConsideredAtTightBends'],
        label: 'whether cut-outs were considered at tight bends',
        whenRight: `Considered for ${names}.`,
        whenWrong: `Not considered for ${names}.`,
        places: [ROUTING_PLACE, ...tight.map(({ place }) => place)],
        sourceKey: 'commonPractice',
      }),
    ]
  },
})
