import {
  type Bend,
  type ConductorFeature,
  type ConductorLayer,
  type DielectricLayer,
  makePresence,
  UNKNOWN_BEND,
  UNKNOWN_IMPEDANCE,
  UNKNOWN_THROUGH_THICKNESS,
  type UnbondedGapLayer,
  type Zone,
} from '../design'
import { PLATED_COPPER_ID } from '../materials'

/**
 * Layers, zones and bends with the tolerances that suppliers usually state (common practice, no published source):
 * foil and film +/- 10 %, adhesive and prepreg +/- 15 %, stiffeners +/- 5 %, plating +/- 20 %.
 */
const FOIL_TOLERANCE_FRACTION = 0.1
const FILM_TOLERANCE_FRACTION = 0.1
const ADHESIVE_TOLERANCE_FRACTION = 0.15
const STIFFENER_TOLERANCE_FRACTION = 0.05
const PLATING_TOLERANCE_FRACTION = 0.2

/** Half an ounce per square foot of copper, 34.3 um per ounce. */
export const HALF_OUNCE_UM = 17.1

/** Thicknesses are kept to 0.01 um, so that a design file holds the numbers that people would write. */
function toleranceUm(thicknessUm: number, fraction: number): number {
  return Math.round(thicknessUm * fraction * 100) / 100
}

interface ConductorOptions {
  id: string
  name: string
  thicknessUm?: number
  materialId?: string
  coverageFraction?: number
  role?: ConductorLayer['role']
  planePattern?: ConductorLayer['planePattern']
  plating?: ConductorLayer['plating']['process']
  platingUm?: number
  processingLossUm?: number
}

export function conductor({
  id,
  name,
  thicknessUm = HALF_OUNCE_UM,
  materialId = 'copper-ra',
  coverageFraction = 0.5,
  role = 'signal',
  planePattern = null,
  plating = 'none',
  platingUm = 20,
  processingLossUm = 1.5,
}: ConductorOptions): ConductorLayer {
  const addedUm = plating === 'none' ? 0 : platingUm
  return {
    id,
    name,
    kind: 'conductor',
    thicknessUm,
    tolerancePlusUm: toleranceUm(thicknessUm, FOIL_TOLERANCE_FRACTION),
    toleranceMinusUm: toleranceUm(thicknessUm, FOIL_TOLERANCE_FRACTION),
    materialId,
    role,
    planePattern,
    coverageFraction,
    plating: {
      process: plating,
      thicknessUm: addedUm,
      toleranceUm: toleranceUm(addedUm, PLATING_TOLERANCE_FRACTION),
      materialId: plating === 'none' ? null : PLATED_COPPER_ID,
    },
    processingLossUm,
  }
}

interface DielectricOptions {
  id: string
  name: string
  thicknessUm: number
  materialId?: string
}

const dielectric =
  (kind: DielectricLayer['kind'], defaultMaterialId: string, fraction: number) =>
  ({ id, name, thicknessUm, materialId = defaultMaterialId }: DielectricOptions): DielectricLayer => ({
    id,
    name,
    kind,
    thicknessUm,
    tolerancePlusUm: toleranceUm(thicknessUm, fraction),
    toleranceMinusUm: toleranceUm(thicknessUm, fraction),
    materialId,
  })

export const baseFilm = dielectric('base-film', 'pi-base-adhesiveless', FILM_TOLERANCE_FRACTION)
export const adhesive = dielectric('adhesive', 'acrylic-adhesive', ADHESIVE_TOLERANCE_FRACTION)
export const coverlayFilm = dielectric('coverlay-film', 'pi-coverlay', FILM_TOLERANCE_FRACTION)
export const bondply = dielectric('bondply', 'bondply-epoxy', ADHESIVE_TOLERANCE_FRACTION)
export const noFlowPrepreg = dielectric('no-flow-prepreg', 'no-flow-prepreg-epoxy', ADHESIVE_TOLERANCE_FRACTION)
export const rigidLaminate = dielectric('rigid-laminate', 'fr4-laminate', FILM_TOLERANCE_FRACTION)
export const solderMask = dielectric('solder-mask', 'solder-mask-rigid', ADHESIVE_TOLERANCE_FRACTION)
export const stiffener = dielectric('stiffener', 'pi-stiffener', STIFFENER_TOLERANCE_FRACTION)

export function unbondedGap(id: string, name: string, thicknessUm: number): UnbondedGapLayer {
  return { id, name, kind: 'unbonded-gap', thicknessUm }
}

interface ZoneOptions {
  id: string
  name: string
  kind: Zone['kind']
  lengthMm: number
  widthMm: number
  /** Ids of the layers present; a pair gives a conductor layer another coverage here. */
  layers: readonly (string | readonly [layerId: string, coverageFraction: number])[]
  connectorWindow?: Zone['connectorWindow']
}

export function zone({ id, name, kind, lengthMm, widthMm, layers, connectorWindow = null }: ZoneOptions): Zone {
  return {
    id,
    name,
    kind,
    lengthMm,
    widthMm,
    presence: layers.map((entry) =>
      typeof entry === 'string' ? makePresence(entry) : makePresence(entry[0], entry[1]),
    ),
    connectorWindow,
    contactFinish: null,
    statedThicknessUm: null,
    statedToleranceUm: null,
    ...UNKNOWN_THROUGH_THICKNESS,
  }
}

interface BendOptions {
  id: string
  name: string
  zoneId: string
  insideRadiusMm: number
  angleDeg: number
  axisLengthMm: number
  use: Bend['use']
  radiusToleranceMm?: number
  insideFace?: Bend['insideFace']
  requiredCycles?: number
  distanceToRigidMm?: number
}

/** A bend of which only geometry and use are decided; what holds it is left for a person to say. */
export function bend({
  id,
  name,
  zoneId,
  insideRadiusMm,
  angleDeg,
  axisLengthMm,
  use,
  radiusToleranceMm = Math.round(insideRadiusMm * 5) / 100,
  insideFace = 'bottom',
  requiredCycles,
  distanceToRigidMm,
}: BendOptions): Bend {
  return {
    ...UNKNOWN_BEND,
    id,
    name,
    zoneId,
    insideRadiusMm,
    radiusToleranceMm,
    angleDeg,
    insideFace,
    axisLengthMm,
    use,
    requiredCycles: requiredCycles ?? null,
    distanceToRigidMm: distanceToRigidMm ?? null,
  }
}

interface ConductorFeatureOptions {
  id: string
  name: string
  layerId: string
  widthMm: number
  spaceMm: number
  lengthMm: number
  bendIds: readonly string[]
}

/** A group of alike conductors that cross the bends at right angles; its electrical needs are left open. */
export function conductorGroup({
  id,
  name,
  layerId,
  widthMm,
  spaceMm,
  lengthMm,
  bendIds,
}: ConductorFeatureOptions): ConductorFeature {
  return {
    id,
    name,
    layerId,
    widthMm,
    spaceMm,
    lengthMm,
    currentAmp: null,
    allowedRiseDegC: null,
    allowedDropVolt: null,
    returnAsLong: null,
    carriesPower: null,
    impedanceOhm: null,
    netClassId: null,
    impedance: UNKNOWN_IMPEDANCE,
    voltageVolt: null,
    isCovered: null,
    frequencyMhz: null,
    crossings: bendIds.map((bendId) => ({
      bendId,
      angleToAxisDeg: 90,
      widthChangesInside: null,
      directionChangesInside: null,
    })),
  }
}
