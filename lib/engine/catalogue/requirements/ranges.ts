import { CONNECTOR_DIMENSIONS } from '../../design'
import { FIGURE_RANGES } from './figures'
import type { RequirementRange } from './range'

const SERVICE: readonly RequirementRange[] = [
  // Liquid nitrogen to what polyimide bears for years. A part that never gets as warm as a cool room, or never as cold as a warm one, is none.
  { pattern: 'brief.operatingMinDegC', low: -200, high: 30, isAsked: true },
  { pattern: 'brief.operatingMaxDegC', low: 25, high: 260, isAsked: true },
  { pattern: 'brief.flatAtDegC', low: 0, high: 230 },
  { pattern: 'brief.cycleMinDegC', low: -200, high: 40 },
  { pattern: 'brief.cycleMaxDegC', low: 25, high: 260 },
  // Ordinary tests begin at some hundred cycles; a product that is switched on and off for 20 years has several thousand.
  { pattern: 'brief.temperatureCycles', low: 20, high: 1e6 },
  { pattern: 'brief.quantityPerYear', low: 1, high: 1e8 },
  // The weakest figure that is asked for is the life that nine parts of ten reach.
  { pattern: 'brief.lifeSurvivalPct', low: 90, high: 99.9999 },
  // Slopes of fatigue scatter in textbooks: about 1 to 8.
  { pattern: 'brief.lifeWeibullSlope', low: 0.8, high: 8 },
  { pattern: 'brief.exposure.ionicLimitUgPerCm2', low: 0.05, high: 10 },
  { pattern: 'brief.exposure.antennaKeepOutMm', low: 0.5, high: 200 },
  { pattern: 'brief.exposure.pullForceNewton', low: 0, high: 500 },
  { pattern: 'brief.exposure.coldTestDegC', low: -200, high: 25 },
]

const ASSEMBLY: readonly RequirementRange[] = [
  // Low-melting bismuth solders peak near 160 °C, lead-free ones at 235 to 260 °C.
  { pattern: 'brief.assembly.solderPeakDegC', low: 140, high: 300 },
  { pattern: 'brief.assembly.coverlayRatingDegC', low: 80, high: 400 },
  { pattern: 'features.stiffeners.*.heatRatingDegC', low: 60, high: 400 },
  { pattern: 'brief.assembly.bakeDegC', low: 40, high: 200 },
  { pattern: 'brief.assembly.bakeHours', low: 0.25, high: 96 },
  { pattern: 'brief.assembly.toSolderHours', low: 0.1, high: 200 },
  { pattern: 'brief.assembly.storageMonths', low: 0.25, high: 120 },
  { pattern: 'brief.exposure.dryingDegC', low: 30, high: 200 },
  { pattern: 'brief.exposure.dryingHours', low: 0.1, high: 96 },
  { pattern: 'brief.array.partCount', low: 1, high: 1000 },
  // Rails by which a line of assembly holds an array are some 5 to 15 mm wide.
  { pattern: 'brief.array.frameWidthMm', low: 1, high: 60 },
]

const TOLERANCES: readonly RequirementRange[] = [
  { pattern: 'brief.tolerances.outlineMm', low: 0.01, high: 1.5 },
  { pattern: 'brief.tolerances.holeMm', low: 0.01, high: 0.5 },
  { pattern: 'brief.tolerances.holeToEdgeMm', low: 0.01, high: 1.5 },
  { pattern: 'brief.tolerances.stiffenerMm', low: 0.02, high: 2 },
  { pattern: 'brief.tolerances.coverlayMm', low: 0.02, high: 1.5 },
  { pattern: 'brief.tolerances.bendPositionMm', low: 0.02, high: 5 },
  { pattern: 'construction.zones.*.statedToleranceUm', low: 1, high: 500 },
  { pattern: 'plan.dimensions.*.plusMm', low: 0, high: 5 },
  { pattern: 'plan.dimensions.*.minusMm', low: 0, high: 5 },
  { pattern: 'features.registrations.*.neededMm', low: 0.01, high: 1.5 },
  { pattern: 'features.rigidEdges.squeezeOutMm', low: 0, high: 5 },
]

