import { z } from 'zod'
import { connectorFeatureSchema } from './connectors'
import { outlineSchema } from './outline'
import {
  deviationUmSchema,
  distanceMmSchema,
  idSchema,
  lengthMmSchema,
  nameSchema,
  temperatureDegCSchema,
} from './primitives'

const named = { id: idSchema, name: nameSchema }
/** An observation that somebody made or has not made yet. */
const observed = z.boolean().nullable()
/** The nearest bend may be known before the distance to it. */
const distanceToBend = z.strictObject({ bendId: idSchema, distanceMm: distanceMmSchema.nullable() }).nullable()

/** That no bend lies within `CLEAR_OF_BENDS_MM`: enough of an answer for what lies far off. */
const clearOfBends = observed

/** Further from a bend than any guide asks of a hole, an opening or a component. Our choice. */
export const CLEAR_OF_BENDS_MM = 5

const impedanceOhmSchema = z.number().positive().max(1000).nullable()

const impedanceTerms = {
  tolerancePct: z.number().positive('must be greater than 0 %').max(50, 'must be at most 50 %').nullable(),
  kind: z.enum(['single', 'pair']).nullable(),
  referenceLayerId: idSchema.nullable(),
  /** A coupon is asked for. */
  coupon: observed,
}

/** What all nets of a class need of their conductors. */
export const netClassSchema = z.strictObject({
  ...named,
  impedanceOhm: impedanceOhmSchema,
  ...impedanceTerms,
  /** Most crosstalk at the near end, percent of the step. */
  crosstalkLimitPct: z.number().positive('must be greater than 0 %').max(100, 'must be at most 100 %').nullable(),
  /** Of the fastest edge, from 0 to 100 % of the step. */
  riseTimePs: z.number().positive('must be greater than 0 ps').max(1e9, 'must be at most 1 ms').nullable(),
})

/** A conductor, or a group of alike ones, with what it must carry. */
export const conductorFeatureSchema = z.strictObject({
  ...named,
  layerId: idSchema,
  widthMm: lengthMmSchema.nullable(),
  spaceMm: lengthMmSchema.nullable(),
  lengthMm: lengthMmSchema.nullable(),
  currentAmp: z.number().nonnegative('must not be negative').max(1000).nullable(),
  allowedRiseDegC: z.number().positive('must be greater than 0 °C').max(200).nullable(),
  allowedDropVolt: z.number().positive('must be greater than 0 V').max(1000).nullable(),
  /** The drop counts there and back: the current returns on a conductor as long as this one. */
  returnAsLong: observed,
  /** A signal that carries no power is not asked for current and drop. */
  carriesPower: observed,
  /** Class whose needs hold for it as far as it states none of its own. */
  netClassId: idSchema.nullable(),
  /** Stated impedance need: remedies that would move it are marked. */
  impedanceOhm: impedanceOhmSchema,
  /** What belongs to a stated impedance; asked only where one is stated. */
  impedance: z.strictObject({
    ...impedanceTerms,
    /** The plane under it goes on without a gap; asked only where the plane is split. */
    referenceUnbroken: observed,
  }),
  /** Highest working voltage between this conductor and the nearest one, peak or direct; 0 within one net. */
  voltageVolt: z.number().nonnegative('must not be negative').max(100_000, 'must be at most 100 000 V').nullable(),
  /** Film, mask or laminate over it wherever it runs beside another. */
  isCovered: observed,
  /** Highest frequency of what it carries. */
  frequencyMhz: z.number().positive('must be greater than 0 MHz').max(1_000_000).nullable(),
  crossings: z
    .array(
      z.strictObject({
        bendId: idSchema,
        /** 90 is at right angles to the bend axis. */
        angleToAxisDeg: z.number().min(0).max(90, 'is measured from 0° to 90°').nullable(),
        widthChangesInside: observed,
        directionChangesInside: observed,
      }),
    )
    .max(50),
})

export const HOLE_FILLINGS = ['open', 'covered', 'filled', 'filled-and-capped'] as const

