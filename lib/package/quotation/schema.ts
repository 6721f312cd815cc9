import { z } from 'zod'

const text = z.string()
const amount = z.number().nonnegative()
const day = z.iso.date().nullable()

const layerSchema = z.strictObject({
  /** From the top face, counted from 1. */
  position: z.int().positive(),
  /** Of a conductor layer, `L1` from the top; empty for the others. */
  designation: text,
  name: text,
  kind: text,
  material: text,
  specification: text,
  /** As bought. */
  thicknessUm: amount,
  /** Null of air, which nobody buys. */
  tolerancePlusUm: amount.nullable(),
  toleranceMinusUm: amount.nullable(),
  plating: text,
  /** Names of the zones that it lies in. */
  zones: z.array(text),
})

const zoneSchema = z.strictObject({
  name: text,
  kind: text,
  lengthMm: amount.nullable(),
  widthMm: amount.nullable(),
  areaMm2: amount.nullable(),
  areaBasis: z.enum(['drawn', 'stated', 'unknown']),
  /** Null while there are no results. */
  finishedUm: z.strictObject({ nominal: amount, low: amount, high: amount }).nullable(),
})

const materialSchema = z.strictObject({
  description: text,
  layers: z.array(text),
  zones: z.array(text),
  /** Of its zones, before anything is etched or cut out; null where the area of a zone is not known. */
  areaPerPartMm2: amount.nullable(),
  /** The same for the parts of a year; null where either is not known. */
  areaPerYearM2: amount.nullable(),
  /** Why there is no area; empty where there is one. */
  because: text,
})

const outlineSchema = z.strictObject({
  basis: z.enum(['drawn', 'stated', 'zones']),
  lengthMm: amount,
  widthMm: amount,
  areaMm2: amount,
  verticesMm: z.array(z.tuple([z.number(), z.number()])),
  rollingDirection: z.enum(['along-x', 'along-y']).nullable(),
  note: text,
})

const panelFormatSchema = z.strictObject({
  name: text,
  widthMm: amount,
  heightMm: amount,
  partsPerPanel: z.int().nonnegative(),
  /** Parts over the whole panel, margins included. */
  usedFraction: z.number().min(0).max(1),
  /** Panel over parts; null where none fits. */
  panelAreaPerPartMm2: amount.nullable(),
  /** On which a good part costs least. */
  isCheapest: z.boolean(),
})

const panelSchema = z.strictObject({
  formats: z.array(panelFormatSchema),
  /** Panels started for the parts of a year on the cheapest format, losses included; null where either is not known. */
  panelsPerYear: z.int().nonnegative().nullable(),
  /** Of each sheet that lies on the whole panel. */
  sheetAreaPerYearM2: amount.nullable(),
  /** What losses were counted, in words; empty without a count of panels. */
  yieldNote: text,
  /** Why there is nothing; empty where there are formats. */
  because: text,
})

const openPointSchema = z.strictObject({
  kind: z.enum(['gap', 'must-change', 'engineering-query']),
  /** Of a gap: what it costs if nobody answers. */
  severity: z.enum(['blocking', 'major', 'minor']).nullable(),
  text,
  /** Of a thread: what it is about. */
  about: text,
  state: z.enum(['open', 'answered']),
  dueOn: day,
})

/** A request for quotation as it leaves: numbers in the units of their names, words as people read them. */
export const quotationRequestSchema = z.strictObject({
  format: z.literal('bendworthy-request-for-quotation'),
  formatVersion: z.literal(1),
  statement: text,
  cautions: z.array(text),
  project: text,
  revision: text,
  stage: text,
  design: text,
  partNumber: text,
  from: text,
  contact: text,
  to: text,
  writtenOn: z.iso.date(),
  manufacturingReviewOn: day,
  layoutFreezeOn: day,
  neededOn: day,
  quantityPerYear: z.int().positive().nullable(),
  requirements: z.array(z.strictObject({ label: text, text })),
  layers: z.array(layerSchema),
  zones: z.array(zoneSchema),
  materials: z.array(materialSchema),
  /** Null where the part has none. */
  outline: outlineSchema.nullable(),
  outlineBecause: text,
  panel: panelSchema,
  openPoints: z.array(openPointSchema),
})

export type QuotationRequest = z.infer<typeof quotationRequestSchema>
export type OpenPoint = QuotationRequest['openPoints'][number]
