import { z } from 'zod'

/** Raised whenever the measurement of copper over the plan finds something else in the same files. */
export const ON_PLAN_VERSION = '3'

/** In the plan's coordinates. */
const placeSchema = z.tuple([z.number(), z.number()])
const placesSchema = z.object({ count: z.number(), firstAtMm: placeSchema.nullable() })

const registrationSchema = z.object({
  isMirrored: z.boolean(),
  turnDeg: z.number(),
  shiftMm: placeSchema,
  /** Share of the artwork's outline that lies on the plan's, 0 to 1. */
  fitFraction: z.number(),
  /** Does the outline fit in one position alone, or do holes or coordinates decide? */
  isUnique: z.boolean(),
  /** Most that both outlines lie apart, and where. */
  farthestMm: z.number(),
  farthestAtMm: placeSchema,
})

/** Bars of a hatched plane, as drawn. */
const hatchSchema = z.object({
  barMm: z.number(),
  pitchMm: z.number(),
  /** Of the nearest family of bars, 0 to 45: in a bend to its axis, in a zone to the plan's x axis. */
  angleDeg: z.number(),
  /** Share of the hatched area that its openings take. */
  openFraction: z.number(),
  /** At the border of an opening. */
  atMm: placeSchema,
})

/** Nearest border to a bend: 0 where one lies in it. A bend that is left out has none within 10 mm. */
const toBandsSchema = z.array(z.object({ lineId: z.string(), basis: z.string(), mm: z.number(), atMm: placeSchema }))

const bandLayerSchema = z.object({
  fileName: z.string(),
  copperFraction: z.number(),
  /** Straight pieces of conductors within the bend. */
  pieceCount: z.number(),
  narrowest: z.object({ widthMm: z.number(), atMm: placeSchema }).nullable(),
  leastAngle: z.object({ deg: z.number(), atMm: placeSchema }).nullable(),
  largestTurn: z.object({ deg: z.number(), atMm: placeSchema }).nullable(),
  turnCount: z.number(),
  widthChange: z.object({ fromMm: z.number(), toMm: z.number(), atMm: placeSchema }).nullable(),
  widthChangeCount: z.number(),
  ends: placesSchema,
  junctions: placesSchema,
  pads: placesSchema,
  leastSpace: z.object({ mm: z.number(), atMm: placeSchema }).nullable(),
  hatch: hatchSchema.nullable(),
  /** Share of the bend under copper more than 2 mm wide in every direction, with a place in the largest patch; null where there is none. */
  solid: z.object({ fraction: z.number(), atMm: placeSchema }).nullable(),
})

const bandSchema = z.object({
  lineId: z.string(),
  bendId: z.string(),
  /** What the band was: another axis or width has to be measured again. */
  basis: z.string(),
  layers: z.array(bandLayerSchema),
  /** Drilled holes whose walls reach into the bend, and how near the next one comes. */
  holes: placesSchema.extend({ platedCount: z.number() }),
  nearestHole: z
    .object({ mm: z.number(), atMm: placeSchema, diameterMm: z.number(), isPlated: z.boolean() })
    .nullable(),
  /** Conductors on layers next to each other: how much of the lesser copper lies over the other. */
  stacked: z.array(z.object({ upper: z.string(), lower: z.string(), shareFraction: z.number() })),
})

const layerSchema = z.object({
  fileName: z.string(),
  /** Place among the conductor layers of the artwork, from 0 at the top. */
  place: z.number(),
  zones: z.array(
    z.object({
      zoneId: z.string(),
      copperFraction: z.number(),
      /** Round lands that a straight conductor runs into, and those where it grows no wider before it does. */
      joinedLands: z.object({ count: z.number(), bareCount: z.number(), firstBareAtMm: placeSchema.nullable() }),
      hatch: hatchSchema.nullable(),
      /** Strokes that meet and differ in width by a fifth and more; those of them whose corners nothing fills, and the one that changes most. */
      widthSteps: z.object({
        count: z.number(),
        abruptCount: z.number(),
        worst: z.object({ wideMm: z.number(), narrowMm: z.number(), atMm: placeSchema }).nullable(),
      }),
    }),
  ),
  /** Nearest edge of copper to the outline and cut-outs, connector ends left out; null where it is more than 1 mm. 0 where copper crosses. */
  toOutline: z.object({ mm: z.number(), atMm: placeSchema }).nullable(),
})

/** What a set's copper and holes do on a plan. */
export const onPlanFactsSchema = z.object({
  version: z.string(),
  /** What outline, zones and holes of the plan were. */
  planBasis: z.string(),
  /** Why nothing could be laid over the plan; null where it was. */
  unplacedReason: z.string().nullable(),
  /** Why nobody knows the order of the copper layers; null where it is known. */
  unorderedReason: z.string().nullable(),
  registration: registrationSchema.nullable(),
  layers: z.array(layerSchema),
  bands: z.array(bandSchema),
  /** Holes of the plan by their kind: how many lie where one was drilled. */
  holes: z.array(
    z.object({
      holeId: z.string(),
      drawnCount: z.number(),
      foundCount: z.number(),
      missingAtMm: placeSchema.nullable(),
    }),
  ),
  /** The wall of the nearest plated hole to the outline and cut-outs; null where it is more than 1 mm. 0 where the outline cuts it. */
  platedHoleToOutline: z.object({ mm: z.number(), atMm: placeSchema, diameterMm: z.number() }).nullable(),
  /** Nearest to the borders between rigid and other zones, within 10 mm; null where the plan has no such border. */
  transitions: z
    .object({
      hole: z.object({ mm: z.number(), atMm: placeSchema, diameterMm: z.number() }).nullable(),
      /** A flashed land without a hole. */
      land: z.object({ mm: z.number(), atMm: placeSchema, fileName: z.string() }).nullable(),
    })
    .nullable(),
  /** Coverlay files that draw openings. */
  covers: z.array(
    z.object({
      fileName: z.string(),
      side: z.enum(['top', 'bottom', 'inner']).nullable(),
      bands: toBandsSchema,
      zones: z.array(
        z.object({
          zoneId: z.string(),
          /** Lands without a hole in an opening, by their spurs under the coverlay; null spurs where nobody can tell. Least coverlay over a rim, below 0 where the opening is wider. */
          lands: z.array(
            z.object({
              spurCount: z.number().nullable(),
              count: z.number(),
              leastRim: z.object({ mm: z.number(), atMm: placeSchema }),
            }),
          ),
        }),
      ),
    }),
  ),
  stiffeners: z.array(
    z.object({
      fileName: z.string(),
      side: z.enum(['top', 'bottom', 'inner']).nullable(),
      bands: toBandsSchema,
      /** Past the nearest end of the coverlay; 0 where it ends in an opening, null where none is near. */
      overlap: z.object({ mm: z.number(), atMm: placeSchema }).nullable(),
      /** From its edges on the film to the wall of the nearest hole; null where none is within 5 mm. */
      nearestHole: z.object({ mm: z.number(), atMm: placeSchema, diameterMm: z.number() }).nullable(),
    }),
  ),
})

export type OnPlanFacts = z.infer<typeof onPlanFactsSchema>
export type OnPlanBand = OnPlanFacts['bands'][number]
export type OnPlanHatch = z.infer<typeof hatchSchema>
export type OnPlanBandLayer = z.infer<typeof bandLayerSchema>
