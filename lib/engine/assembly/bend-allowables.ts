import { type Bend, type Brief, callByName } from '../design'
import {
  computeAllowableStrain,
  DEFAULT_WEIBULL_SLOPE,
  ductilityStrainRangeFraction,
  type FatigueFoil,
  MAX_CYCLES,
  type Survival,
  strainRangeOfMotion,
} from '../life'
import type { MissingInput } from '../results'
import type { ConductorInBend } from './bend-section'

/** Survival that is asked for where the brief states none: a labelled default, our choice. */
export const DEFAULT_SURVIVAL_PCT = 99

export interface SurvivalDemand {
  readonly survivalPct: number
  readonly survival: Survival
  /** The brief states the slope: tests do not take its place. */
  readonly isSlopeTyped: boolean
  /** Sentences on the defaults that stand in. */
  readonly cautions: readonly string[]
  /** The one of them on the slope, where it is a default: not said of copper whose slope comes from tests. */
  readonly slopeCaution: string | null
}

/** Of a conductor: with what own flex tests say of it. */
export function survivalOf(
  { survival }: SurvivalDemand,
  { testedSlope, testedLifeFraction }: ConductorInBend,
): Survival {
  if (testedSlope === undefined && testedLifeFraction === undefined) return survival
  return {
    ...survival,
    weibullSlope: testedSlope ?? survival.weibullSlope,
    ...(testedLifeFraction === undefined ? {} : { lifeFraction: testedLifeFraction }),
  }
}

/** The relation and the moduli are those of room temperature: our choice of how far from it that still says something. */
const ROOM_DEGC = { min: 0, max: 40 }

function explainTemperature({ operatingMinDegC, operatingMaxDegC }: Brief): string | null {
  const isCold = operatingMinDegC !== null && operatingMinDegC < ROOM_DEGC.min
  const isHot = operatingMaxDegC !== null && operatingMaxDegC > ROOM_DEGC.max
  if (!isCold && !isHot) return null
  const range = [operatingMinDegC, operatingMaxDegC]
    .flatMap((each) => (each === null ? [] : [`${each} °C`]))
    .join(' to ')
  return `The fatigue relation and the moduli are those of room temperature; the part works at ${range}. Test it there.`
}

/** How sure a life must be, from the brief; a default is used where it is silent, and said. */
export function readSurvivalDemand(brief: Brief): SurvivalDemand {
  const survivalPct = brief.lifeSurvivalPct ?? DEFAULT_SURVIVAL_PCT
  const weibullSlope = brief.lifeWeibullSlope ?? DEFAULT_WEIBULL_SLOPE
  const cautions: string[] = []
  if (brief.lifeSurvivalPct === null) {
    cautions.push(`Survival of ${survivalPct} % is a default; state the share of parts that must reach the life.`)
  }
  const isSlopeTyped = brief.lifeWeibullSlope !== null
  const slopeCaution = isSlopeTyped
    ? null
    : `Weibull slope ${weibullSlope} is a default: no published slope for flex copper was found. Take it from tests.`
  if (slopeCaution !== null) cautions.push(slopeCaution)
  const temperature = explainTemperature(brief)
  if (temperature !== null) cautions.push(temperature)
  return {
    survivalPct,
    survival: { failureFraction: 1 - survivalPct / 100, weibullSlope },
    isSlopeTyped,
    cautions,
    slopeCaution,
  }
}

export interface ConductorAllowable {
  readonly allowablePct: number | null
  readonly medianAllowablePct: number | null
  readonly sourceKey: string | null
  /**
   * The allowable that a radius may be worked out from. Foil that is not rolled-annealed has it from ductility alone, and none in the
   * long-life range, where the relation must not rank foils.
   */
  readonly provenPct: number | null
  /** Where the life needed lies beyond the relation: the strain at its end. More than that fails, less nobody can tell. */
  readonly relationEndPct: number | null
}

const NO_ALLOWABLE: ConductorAllowable = {
  allowablePct: null,
  medianAllowablePct: null,
  sourceKey: null,
  provenPct: null,
  relationEndPct: null,
}

export function getFatigueFoil({ material, foil }: ConductorInBend): FatigueFoil {
  return {
    fatigueDuctility: foil.fatigueDuctility.value,
    tensileStrengthMpa: foil.tensileStrengthMpa.value,
    modulusGpa: material.modulusGpa.value,
  }
}

/**
 * Strain that a conductor layer may see in a bend of this use.
 *
 * @param missing    receives the input that an absent allowable lacks
 * @param usedShare  of the life that an earlier fold has used up
 */
export function findAllowable(
  conductor: ConductorInBend,
  bend: Bend,
  survival: Survival,
  missing: MissingInput[],
  usedShare = 0,
): ConductorAllowable {
  switch (bend.use) {
    case null:
      return NO_ALLOWABLE
    case 'fold-once':
    case 'flex-to-install': {
      const field = bend.use === 'fold-once' ? 'allowableFoldOncePct' : 'allowableInstallPct'
      const allowable = conductor.foil[field]
      if (allowable === null) {
        missing.push({
          path: ['construction', 'layers', conductor.source.position, 'materialId'],
          label: `allowable strain of ${conductor.material.name} ${
            bend.use === 'fold-once' ? 'in one fold' : 'for flexing to install'
          } (${callByName('layer', conductor.copper.layer.name)})`,
        })
        return NO_ALLOWABLE
      }
      return {
        ...NO_ALLOWABLE,
        allowablePct: allowable.value,
        provenPct: allowable.value,
        sourceKey: allowable.sourceKey,
      }
    }
    case 'dynamic':
      return bend.requiredCycles === null
        ? NO_ALLOWABLE
        : findDynamicAllowable(conductor, bend, findNeededCycles(bend.requiredCycles, usedShare), survival)
  }
}

/**
 * Cycles that the copper must hold so that the required ones are left after an earlier fold (N (1 - used) = required); past the end of the
 * relation, that end.
 */
export function findNeededCycles(requiredCycles: number, usedShare: number): number {
  const needed = usedShare >= 1 ? MAX_CYCLES : Math.max(1, requiredCycles) / (1 - usedShare)
  return Math.min(MAX_CYCLES, needed)
}

/** Only annealed foil is ductile enough for the relation's long lives to be more than its tensile strength. */
export function isRolledAnnealed({ foil }: ConductorInBend): boolean {
  return foil.type === 'rolled-annealed'
}

function findDynamicAllowable(
  conductor: ConductorInBend,
  { motion }: Bend,
  requiredCycles: number,
  survival: Survival,
): ConductorAllowable {
  const foil = getFatigueFoil(conductor)
  const demanded = computeAllowableStrain({ foil, requiredCycles, motion, survival })
  const median = computeAllowableStrain({
    foil,
    requiredCycles,
    motion,
    survival: { ...survival, failureFraction: 0.5 },
  })
  const common = { medianAllowablePct: median.strainPct, sourceKey: 'fatigueDuctility' }
  // The strain at 1e12 cycles would be too much for a life beyond them: then no strain is known to be allowed.
  if (demanded.beyondRelation) {
    return { ...common, allowablePct: null, provenPct: null, relationEndPct: demanded.strainPct }
  }
  const ductile = ductilityStrainRangeFraction(foil, demanded.neededMedianCycles)
  return {
    ...common,
    allowablePct: demanded.strainPct,
    provenPct: isRolledAnnealed(conductor)
      ? demanded.strainPct
      : ductile === null
        ? null
        : (100 * ductile) / strainRangeOfMotion(1, motion),
    relationEndPct: null,
  }
}
