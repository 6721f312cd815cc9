import { z } from 'zod'
import { SURFACE_FINISHES } from './brief'
import { distanceMmSchema, idSchema, lengthMmSchema, nameSchema } from './primitives'

/** One dimension of a contact end: the part as drawn, and what the connector's drawing accepts. Nulls are not known yet. */
const fitSchema = z
  .strictObject({
    partMm: lengthMmSchema.nullable(),
    /** Plus or minus. */
    toleranceMm: distanceMmSchema.nullable(),
    minMm: distanceMmSchema.nullable(),
    /** Null where the connector's drawing gives a minimum alone, or where nobody has said; the same the other way round. */
    maxMm: distanceMmSchema.nullable(),
  })
  .refine((fit) => fit.minMm === null || fit.maxMm === null || fit.minMm <= fit.maxMm, {
    path: ['maxMm'],
    message: 'must not be below the smallest',
  })

/** Dimensions of a contact end that a connector's drawing gives, apart from the thickness, which its zone has. */
export const CONNECTOR_DIMENSIONS = [
  'pitch',
  'contactWidth',
  'exposedLength',
  'endWidth',
  'edgeToContact',
  'stiffenerLength',
] as const

/** A contact end and the connector that it goes into. */
export const connectorFeatureSchema = z.strictObject({
  id: idSchema,
  name: nameSchema,
  zoneId: idSchema.nullable(),
  finish: z.enum(SURFACE_FINISHES).nullable(),
  isHardGold: z.boolean().nullable(),
  matings: z.int('must be a whole number').positive().max(1_000_000).nullable(),
  /** Pushed in where nobody sees it. */
  isBlindInsertion: z.boolean().nullable(),
  /** A solid plane or a hole lies between the contacts and the first bend. */
  hasPlaneOrHoleBeforeBend: z.boolean().nullable(),
  /** From the stiffened end to the first bend. */
  firstBendMm: distanceMmSchema.nullable(),
  pitch: fitSchema,
  contactWidth: fitSchema,
  exposedLength: fitSchema,
  /** Over both edges of the end. */
  endWidth: fitSchema,
  /** From the edge of the end to the middle of the outermost contact. */
  edgeToContact: fitSchema,
  stiffenerLength: fitSchema,
})

export type ConnectorFeature = z.infer<typeof connectorFeatureSchema>

const UNKNOWN_FIT: ConnectorFeature['pitch'] = { partMm: null, toleranceMm: null, minMm: null, maxMm: null }

/** A connector of which nobody has said anything yet. */
export const UNKNOWN_CONNECTOR: Omit<ConnectorFeature, 'id' | 'name'> = {
  zoneId: null,
  finish: null,
  isHardGold: null,
  matings: null,
  isBlindInsertion: null,
  hasPlaneOrHoleBeforeBend: null,
  firstBendMm: null,
  pitch: UNKNOWN_FIT,
  contactWidth: UNKNOWN_FIT,
  exposedLength: UNKNOWN_FIT,
  endWidth: UNKNOWN_FIT,
  edgeToContact: UNKNOWN_FIT,
  stiffenerLength: UNKNOWN_FIT,
}
