import { checkObserved, listBends, notComputedSection, ROUTING_PLACE } from '../../checks'
import { notApplicable } from '../../decide'
import { defineItem } from '../../define-item'

export const layerStagger = defineItem({
  id: 'layer-stagger',
  section: 'geometry',
  severity: 'minor',
  question: 'Are conductors on adjacent layers staggered where they bend?',
  titles: { meets: 'Conductors are staggered in bends', fails: 'Conductors lie one above the other in a bend' },
  appliesTo: { needs: ['bends', 'several-conductor-layers'], says: 'bends with more than one conductor layer' },
  limits: [],
  sourceKeys: ['guideCircuitConstruction'],
  restsOn: [
    'features.routing.staggeredOnAdjacentLayers',
    'construction.layers',
    'construction.zones',
    'bends.*.zoneId',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.routing.staggeredOnAdjacentLayers', worse: 'no' }],
  check: (context) => {
    const stacked = listBends(context).filter(({ result }) => result.conductors.length > 1)
    if (stacked.length === 0) {
      const unknown = listBends(context).flatMap((bend) => notComputedSection(bend) ?? [])
      return unknown.length > 0 ? unknown : [notApplicable('no bend has more than one conductor layer')]
    }
    const names = stacked.map(({ bend }) => bend.name).join(', ')
    return [
      checkObserved({
        observed: context.design.features.routing.staggeredOnAdjacentLayers,
        wanted: true,
        path: ['features', 'routing', 'staggeredOnAdjacentLayers'],
        label: 'whether conductors on adjacent layers are staggered',
        whenRight: `Staggered in ${names}.`,
        whenWrong: `Not staggered in ${names}.`,
        places: [ROUTING_PLACE, ...stacked.map(({ place }) => place)],
        sourceKey: 'guideCircuitConstruction',
      }),
    ]
  },
})
