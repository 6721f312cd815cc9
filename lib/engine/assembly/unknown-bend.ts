import type { RatioTable } from '../bending'
import type { Bend } from '../design'
import type { BendResult, MissingInput } from '../results'
import type { SurvivalDemand } from './bend-allowables'

/** The result of a bend whose section cannot be computed: every number null or 0, and what is missing by name. */
export function makeUnknownBend(
  bend: Bend,
  demand: SurvivalDemand,
  ratioTable: RatioTable,
  missing: readonly MissingInput[],
): BendResult {
  return {
    bendId: bend.id,
    name: bend.name,
    zoneId: bend.zoneId,
    use: bend.use,
    sectionThicknessUm: 0,
    leaves: [],
    conductors: [],
    strainProfile: [],
    peakStrainPct: null,
    peakRangePct: null,
    allowablePct: null,
    governingLayerId: null,
    minRadiusByStrainMm: null,
    minRadiusByLifeMm: null,
    handbook: {
      minRadiusMm: null,
      minRadiusRangeMm: null,
      clamped: false,
      deformationPct: null,
      formula: '',
      warning: null,
      sourceKey: 'ipc2223',
    },
    ratio: {
      actual: 0,
      required: null,
      minRadiusMm: null,
      tableKey: ratioTable.id,
      tableName: ratioTable.name,
      surfaceStrainPct: 0,
      sourceKey: ratioTable.source,
      advisedAgainst: false,
    },
    disagreement: [],
    lifeCurve: [],
    requiredCycles: bend.requiredCycles,
    medianLifeCycles: null,
    survivalLifeCycles: null,
    survivalLifeRangeCycles: null,
    isLifeAtCap: false,
    survivalPct: demand.survivalPct,
    momentNmm: null,
    holdingForceN: null,
    springback: null,
    developedLengthMm: 0,
    leafLengthDifferenceMm: 0,
    leafLengthRangeMm: { low: 0, high: 0 },
    shieldShare: null,
    missing,
    cautions: [],
  }
}
