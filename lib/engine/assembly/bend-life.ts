import { type BondedSection, computeBendStrain, computeMinRadiusForStrain } from '../bending'
import type { Bend } from '../design'
import {
  type BendMotion,
  computeBendLife,
  ductilityLifeCycles,
  type FatigueFoil,
  fatigueStrainRangeFraction,
  MAX_CYCLES,
  MIN_CYCLES,
  RANKING_LIMIT_CYCLES,
  type Survival,
  strainRangeOfMotion,
  survivalOverRelation,
} from '../life'
import type { LifeCurvePoint, QuantityRange } from '../results'
import type { FoilCorners } from './foil-corner'

/** A strain past this breaks copper in its first bend: the relation's life is 1 cycle long before it. */
const LARGEST_LIFE_STRAIN_PCT = 400
/** Enough for a smooth line on log axes. */
const CURVE_POINTS = 40
/** The curve reaches this far to either side of the bend's radius. */
const CURVE_SPAN_RATIO = 5

export interface ConductorLife {
  readonly medianCycles: number
  readonly survivalCycles: number
  readonly survivalRangeCycles: QuantityRange
  /** The median lies beyond the end of the relation: the life is at least what is given. */
  readonly isAtCap: boolean
  /** Life at the survival asked for that ductility alone carries, at the worst of the range. */
  readonly ductilityCycles: number
}

/** Life of a conductor layer at its peak strain, and over that strain's range with the foils that its description allows. */
export function computeConductorLife(
  foil: FatigueFoil,
  { motion }: Bend,
  survival: Survival,
  strainPct: { readonly nominal: number; readonly range: QuantityRange },
  corners: FoilCorners = { weakest: [foil], strongest: [foil] },
): ConductorLife {
  const { lifeFraction = 1 } = survival
  const nominal = lifeAt(foil, motion, survival, strainPct.nominal)
  return {
    medianCycles: nominal.median * lifeFraction,
    survivalCycles: nominal.survival,
    survivalRangeCycles: {
      low: findExtremeLife(corners.weakest, motion, survival, strainPct.range.high, 'shortest'),
      high: findExtremeLife(corners.strongest, motion, survival, strainPct.range.low, 'longest'),
    },
    // A life that tests fell short of does not lie past the relation's end.
    isAtCap: nominal.isAtCap && lifeFraction === 1,
    ductilityCycles: Math.min(
      ...corners.weakest.map((each) => ductilityLifeAt(each, motion, survival, strainPct.range.high)),
    ),
  }
}

/** Of foils at one strain. A foil whose curve lies on the other side of the strain at the life found so far lasts longer, or less long, and is not solved for. */
function findExtremeLife(
  foils: readonly FatigueFoil[],
  motion: BendMotion,
  survival: Survival,
  strainPct: number,
  wanted: 'shortest' | 'longest',
): number {
  let found: { readonly median: number; readonly survival: number; readonly isAtCap: boolean } | null = null
  const rangeFraction = strainRangeOfMotion(Math.min(strainPct, LARGEST_LIFE_STRAIN_PCT) / 100, motion)
  for (const foil of foils) {
    if (found !== null && strainPct > 0) {
      const margin = fatigueStrainRangeFraction(foil, found.median) - rangeFraction
      if (wanted === 'shortest' ? margin > 0 : margin < 0) continue
    }
    const life = lifeAt(foil, motion, survival, strainPct)
    if (found === null || (wanted === 'shortest' ? life.median < found.median : life.median > found.median))
      found = life
  }
  return found?.survival ?? Number.NaN
}

function ductilityLifeAt(foil: FatigueFoil, motion: BendMotion, survival: Survival, strainPct: number): number {
  const rangeFraction = strainRangeOfMotion(Math.min(strainPct, LARGEST_LIFE_STRAIN_PCT) / 100, motion)
  const median = rangeFraction > 0 ? ductilityLifeCycles(foil, rangeFraction) : RANKING_LIMIT_CYCLES
  return median * survivalOverRelation(survival)
}

