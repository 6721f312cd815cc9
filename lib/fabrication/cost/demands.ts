import { countLeastLaminations, type Design, listPlatedSpans } from '@/lib/engine'

/** Lines and spaces below the first take direct imaging and care, below the second they are lost more often (common practice, no published source). */
export const FINE_LINE_MM = 0.1
export const FINEST_LINE_MM = 0.075
/** Drills below the first break and wear sooner, below the second holes are made by laser (common practice, no published source). */
export const SMALL_DRILL_MM = 0.25
export const SMALLEST_DRILL_MM = 0.15
/** Foil of more than one and two ounces per square foot is etched longer and filled with more adhesive (common practice, no published source). */
export const HEAVY_FOIL_UM = 36
export const HEAVIEST_FOIL_UM = 71

/** What a part demands beyond its layers; whatever is not stated is not counted, and named. */
export interface Demands {
  readonly isClass3: boolean
  /** Conductor layers with a line or space below `FINE_LINE_MM`, and of them those below `FINEST_LINE_MM`. */
  readonly fineLayerCount: number
  readonly finestLayerCount: number
  /** Least line or space that is stated; null where none is. */
  readonly finestMm: number | null
  /** Conductor layers whose foil is heavier than `HEAVY_FOIL_UM`, and of them those heavier than `HEAVIEST_FOIL_UM`. */
  readonly heavyLayerCount: number
  readonly heaviestLayerCount: number
  /** Smallest drill of a hole that states it; null where none does. */
  readonly smallestDrillMm: number | null
  /** Every hole of one part: those of drawn patterns, and one for each that is listed and not drawn. */
  readonly holeCount: number
  /** Press cycles beyond the first that buried holes call for. */
  readonly furtherLaminationCount: number
  /** Spans of layers beyond the first that plated holes join: each is drilled and plated by itself. */
  readonly furtherSpanCount: number
  readonly gold: 'palladium' | 'electroplated' | null
  /** What would count if it were stated, in words. */
  readonly notCounted: readonly string[]
}

/** Cheap: it only goes through lists. */
export function describeDemands(design: Design): Demands {
  const { brief, features, construction } = design
  const foils = construction.layers.flatMap((layer) => (layer.kind === 'conductor' ? [layer.thicknessUm] : []))
  const lines = features.conductors.flatMap(({ layerId, widthMm, spaceMm }) =>
    [widthMm, spaceMm].flatMap((mm) => (mm === null ? [] : [{ layerId, mm }])),
  )
  // Of another construction with these features, layers may have gone: there are no more fine ones than there are layers.
  const countLayers = (belowMm: number) =>
    Math.min(foils.length, new Set(lines.flatMap(({ layerId, mm }) => (mm < belowMm ? [layerId] : []))).size)
  const drills = features.holes.flatMap(({ drillMm }) => drillMm ?? [])
  const laminations = Math.max(0, ...construction.zones.map(({ id }) => countLeastLaminations(design, id)))
  const unspanned = features.holes.some(
    ({ plated, fromLayerId, toLayerId }) => plated === true && (fromLayerId === null || toLayerId === null),
  )
  const isUnknown = (list: 'holes' | 'conductors') => features[list].length === 0 && !features.none.includes(list)
  return {
    isClass3: brief.performanceClass === 'class-3',
    fineLayerCount: countLayers(FINE_LINE_MM),
    finestLayerCount: countLayers(FINEST_LINE_MM),
    finestMm: leastOf(lines.map(({ mm }) => mm)),
    heavyLayerCount: foils.filter((um) => um > HEAVY_FOIL_UM).length,
    heaviestLayerCount: foils.filter((um) => um > HEAVIEST_FOIL_UM).length,
    smallestDrillMm: leastOf(drills),
    holeCount: countHoles(design),
    furtherLaminationCount: Math.max(0, laminations - 1),
    furtherSpanCount: Math.max(0, listPlatedSpans(design).length - 1),
    gold: describeGold(brief.surfaceFinish),
    notCounted: [
      ...(brief.performanceClass === null ? ['the performance class'] : []),
      ...(lines.length === 0 && (features.conductors.length > 0 || isUnknown('conductors'))
        ? ['widths and spaces of conductors']
        : []),
      ...(isUnknown('holes') || drills.length < features.holes.length ? ['drills of holes'] : []),
      ...(unspanned ? ['layers that plated holes join'] : []),
    ],
  }
}

const leastOf = (values: readonly number[]): number | null => (values.length === 0 ? null : Math.min(...values))

function countHoles({ features, plan }: Design): number {
  const drawn = new Map<string, number>()
  for (const { holeId, columns, rows } of plan?.holes ?? [])
    drawn.set(holeId, (drawn.get(holeId) ?? 0) + columns * rows)
  return features.holes.reduce((sum, { id }) => sum + (drawn.get(id) ?? 1), 0)
}

function describeGold(finish: Design['brief']['surfaceFinish']): Demands['gold'] {
  if (finish === 'immersion-gold-over-palladium-nickel') return 'palladium'
  return finish === 'electroplated-nickel-gold' ? 'electroplated' : null
}