export const holeFeatureSchema = z.strictObject({
  ...named,
  /** Zone that the hole goes through. */
  zoneId: idSchema.nullable(),
  plated: observed,
  /** Conductor layers at which a plated hole begins and ends. */
  fromLayerId: idSchema.nullable(),
  toLayerId: idSchema.nullable(),
  filling: z.enum(HOLE_FILLINGS).nullable(),
  /** Copper on the wall of a plated hole. */
  wallPlatingUm: deviationUmSchema.nullable(),
  drillMm: lengthMmSchema.nullable(),
  landMm: lengthMmSchema.nullable(),
  nearestBend: distanceToBend,
  clearOfBends,
  /** From the hole's edge to the nearest rigid-to-flex transition. */
  transitionDistanceMm: distanceMmSchema.nullable(),
  /** From the hole's edge to the nearest edge of a stiffener. */
  stiffenerEdgeDistanceMm: distanceMmSchema.nullable(),
  /** Diameter of the hole in the stiffener under it; 0 where the stiffener closes the hole. */
  stiffenerHoleMm: distanceMmSchema.nullable(),
})

export const padFeatureSchema = z.strictObject({
  ...named,
  layerId: idSchema,
  /** Zone that it lies in: on laminate or on film. */
  zoneId: idSchema.nullable(),
  hasPlatedHole: observed,
  /** Spurs or tie-downs held by the coverlay. */
  anchorCount: z.int().min(0).max(100).nullable(),
  /** How far the coverlay covers the pad's rim. */
  coverlayCaptureMm: distanceMmSchema.nullable(),
  teardrop: observed,
  nearestBend: distanceToBend,
  clearOfBends,
})

export const outlineCornerFeatureSchema = z.strictObject({
  ...named,
  insideRadiusMm: distanceMmSchema.nullable(),
  /** Does film of a flex zone end in this corner? */
  bordersFlex: observed,
  /** An arm that is pulled, in assembly or in service, starts here. */
  isPulled: observed,
  tearStop: observed,
})

export const widthStepFeatureSchema = z.strictObject({
  ...named,
  layerId: idSchema,
  wideMm: lengthMmSchema.nullable(),
  narrowMm: lengthMmSchema.nullable(),
  /** Length over which the width changes; 0 is a step. */
  taperLengthMm: distanceMmSchema.nullable(),
  nearestBend: distanceToBend,
  clearOfBends,
})

export const coverlayOpeningFeatureSchema = z.strictObject({
  ...named,
  method: z.enum(['drill', 'punch', 'laser']).nullable(),
  openingMm: lengthMmSchema.nullable(),
  /** Narrowest strip of coverlay beside the opening. */
  webMm: distanceMmSchema.nullable(),
  /** Smallest dimension of the copper under it. */
  landMm: lengthMmSchema.nullable(),
  /** Of that, as much must stay open to be soldered or touched. */
  neededOpenMm: lengthMmSchema.nullable(),
  nearestBend: distanceToBend,
  clearOfBends,
})

export const stiffenerFeatureSchema = z.strictObject({
  ...named,
  layerId: idSchema,
  purpose: z.enum(['connector', 'components', 'thickness', 'handling']).nullable(),
  /** How far the stiffener reaches past the end of the coverlay; 0 ends where the coverlay ends. */
  coverlayOverlapMm: distanceMmSchema.nullable(),
  bonded: z.enum(['before-soldering', 'after-soldering']).nullable(),
  /** What the stiffener and its bond bear in soldering, the lower of the two, by the maker's sheet. */
  heatRatingDegC: temperatureDegCSchema.nullable(),
  nearestBend: distanceToBend,
  /** Shown with its adhesive and position on the drawing. */
  onDrawing: observed,
})

export const slitFeatureSchema = z.strictObject({
  ...named,
  /** 0 ends square. */
  endReliefDiameterMm: distanceMmSchema.nullable(),
  /** 0 is a cut. */
  widthMm: distanceMmSchema.nullable(),
  tearStop: observed,
})

export const COMPONENT_SIDES = ['top', 'bottom'] as const

export const componentFeatureSchema = z.strictObject({
  ...named,
  nearestBend: distanceToBend,
  clearOfBends,
  transitionDistanceMm: distanceMmSchema.nullable(),
  /** Zone that it stands on, and the face: what lies under it follows from the layers there. */
  zoneId: idSchema.nullable(),
  side: z.enum(COMPONENT_SIDES).nullable(),
  /** Where the zone has a stiffener: does it reach under this component? */
  overStiffener: observed,
})

/** Two features that must lie well to each other, and what the fabricator holds between them. */
const registrationSchema = z.strictObject({
  ...named,
  /** Largest shift that still works. */
  neededMm: lengthMmSchema.nullable(),
  /** What the fabricator says it holds. */
  heldMm: lengthMmSchema.nullable(),
})