const ACCEPTANCE: readonly RequirementRange[] = [
  { pattern: 'brief.acceptance.testVoltageVolt', low: 1, high: 5000 },
  { pattern: 'brief.acceptance.continuityOhm', low: 0.01, high: 500 },
  { pattern: 'brief.acceptance.isolationMegohm', low: 0.5, high: 1e5 },
  { pattern: 'brief.acceptance.bowAndTwistPct', low: 0.05, high: 5 },
  { pattern: 'brief.acceptance.solderingsOnCount', low: 1, high: 20 },
  { pattern: 'brief.acceptance.solderingsOffCount', low: 0, high: 20 },
  { pattern: 'brief.acceptance.firstArticleCount', low: 1, high: 2000 },
  { pattern: 'features.shieldGround.maxResistanceOhm', low: 0.0005, high: 50 },
]

/** A bend of which nobody has said its use may be one: its cycles are asked for while they are blank. */
const mayMove = ({ use, requiredCycles }: Readonly<Record<string, unknown>>) =>
  use === 'dynamic' || (use === null && requiredCycles === null)

const BENDS: readonly RequirementRange[] = [
  // What moves in service moves more often than it is handled; the fastest print heads and drives come to some 1e9.
  {
    pattern: 'bends.*.requiredCycles',
    low: 100,
    high: 1e10,
    isFor: mayMove,
    forWhat: 'bends that move in service',
    isAsked: true,
  },
  { pattern: 'bends.*.pullN', low: 0, high: 1000 },
  { pattern: 'bends.*.twistDeg', low: 0, high: 720 },
  { pattern: 'bends.*.flexTest.cyclesPerMinute', low: 0.5, high: 3000 },
  { pattern: 'bends.*.flexTest.travelMm', low: 0.5, high: 1000 },
  { pattern: 'bends.*.flexTest.mandrelDiameterMm', low: 0.2, high: 500 },
  // Every bend is worked once: when it is made.
  { pattern: 'bends.*.inProduct.handlingCycles', low: 1, high: 10_000 },
]

const CONDUCTORS: readonly RequirementRange[] = [
  { pattern: 'features.conductors.*.currentAmp', low: 0, high: 100 },
  { pattern: 'features.conductors.*.allowedRiseDegC', low: 1, high: 60 },
  { pattern: 'features.conductors.*.allowedDropVolt', low: 0.0001, high: 5 },
  { pattern: 'features.conductors.*.voltageVolt', low: 0, high: 5000 },
  { pattern: 'features.conductors.*.frequencyMhz', low: 0.00001, high: 100_000 },
  { pattern: 'features.conductors.*.impedanceOhm', low: 15, high: 300 },
  { pattern: 'features.conductors.*.impedance.tolerancePct', low: 1, high: 20, nameSteps: 2 },
  { pattern: 'features.netClasses.*.impedanceOhm', low: 15, high: 300 },
  { pattern: 'features.netClasses.*.tolerancePct', low: 1, high: 20 },
  { pattern: 'features.netClasses.*.crosstalkLimitPct', low: 0.01, high: 25 },
  { pattern: 'features.netClasses.*.riseTimePs', low: 5, high: 1e7 },
]

/** Lowest and highest figure of connectors for films, contact ends of power parts included, in mm. */
const CONTACT_ENDS: Readonly<Record<(typeof CONNECTOR_DIMENSIONS)[number], readonly [low: number, high: number]>> = {
  pitch: [0.1, 15],
  contactWidth: [0.05, 15],
  exposedLength: [0.2, 40],
  endWidth: [0.5, 200],
  edgeToContact: [0.05, 50],
  stiffenerLength: [0.5, 200],
}

