import { z } from 'zod'
import { loopSchema, pathSchema } from './path-schema'
import {
  directionSchema,
  distanceMmSchema,
  idSchema,
  lengthMmSchema,
  nameSchema,
  pointMmSchema,
  spacePointMmSchema,
  textSchema,
} from './primitives'

const named = { id: idSchema, name: nameSchema }

const cutOutSchema = z.strictObject({ ...named, nodes: loopSchema })

/** A cut along a path. An end that lies on the outline is open; one inside of the part has a relief, 0 where it ends square. */
const slitSchema = z.strictObject({
  ...named,
  /** Slit of the features that it draws. */
  slitId: idSchema.nullable(),
  nodes: pathSchema,
  /** 0 is a cut without width. */
  widthMm: distanceMmSchema.nullable(),
  startReliefDiameterMm: distanceMmSchema.nullable(),
  endReliefDiameterMm: distanceMmSchema.nullable(),
})

const dividingLineSchema = z.strictObject({ ...named, nodes: pathSchema })

/** An area is whatever the dividing lines leave round this point: it needs no border of its own that could disagree with theirs. */
const areaSchema = z.strictObject({ ...named, zoneId: idSchema.nullable(), markMm: pointMmSchema })

/**
 * The axis of a bend: the middle of its band in the flat, from edge to edge. Radius, angle, inside face and use stand with the bend. One bend may
 * have several lines, where it is made across several arms at once.
 */
const bendLineSchema = z.strictObject({ id: idSchema, bendId: idSchema, fromMm: pointMmSchema, toMm: pointMmSchema })

/** Where a stiffener lies; its layer, and so its face, is that of the feature. */
const stiffenerSchema = z.strictObject({ id: idSchema, stiffenerId: idSchema, nodes: loopSchema })

/**
 * Where the end of an arm must come to lie once the part is folded, as the mechanical design has it: seen from the area that stays, in the plan's own x
 * and y, with z upwards from the top face of that area.
 */
const targetSchema = z.strictObject({
  /** Middle of the edge that goes in first, halfway through its thickness. */
  atMm: spacePointMmSchema,
  /** Which way the end points, out of the part. */
  pointsTo: directionSchema,
  /** Which way the top face looks there; null where nothing asks for it. */
  topFaces: directionSchema.nullable(),
  /** How far off the middle may be, in any direction, for the end to go in without force. */
  withinMm: lengthMmSchema.nullable(),
  withinDeg: z.number().positive('must be greater than 0°').max(90, 'must be at most 90°').nullable(),
})

/** The end of an arm that goes into a connector. */
const connectorEndSchema = z.strictObject({
  id: idSchema,
  connectorId: idSchema,
  /** The edge that goes in first. */
  fromMm: pointMmSchema,
  toMm: pointMmSchema,
  insertionDepthMm: lengthMmSchema.nullable(),
  contactCount: z.int('must be a whole number').positive().max(1000).nullable(),
  /** Middle of the first contact at the edge; the others follow by the step. */
  firstContactMm: pointMmSchema.nullable(),
  contactStepMm: pointMmSchema.nullable(),
  contactLengthMm: lengthMmSchema.nullable(),
  /** From the edge inwards. */
  platedLengthMm: lengthMmSchema.nullable(),
  target: targetSchema.nullable(),
})

const coverlayOpeningSchema = z.strictObject({
  id: idSchema,
  openingId: idSchema,
  /** Coverlay film that it opens; null where not known. */
  layerId: idSchema.nullable(),
  nodes: loopSchema,
})

/** A hole, or a pattern of alike ones: rows and columns of a parallelogram. */
const holeSchema = z.strictObject({
  id: idSchema,
  holeId: idSchema,
  atMm: pointMmSchema,
  columns: z.int('must be a whole number').positive().max(500),
  rows: z.int('must be a whole number').positive().max(500),
  columnStepMm: pointMmSchema.nullable(),
  rowStepMm: pointMmSchema.nullable(),
})

const padSchema = z.strictObject({
  id: idSchema,
  padId: idSchema,
  atMm: pointMmSchema,
  sizeMm: z.tuple([lengthMmSchema, lengthMmSchema]).nullable(),
  isRound: z.boolean().nullable(),
  /** Ends of spurs or tie-downs that the coverlay holds. */
  anchorsMm: z.array(pointMmSchema).max(16, 'at most 16 anchors'),
})

const componentSchema = z.strictObject({
  id: idSchema,
  componentId: idSchema,
  face: z.enum(['top', 'bottom']).nullable(),
  /** Body in plan. */
  nodes: loopSchema,
  heightMm: lengthMmSchema.nullable(),
})

const routeSchema = z.strictObject({
  id: idSchema,
  conductorId: idSchema,
  /** Where it is not the conductor's own, past a via. */
  layerId: idSchema.nullable(),
  nodes: pathSchema,
  /** Where it is not the conductor's own. */
  widthMm: lengthMmSchema.nullable(),
})

/** Which corner of the outline a corner of the features is. */
const cornerSchema = z.strictObject({ id: idSchema, cornerId: idSchema, atMm: pointMmSchema })