/** What is agreed for the edges of rigid zones beside flex. */
const rigidEdgesSchema = z.strictObject({
  bead: z.enum(['called-out', 'ruled-out']).nullable(),
  beadMaterial: z.string().trim().max(120, 'is longer than 120 characters'),
  beadWidthMm: lengthMmSchema.nullable(),
  beadHeightMm: lengthMmSchema.nullable(),
  /** Prepreg ends this far inside the rigid edge. */
  prepregSetBackMm: distanceMmSchema.nullable(),
  /** Resin may come out this far past the rigid edge. */
  squeezeOutMm: distanceMmSchema.nullable(),
})

export const UNKNOWN_RIGID_EDGES: z.infer<typeof rigidEdgesSchema> = {
  bead: null,
  beadMaterial: '',
  beadWidthMm: null,
  beadHeightMm: null,
  prepregSetBackMm: null,
  squeezeOutMm: null,
}

/** Where shield films are tied to ground. */
const shieldGroundSchema = z.strictObject({
  pointCount: z.int('must be a whole number').min(0).max(1000).nullable(),
  /** Through openings in the coverlay that the drawing shows. */
  openingsShown: observed,
  maxResistanceOhm: z.number().positive('must be greater than 0 Ω').max(1000).nullable(),
})

export const UNKNOWN_SHIELD_GROUND: z.infer<typeof shieldGroundSchema> = {
  pointCount: null,
  openingsShown: null,
  maxResistanceOhm: null,
}

/**
 * Lists that are unknown while they are empty and not marked here. Stiffeners have no mark: the layers of the construction say which there are.
 */
export const MARKABLE_LISTS = [
  'bends',
  'conductors',
  'crossings',
  'holes',
  'pads',
  'outlineCorners',
  'widthSteps',
  'coverlayOpenings',
  'slits',
  'components',
  'registrations',
] as const
export type MarkableList = (typeof MARKABLE_LISTS)[number]

/** How the outline is cut: finer with the first two. */
export const OUTLINE_CUTS = ['laser', 'die', 'rout', 'steel-rule'] as const

/** Dimensions typed in, or measured in artwork. Lists may be empty; a null is "not known yet", never a default. */
export const featuresSchema = z.strictObject({
  /** Lists of which somebody said that the part has none of the kind. The mark of a list that is filled says nothing. */
  none: z.array(z.enum(MARKABLE_LISTS)).max(MARKABLE_LISTS.length),
  netClasses: z.array(netClassSchema).max(100),
  conductors: z.array(conductorFeatureSchema).max(2000),
  holes: z.array(holeFeatureSchema).max(2000),
  pads: z.array(padFeatureSchema).max(2000),
  outlineCorners: z.array(outlineCornerFeatureSchema).max(2000),
  widthSteps: z.array(widthStepFeatureSchema).max(2000),
  coverlayOpenings: z.array(coverlayOpeningFeatureSchema).max(2000),
  stiffeners: z.array(stiffenerFeatureSchema).max(500),
  slits: z.array(slitFeatureSchema).max(500),
  components: z.array(componentFeatureSchema).max(2000),
  connectors: z.array(connectorFeatureSchema).max(100),
  registrations: z.array(registrationSchema).max(200),
  rigidEdges: rigidEdgesSchema,
  shieldGround: shieldGroundSchema,
  copperToOutlineMm: distanceMmSchema.nullable(),
  outlineCutBy: z.enum(OUTLINE_CUTS).nullable(),
  /** Outline of the part in the flat. Documents from before there was one read as "not known yet". */
  outline: outlineSchema.nullable().default(null),
  /** Whole-part observations on the routing. */
  routing: z.strictObject({
    cornersCurved: observed,
    evenlySpacedInBends: observed,
    staggeredOnAdjacentLayers: observed,
    coverlayEdgeInsideBend: observed,
    cutOutsConsideredAtTightBends: observed,
    layersNamedOnDrawing: observed,
    bendsCalledOutOnDrawing: observed,
    coverlayDetailOnDrawing: observed,
  }),
})

/** A conductor whose impedance needs nobody has stated. */
export const UNKNOWN_IMPEDANCE: z.infer<typeof conductorFeatureSchema>['impedance'] = {
  tolerancePct: null,
  kind: null,
  referenceLayerId: null,
  coupon: null,
  referenceUnbroken: null,
}

export type Features = z.infer<typeof featuresSchema>
export type NetClass = z.infer<typeof netClassSchema>
export type ConductorFeature = z.infer<typeof conductorFeatureSchema>