const CONNECTORS: readonly RequirementRange[] = [
  // Film connectors take parts of about 0.1 to 0.4 mm, edges of boards up to some 3 mm.
  { pattern: 'construction.zones.*.connectorWindow.minUm', low: 50, high: 4000, nameSteps: 2 },
  { pattern: 'construction.zones.*.connectorWindow.maxUm', low: 60, high: 4000, nameSteps: 2 },
  { pattern: 'features.connectors.*.matings', low: 1, high: 100_000 },
  ...CONNECTOR_DIMENSIONS.flatMap((dimension): RequirementRange[] => {
    const [low, high] = CONTACT_ENDS[dimension]
    return [
      // A drawing that gives a maximum alone has a minimum of 0.
      { pattern: `features.connectors.*.${dimension}.minMm`, low: 0, high, nameSteps: 2 },
      { pattern: `features.connectors.*.${dimension}.maxMm`, low, high, nameSteps: 2 },
    ]
  }),
  { pattern: 'features.coverlayOpenings.*.neededOpenMm', low: 0.05, high: 200 },
]

const ROOM: readonly RequirementRange[] = [
  { pattern: 'plan.connectorEnds.*.target.withinMm', low: 0.02, high: 10, nameSteps: 2 },
  { pattern: 'plan.connectorEnds.*.target.withinDeg', low: 0.1, high: 45, nameSteps: 2 },
  { pattern: 'plan.housing.alongXMm', low: 1, high: 2000 },
  { pattern: 'plan.housing.alongYMm', low: 1, high: 2000 },
  { pattern: 'plan.housing.heightMm', low: 0.2, high: 1000 },
]

/** Constants that a team vouches for: of its own materials, and of what a board is made of through its thickness. */
const RATINGS: readonly RequirementRange[] = [
  { pattern: 'construction.zones.*.throughExpansionPpmPerC', low: 15, high: 500 },
  { pattern: 'construction.zones.*.throughModulusGpa', low: 0.3, high: 40 },
  { pattern: 'construction.zones.*.glassTransitionDegC', low: 30, high: 450 },
  { pattern: 'materials.*.modulusGpa', low: 0.0005, high: 450 },
  { pattern: 'materials.*.maxServiceDegC', low: 40, high: 500 },
  { pattern: 'materials.*.maxSolderDegC', low: 80, high: 500 },
  { pattern: 'materials.*.relativePermittivity', low: 1, high: 15 },
  { pattern: 'materials.*.expansionPpmPerC', low: -20, high: 500 },
  { pattern: 'materials.*.yieldStrainPct', low: 0.1, high: 50 },
  { pattern: 'materials.*.foil.yieldStrengthMpa', low: 20, high: 1500 },
  { pattern: 'materials.*.foil.tensileStrengthMpa', low: 80, high: 1500 },
  { pattern: 'materials.*.foil.fatigueDuctility', low: 0.02, high: 2 },
  // Elongation at break of rolled-annealed foil by its sheet is some 5 to 30 %.
  { pattern: 'materials.*.foil.allowableFoldOncePct', low: 0.5, high: 30 },
  { pattern: 'materials.*.foil.allowableInstallPct', low: 0.2, high: 25 },
  { pattern: 'materials.*.foil.resistivityOhmMm2PerM', low: 0.0155, high: 0.1 },
]

/** Every number of the design that states a need, vouches for a rating, or that no item of major severity looks at closely. A test walks the schema and finds each number here, or among those that describe the part. */
export const REQUIREMENT_RANGES: readonly RequirementRange[] = [
  ...SERVICE,
  ...ASSEMBLY,
  ...TOLERANCES,
  ...ACCEPTANCE,
  ...BENDS,
  ...CONDUCTORS,
  ...CONNECTORS,
  ...ROOM,
  ...RATINGS,
  ...FIGURE_RANGES,
]
