import type { EvaluationContext } from '../../../context'
import type { Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { checkObserved, listBends, notComputedSection, placeOf, ROUTING_PLACE } from '../../checks'
import { decide, makeSourceLimit, notApplicable } from '../../decide'
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
    'artwork',
    'plan',
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
    const over = context.drawing.measures?.routes.stacked ?? []
    if (over.length > 0) return over.map((pair) => failStacked(context, pair))
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

type Stacked = NonNullable<EvaluationContext['drawing']['measures']>['routes']['stacked'][number]

/** Two routes that the plan draws over each other, with how much of the narrower one and how far. */
function failStacked(
  { design }: EvaluationContext,
  { bendId, conductorIds, shareFraction, lengthMm }: Stacked,
): Outcome {
  const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string) =>
    list.find((entry) => entry.id === id)?.name ?? id
  const bend = { id: bendId, name: nameOf(design.bends, bendId) }
  const pair = conductorIds.map((id) => ({ id, name: nameOf(design.features.conductors, id) }))
  return {
    ...decide({
      value: shareFraction * 100,
      limit: makeSourceLimit({
        key: 'stackedSharePct',
        value: 0,
        unit: 'pct',
        sense: 'at-most',
        sourceKey: 'guideCircuitConstruction',
      }),
      places: [placeOf('bend', bend), ...pair.map((conductor) => placeOf('conductor', conductor))],
      what: 'share of the narrower conductor that lies over its neighbour',
      equation: 'drawn in plan',
    }),
    summary: `In ${bend.name}, ${pair.map(({ name }) => name).join(' and ')} lie over each other: ${inSentence(shareFraction * 100, 'pct')} of the narrower one, over ${inSentence(lengthMm, 'mm')}.`,
  }
}
