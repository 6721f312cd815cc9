import { z } from 'zod'
import { distanceMmSchema, idSchema, lengthMmSchema, nameSchema, textSchema } from './primitives'

/** Fold once at assembly, flex a few times to install, or flex in service. */
export const BEND_USES = ['fold-once', 'flex-to-install', 'dynamic'] as const

/** From flat to the radius and back (one-way), or to both sides of flat (reversed). */
export const BEND_MOTIONS = ['one-way', 'reversed'] as const

/** What holds the radius, so that handling cannot bend the part tighter than was checked. */
export const RADIUS_HOLDERS = ['former', 'stop', 'channel', 'bonded-in-place', 'nothing'] as const

export const bendSchema = z
  .strictObject({
    id: idSchema,
    name: nameSchema,
    zoneId: idSchema,
    insideRadiusMm: z.number().positive('must be greater than 0 mm').max(1000, 'must be at most 1000 mm'),
    radiusToleranceMm: distanceMmSchema,
    angleDeg: z.number().positive('must be greater than 0°').max(3600, 'must be at most 3600°'),
    /** Which face of the part lies on the inside (concave side) of the bend. */
    insideFace: z.enum(['top', 'bottom']),
    /** Length of the bend along its axis, that is the width of the part there. */
    axisLengthMm: lengthMmSchema,
    use: z.enum(BEND_USES).nullable(),
    motion: z.enum(BEND_MOTIONS),
    /** Needed for dynamic use. */
    requiredCycles: z.number().positive('must be greater than 0').max(1e12, 'must be at most 1e12').nullable(),
    radiusHeldBy: z.enum(RADIUS_HOLDERS).nullable(),
    /** From the bend's nearest edge to the edge of a rigid or stiffened zone. */
    distanceToRigidMm: distanceMmSchema.nullable(),
    /** Strain relief (a bead, or coverlay carried under the rigid edge) at that transition. */
    strainReliefAtTransition: z.boolean().nullable(),
    /** Slack, developed length and fold order tried on a paper or film model. */
    triedOnModel: z.boolean().nullable(),
    /** How flexing in service is tested; what a drawing for continuous flexing states beside the cycles. */
    flexTest: z.strictObject({
      cyclesPerMinute: z.number().positive('must be greater than 0').max(100_000).nullable(),
      travelMm: lengthMmSchema.nullable(),
      mandrelDiameterMm: lengthMmSchema.nullable(),
      /** Where the part is held and moved. */
      pointsOfApplication: textSchema,
    }),
    note: textSchema,
  })
  .refine((bend) => bend.radiusToleranceMm < bend.insideRadiusMm, {
    path: ['radiusToleranceMm'],
    message: 'must be smaller than the inside radius',
  })

export type Bend = z.infer<typeof bendSchema>

/** Nothing is said yet of how flexing is tested. */
const UNKNOWN_FLEX_TEST: Bend['flexTest'] = {
  cyclesPerMinute: null,
  travelMm: null,
  mandrelDiameterMm: null,
  pointsOfApplication: '',
}

/** What a new bend says of itself where nobody has said anything: a new field gets its unknown value here. */
export const UNKNOWN_BEND = {
  use: null,
  motion: 'one-way',
  requiredCycles: null,
  radiusHeldBy: null,
  distanceToRigidMm: null,
  strainReliefAtTransition: null,
  triedOnModel: null,
  flexTest: UNKNOWN_FLEX_TEST,
  note: '',
} as const satisfies Partial<Bend>
