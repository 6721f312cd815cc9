import { z } from 'zod'
import {
  deviationUmSchema,
  fractionSchema,
  idSchema,
  lengthMmSchema,
  nameSchema,
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
export const PLANE_PATTERNS = ['solid', 'hatched', 'split'] as const

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
  /** Null where the layer carries no plane. */
  planePattern: z.enum(PLANE_PATTERNS).nullable(),
  /** Copper share of the width, unless a zone says otherwise. */
  coverageFraction: fractionSchema,
  plating: z.strictObject({
    process: z.enum(PLATING_PROCESSES),
    /** Copper that the process adds to this layer; 0 exactly when the process is none. */
    thicknessUm: deviationUmSchema,
    toleranceUm: deviationUmSchema,
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

export const ZONE_KINDS = ['rigid', 'flex', 'stiffened', 'finger'] as const

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
  /** Finished thickness that somebody states for this zone (drawing, data sheet, another firm's note). */
  statedThicknessUm: thicknessUmSchema.nullable(),
})

/** Layers from the top face down, and the zones of the part. */
export const constructionSchema = z.strictObject({
  layers: z.array(layerSchema).max(500, 'at most 500 layers'),
  zones: z.array(zoneSchema).max(200, 'at most 200 zones'),
})

export type Construction = z.infer<typeof constructionSchema>
export type Layer = z.infer<typeof layerSchema>
export type ConductorLayer = z.infer<typeof conductorLayerSchema>
export type DielectricLayer = z.infer<typeof dielectricLayerSchema>
export type UnbondedGapLayer = z.infer<typeof unbondedGapLayerSchema>
export type Zone = z.infer<typeof zoneSchema>
