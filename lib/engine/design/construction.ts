import { z } from 'zod'
import {
  deviationUmSchema,
  fractionSchema,
  idSchema,
  lengthMmSchema,
  nameSchema,
  temperatureDegCSchema,
  thicknessUmSchema,
} from './primitives'

/** Layer kinds other than copper and air, each made of one material. */
export const DIELECTRIC_LAYER_KINDS = [
  'base-film',
  'adhesive',
  'coverlay-film',
  'bondply',
  'no-flow-prepreg',
  'rigid-laminate',
  'solder-mask',
  'stiffener',
  'shield-film',
] as const

export const PLATING_PROCESSES = ['none', 'panel', 'pattern', 'button'] as const
export const CONDUCTOR_ROLES = ['signal', 'plane', 'mixed'] as const
export const PLANE_PATTERNS = ['solid', 'hatched', 'split', 'none'] as const
/** How far a plating process covers a zone's copper: all of it, the lands of holes and pads alone, or none of it. */
export const PLATED_COPPER = ['whole', 'pads-only', 'none'] as const

/** A hatched plane's bars. The angle is that of the nearest family of bars to the length of the part. */
export const hatchSchema = z
  .strictObject({
    barMm: lengthMmSchema,
    pitchMm: lengthMmSchema,
    /** 45 for bars across both diagonals, 0 for bars along and across the part. */
    angleDeg: z.number().min(0, 'must be between 0° and 45°').max(45, 'must be between 0° and 45°'),
  })
  .refine((hatch) => hatch.barMm < hatch.pitchMm, { path: ['barMm'], message: 'must be smaller than the pitch' })

/** Finish on copper that is left open: its metals together. */
export const contactFinishSchema = z
  .strictObject({ thicknessUm: deviationUmSchema, toleranceUm: deviationUmSchema })
  .refine((finish) => finish.toleranceUm <= finish.thicknessUm, {
    path: ['toleranceUm'],
    message: 'must not be greater than the thickness',
  })

const layerCommon = {
  id: idSchema,
  name: nameSchema,
  thicknessUm: thicknessUmSchema,
  tolerancePlusUm: deviationUmSchema,
  toleranceMinusUm: deviationUmSchema,
}

/** Copper. `thicknessUm` is the foil as bought; finished copper adds plating and subtracts the processing loss. */
export const conductorLayerSchema = z.strictObject({
  ...layerCommon,
  kind: z.literal('conductor'),
  materialId: idSchema,
  role: z.enum(CONDUCTOR_ROLES),
  /** Null on a signal layer, which carries no plane, and where nobody said. */
  planePattern: z.enum(PLANE_PATTERNS).nullable(),
  /** Copper share of the width, unless a zone says otherwise. */
  coverageFraction: fractionSchema,
  plating: z.strictObject({
    process: z.enum(PLATING_PROCESSES),
    /** Copper that the process adds to this layer; 0 exactly when the process is none. */
    thicknessUm: deviationUmSchema,
    toleranceUm: deviationUmSchema,
    /** Plated copper is a material of its own, weaker than most foils; null exactly when the process is none. */
    materialId: idSchema.nullable(),
  }),
  processingLossUm: deviationUmSchema,
})

export const dielectricLayerSchema = z.strictObject({
  ...layerCommon,
  kind: z.enum(DIELECTRIC_LAYER_KINDS),
  materialId: idSchema,
})

/** Air between leaves that are deliberately not bonded; the thickness is the gap left by the spacer that was taken out. */
export const unbondedGapLayerSchema = z.strictObject({
  id: idSchema,
  name: nameSchema,
  kind: z.literal('unbonded-gap'),
  thicknessUm: deviationUmSchema,
})

export const layerSchema = z.discriminatedUnion('kind', [
  conductorLayerSchema,
  dielectricLayerSchema,
  unbondedGapLayerSchema,
])

/** A layer of conductors has no plane to speak of, and a plane layer cannot be without one; a layer of both may be. */
export function mayHavePlanePattern(
  role: (typeof CONDUCTOR_ROLES)[number],
  pattern: (typeof PLANE_PATTERNS)[number],
): boolean {
  return role === 'mixed' || (role === 'plane' && pattern !== 'none')
}

export const ZONE_KINDS = ['rigid', 'flex', 'stiffened', 'finger'] as const

