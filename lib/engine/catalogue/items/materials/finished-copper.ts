import type { EvaluationContext } from '../../../context'
import type { ConductorLayer } from '../../../design'
import { getOutcomeVerdict, type Outcome, type Place, type QuantityRange } from '../../../results'
import { findMinimumFinishedCopper, findStandardFoilWeight } from '../../../thickness'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { cannotTell, decide, makeSourceLimit, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

const CLASSES = { 'class-1': 1, 'class-2': 2, 'class-3': 3 } as const

/** Copper of one layer in the zones where it comes out the same. */
interface Finished {
  readonly layer: ConductorLayer
  readonly isPlated: boolean
  readonly nominalUm: number
  readonly range: QuantityRange
  readonly zones: readonly Place[]
}

export const finishedCopper = defineItem({
  id: 'finished-copper',
  section: 'materials',
  severity: 'major',
  question: 'Is enough copper left on each layer after plating and processing?',
  titles: {
    meets: 'Finished copper is thick enough for the class',
    fails: 'Finished copper is too thin for the class',
  },
  appliesTo: { needs: ['conductor-layers'], says: 'designs with a conductor layer' },
  limits: [],
  sourceKeys: ['ipc6012', 'ipc6013', 'minimumCopperRecalled'],
  restsOn: ['construction.layers', 'construction.zones', 'brief.performanceClass'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'construction.layers[].processingLossUm', worse: 'larger' }],
  check: (context) => {
    const outcomes = listFinished(context).flatMap((finished) => checkLayer(context, finished))
    return outcomes.length === 0 ? [notApplicable('no zone has copper')] : outcomes
  },
})

/** A layer that is plated in one zone and not in another is two. */
function listFinished({ design, findZoneResult, zones }: EvaluationContext): Finished[] {
  return design.construction.layers.flatMap((layer): Finished[] => {
    if (layer.kind !== 'conductor') return []
    const found = new Map<boolean, { nominalUm: number; range: QuantityRange; zones: Place[] }>()
    for (const zone of design.construction.zones) {
      const own = findZoneResult(zone.id)?.layers.find(({ layerId }) => layerId === layer.id)
      if (own === undefined || own.copper === null || own.coverageFraction === 0) continue
      const isPlated = own.copper.platingUm > 0
      const known = found.get(isPlated)
      if (known !== undefined) known.zones.push(placeOf('zone', zone))
      else {
        const range = { low: own.minUm, high: own.maxUm }
        found.set(isPlated, { nominalUm: own.nominalUm, range, zones: [placeOf('zone', zone)] })
      }
    }
    return [...found].map(([isPlated, each]) => ({
      layer,
      isPlated,
      ...each,
      // Where it is the same all over, the layer says it.
      zones: found.size === 1 && each.zones.length === zones.length ? [] : each.zones,
    }))
  })
}

/** Without a class, what holds for the strictest holds, and what fails for the kindest fails. */
function checkLayer({ design }: EvaluationContext, finished: Finished): Outcome[] {
  const { layer, isPlated, zones } = finished
  const places = [placeOf('layer', layer), ...zones]
  const what = `finished copper of ${layer.name}${isPlated ? ', plated' : ''}`
  const weightOzPerFt2 = findStandardFoilWeight(layer.thicknessUm)
  if (weightOzPerFt2 === null) {
    return [
      cannotTell(
        what,
        {
          because: `the standards have no row for a foil of ${inSentence(layer.thicknessUm, 'um')}`,
          decidedBy: 'agree the least finished copper with the fabricator',
        },
        places,
      ),
    ]
  }
  const decideFor = (performanceClass: keyof typeof CLASSES) =>
    compare(finished, places, what, weightOzPerFt2, CLASSES[performanceClass])
  const { performanceClass } = design.brief
  if (performanceClass !== null) return [decideFor(performanceClass)]
  const [kindest, strictest] = [decideFor('class-1'), decideFor('class-3')]
  if (getOutcomeVerdict(kindest) === getOutcomeVerdict(strictest)) return [strictest]
  return [notComputed(['brief', 'performanceClass'], 'performance class', places)]
}

function compare(
  { layer, isPlated, nominalUm, range }: Finished,
  places: readonly Place[],
  what: string,
  weightOzPerFt2: number,
  productClass: 1 | 2 | 3,
): Outcome {
  const least = findMinimumFinishedCopper({
    weightOzPerFt2,
    location: isPlated ? 'external' : 'internal',
    productClass,
  })
  if (least === null) throw new RangeError(`no row for a foil of ${weightOzPerFt2} oz`)
  const { minFoilUm, minPlatingUm, maxReductionUm, minFinishedUm } = least
  const plating = isPlated ? ` and ${inSentence(minPlatingUm, 'um')} of plating` : ''
  return decide({
    value: nominalUm,
    range,
    limit: makeSourceLimit({
      key: 'minimumFinishedCopperUm',
      value: minFinishedUm,
      unit: 'um',
      sense: 'at-least',
      sourceKey: least.source,
    }),
    places,
    what,
    equation: 'foil + plating - processing loss, over tolerances',
    sourceKey: 'exactArithmetic',
    remark: `The least is ${inSentence(minFoilUm, 'um')} of a foil of ${inSentence(layer.thicknessUm, 'um')}${plating}, less ${inSentence(maxReductionUm, 'um')} for processing.`,
  })
}