const datumSchema = z.strictObject({
  id: idSchema,
  letter: z.string().regex(/^[A-HJ-NPR-Z]{1,2}$/, 'is one or two capital letters other than I, O and Q'),
  fromMm: pointMmSchema,
  /** Null for a point, such as the middle of a hole. */
  toMm: pointMmSchema.nullable(),
})

/** A dimension that the drawing shows: its value is that of the plan, its tolerance is stated. */
const dimensionSchema = z.strictObject({
  id: idSchema,
  direction: z.enum(['along-x', 'along-y', 'straight']),
  fromMm: pointMmSchema,
  toMm: pointMmSchema,
  plusMm: distanceMmSchema.nullable(),
  minusMm: distanceMmSchema.nullable(),
  isReference: z.boolean(),
})

const noteSchema = z.strictObject({ id: idSchema, text: textSchema, atMm: pointMmSchema.nullable() })

const markingSchema = z.strictObject({
  id: idSchema,
  text: nameSchema,
  face: z.enum(['top', 'bottom']),
  atMm: pointMmSchema,
  heightMm: lengthMmSchema.nullable(),
})

const arraySchema = z.strictObject({
  columns: z.int('must be a whole number').positive().max(200),
  rows: z.int('must be a whole number').positive().max(200),
  /** From each part to the next. */
  columnStepMm: lengthMmSchema.nullable(),
  rowStepMm: lengthMmSchema.nullable(),
  frameMm: distanceMmSchema.nullable(),
  /** Where tabs hold a part, on its outline. */
  tabs: z.array(z.strictObject({ id: idSchema, atMm: pointMmSchema, widthMm: lengthMmSchema })).max(100),
  fiducials: z.array(z.strictObject({ id: idSchema, atMm: pointMmSchema })).max(100),
})

/** The room that the folded part has, as a box whose edges run along x, along y and square to the area that stays. Nulls are not known yet. */
const housingSchema = z.strictObject({
  /** Area that stays while the others fold; null takes the largest that does not bend. */
  heldAreaId: idSchema.nullable(),
  alongXMm: lengthMmSchema.nullable(),
  alongYMm: lengthMmSchema.nullable(),
  heightMm: lengthMmSchema.nullable(),
})

/** The part in the flat, seen on its top face. Every list may be empty and every null is "not known yet": a sketch has an outline alone. */
export const planSchema = z.strictObject({
  outline: loopSchema.nullable(),
  /** Direction in which the foil is rolled, counter-clockwise from x; null where nobody has said. */
  rollingDirectionDeg: z
    .number()
    .min(0, 'is measured from 0° to 180°')
    .lt(180, 'is measured from 0° to 180°')
    .nullable(),
  cutOuts: z.array(cutOutSchema).max(200, 'at most 200 cut-outs'),
  slits: z.array(slitSchema).max(200, 'at most 200 slits'),
  dividingLines: z.array(dividingLineSchema).max(400, 'at most 400 dividing lines'),
  areas: z.array(areaSchema).max(400, 'at most 400 areas'),
  bendLines: z.array(bendLineSchema).max(400, 'at most 400 bend lines'),
  stiffeners: z.array(stiffenerSchema).max(200, 'at most 200 stiffeners'),
  connectorEnds: z.array(connectorEndSchema).max(100, 'at most 100 connector ends'),
  coverlayOpenings: z.array(coverlayOpeningSchema).max(1000, 'at most 1000 openings'),
  holes: z.array(holeSchema).max(1000, 'at most 1000 holes and patterns'),
  pads: z.array(padSchema).max(1000, 'at most 1000 pads'),
  components: z.array(componentSchema).max(500, 'at most 500 components'),
  routes: z.array(routeSchema).max(1000, 'at most 1000 routes'),
  corners: z.array(cornerSchema).max(500, 'at most 500 corners'),
  datums: z.array(datumSchema).max(50, 'at most 50 datums'),
  dimensions: z.array(dimensionSchema).max(500, 'at most 500 dimensions'),
  notes: z.array(noteSchema).max(200, 'at most 200 notes'),
  markings: z.array(markingSchema).max(200, 'at most 200 markings'),
  array: arraySchema.nullable(),
  housing: housingSchema.nullable(),
})

export type Plan = z.infer<typeof planSchema>

/** A plan on which nothing is drawn yet. */
export const EMPTY_PLAN: Plan = {
  outline: null,
  rollingDirectionDeg: null,
  cutOuts: [],
  slits: [],
  dividingLines: [],
  areas: [],
  bendLines: [],
  stiffeners: [],
  connectorEnds: [],
  coverlayOpenings: [],
  holes: [],
  pads: [],
  components: [],
  routes: [],
  corners: [],
  datums: [],
  dimensions: [],
  notes: [],
  markings: [],
  array: null,
  housing: null,
}
// Plans are spread from it everywhere: what was pushed into one of its lists would be drawn in every part.
for (const part of Object.values(EMPTY_PLAN)) Object.freeze(part)
Object.freeze(EMPTY_PLAN)