function lifeAt(
  foil: FatigueFoil,
  motion: BendMotion,
  survival: Survival,
  strainPct: number,
): { median: number; survival: number; isAtCap: boolean } {
  if (strainPct <= 0) {
    return {
      isAtCap: true,
      median: MAX_CYCLES,
      survival: MAX_CYCLES * survivalOverRelation(survival),
    }
  }
  const life = computeBendLife({ foil, motion, survival, strainPct: Math.min(strainPct, LARGEST_LIFE_STRAIN_PCT) })
  return { median: life.median.cycles, survival: life.survivalCycles, isAtCap: life.median.bound === 'above' }
}

/** A leaf of a bend with the copper that flexes in it. */
export interface FlexedLeaf {
  readonly section: BondedSection
  /** Depth of the leaf's inside face from that of the bend. */
  readonly innerDepthUm: number
  /** By the id of the layer in the section. */
  readonly foils: ReadonlyMap<string, FatigueFoil>
}

/**
 * Life over inside radius. Points are taken evenly in log cycles: the relation gives the strain of each in closed form,
 * and the section the radius at which it has that strain, so that every point is exact.
 */
export function computeLifeCurve(
  leaves: readonly FlexedLeaf[],
  { insideRadiusMm, motion }: Bend,
  survival: Survival,
  markedRadiusMm: number | null,
): LifeCurvePoint[] {
  const lowRadiusMm = Math.min(insideRadiusMm, markedRadiusMm ?? insideRadiusMm) / CURVE_SPAN_RATIO
  const highRadiusMm = Math.max(insideRadiusMm, markedRadiusMm ?? insideRadiusMm) * CURVE_SPAN_RATIO
  const { lifeFraction = 1 } = survival
  const survivalFraction = survivalOverRelation(survival)
  const point = (radiusMm: number, medianCycles: number): LifeCurvePoint => ({
    insideRadiusMm: radiusMm,
    medianLifeCycles: medianCycles * lifeFraction,
    survivalLifeCycles: medianCycles * survivalFraction,
  })
  const low = Math.max(medianAtRadius(leaves, motion, survival, lowRadiusMm), MIN_CYCLES)
  const high = medianAtRadius(leaves, motion, survival, highRadiusMm)
  const points = [point(lowRadiusMm, low)]
  const step = Math.log(high / low) / (CURVE_POINTS - 1)
  if (step > 0) {
    for (let at = 1; at < CURVE_POINTS - 1; at += 1) {
      const cycles = low * Math.exp(at * step)
      const previous = points[points.length - 1]
      const radiusMm = radiusForMedian(leaves, motion, cycles, guessRadius(previous, points[points.length - 2]))
      if (previous !== undefined && radiusMm > previous.insideRadiusMm && radiusMm < highRadiusMm) {
        points.push(point(radiusMm, cycles))
      }
    }
  }
  points.push(point(highRadiusMm, high))
  return points
}

function medianAtRadius(
  leaves: readonly FlexedLeaf[],
  motion: BendMotion,
  survival: Survival,
  radiusMm: number,
): number {
  let least = MAX_CYCLES
  for (const { section, innerDepthUm, foils } of leaves) {
    for (const { id, decidingPct } of computeBendStrain(section, radiusMm + innerDepthUm / 1000, motion).conductors) {
      const foil = foils.get(id)
      if (foil !== undefined) least = Math.min(least, lifeAt(foil, motion, survival, decidingPct).median)
    }
  }
  return least
}

/** The next radius, had each step the ratio of the one before. */
function guessRadius(last: LifeCurvePoint | undefined, before: LifeCurvePoint | undefined): number {
  if (last === undefined) return 0
  return before === undefined ? last.insideRadiusMm : last.insideRadiusMm ** 2 / before.insideRadiusMm
}

/** @param nearMm  a radius nearby, to begin the search at */
function radiusForMedian(leaves: readonly FlexedLeaf[], motion: BendMotion, cycles: number, nearMm: number): number {
  let radiusMm = 0
  for (const { section, innerDepthUm, foils } of leaves) {
    const allowed = (id: string): number | null => {
      const foil = foils.get(id)
      if (foil === undefined) return null
      const strainPct = (100 * fatigueStrainRangeFraction(foil, cycles)) / strainRangeOfMotion(1, motion)
      return Math.min(100, strainPct)
    }
    const radius = computeMinRadiusForStrain(section, allowed, motion, nearMm + innerDepthUm / 1000)
    if (radius !== null) radiusMm = Math.max(radiusMm, radius.minInsideRadiusMm - innerDepthUm / 1000)
  }
  return radiusMm
}