/** Zones that are meant to lie flat: parts, contacts or stiffeners sit on them. */
export const FLAT_ZONE_KINDS: ReadonlySet<string> = new Set<(typeof ZONE_KINDS)[number]>([
  'rigid',
  'stiffened',
  'finger',
])

/**
 * A region of the part with one sequence of layers. Presence lists the layers that exist there, in any order; the
 * order through the thickness is that of `layers`.
 */
export const zoneSchema = z.strictObject({
  id: idSchema,
  name: nameSchema,
  kind: z.enum(ZONE_KINDS),
  lengthMm: lengthMmSchema.nullable(),
  widthMm: lengthMmSchema.nullable(),
  presence: z
    .array(
      z.strictObject({
        layerId: idSchema,
        /** Conductor layers only: copper share of the width in this zone; null takes the layer's. */
        coverageFraction: fractionSchema.nullable(),
        /**
         * Conductor layers only: which copper of this zone is plated. Null takes what the process does by itself: panel and
         * pattern plating cover the whole copper; where pads-only plating goes is then not known.
         */
        platedCopper: z.enum(PLATED_COPPER).nullable(),
        /** Hatched planes only; the coverage of the zone follows from it. Null is not known yet. */
        hatch: hatchSchema.nullable(),
      }),
    )
    .min(1, 'a zone needs at least one layer')
    .max(500),
  /** Finger zones: finished thickness that the connector accepts. */
  connectorWindow: z
    .strictObject({ minUm: thicknessUmSchema, maxUm: thicknessUmSchema })
    .refine((window) => window.minUm <= window.maxUm, {
      path: ['maxUm'],
      message: 'must not be below the smallest thickness',
    })
    .nullable(),
  /** Finish on the contacts or pads that are open in this zone; null is not known yet. */
  contactFinish: contactFinishSchema.nullable(),
  /** Finished thickness that somebody states for this zone (drawing, data sheet, another firm's note). */
  statedThicknessUm: thicknessUmSchema.nullable(),
  /** Tolerance that the drawing gives for it, plus or minus. */
  statedToleranceUm: deviationUmSchema.nullable(),
  /**
   * Of the bonded stack through its thickness, as measured on it below its glass transition (thermomechanical analysis, IPC-TM-650 2.4.24):
   * boards differ too much for a typical value (SOURCES.throughExpansion).
   */
  throughExpansionPpmPerC: z.number().positive('must be greater than 0 ppm/°C').max(1000).nullable(),
  throughModulusGpa: z.number().positive('must be greater than 0 GPa').max(100).nullable(),
  glassTransitionDegC: temperatureDegCSchema.nullable(),
})

/** Layers from the top face down, and the zones of the part. */
export const constructionSchema = z.strictObject({
  layers: z.array(layerSchema).max(500, 'at most 500 layers'),
  zones: z.array(zoneSchema).max(200, 'at most 200 zones'),
})

/**
 * Copper share of a hatched plane: the union of two families of parallel bars, 1 - (1 - w/p)^2. It is area alone: a hatch conducts and
 * bends as far less than its share. Source SOURCES.exactArithmetic.
 */
export function hatchCoverageFraction({ barMm, pitchMm }: Pick<Hatch, 'barMm' | 'pitchMm'>): number {
  return 1 - (1 - barMm / pitchMm) ** 2
}

/** A layer in a zone, nothing else said of it there. */
export function makePresence(layerId: string, coverageFraction: number | null = null): Zone['presence'][number] {
  return { layerId, coverageFraction, platedCopper: null, hatch: null }
}

/** Nobody has measured a zone's stack through its thickness. */
export const UNKNOWN_THROUGH_THICKNESS = {
  throughExpansionPpmPerC: null,
  throughModulusGpa: null,
  glassTransitionDegC: null,
} as const satisfies Partial<z.infer<typeof zoneSchema>>

/** Copper that no process plates. */
export const NO_PLATING: ConductorLayer['plating'] = {
  process: 'none',
  thicknessUm: 0,
  toleranceUm: 0,
  materialId: null,
}

export type Construction = z.infer<typeof constructionSchema>
export type Layer = z.infer<typeof layerSchema>
export type ConductorLayer = z.infer<typeof conductorLayerSchema>
export type DielectricLayer = z.infer<typeof dielectricLayerSchema>
export type UnbondedGapLayer = z.infer<typeof unbondedGapLayerSchema>
export type Hatch = z.infer<typeof hatchSchema>
export type Zone = z.infer<typeof zoneSchema>
