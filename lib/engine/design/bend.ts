import { z } from 'zod'
import { distanceMmSchema, idSchema, lengthMmSchema, nameSchema, textSchema } from './primitives'

/** Fold once at assembly, flex a few times to install, or flex in service. */
export const BEND_USES = ['fold-once', 'flex-to-install', 'dynamic'] as const

/** From flat, or from the flatter end that is stated, to the radius and back (one-way), or to both sides of flat (reversed). */
export const BEND_MOTIONS = ['one-way', 'reversed'] as const

/** What holds the radius, so that handling cannot bend the part tighter than was checked. */
export const RADIUS_HOLDERS = [
  'former',
  'stop',
  'channel',
  'bonded-in-place',
  'between-faces',
  'free-loop',
  'nothing',
] as const

/** How a bend is brought to its radius. */
export const FORMING_METHODS = ['tool', 'by-hand-over-former', 'by-hand'] as const
export const FORMED_BY = ['fabricator', 'assembler', 'team', 'user'] as const
/** Motion besides the one that the bend is checked for. */
export const FURTHER_MOTIONS = ['none', 'twist', 'second-direction', 'moves-after-fold'] as const
export const RUBBING = ['nothing', 'guide-with-radius', 'edge-or-surface'] as const

/** How strain is relieved where a bend leaves a rigid edge. */
export const STRAIN_RELIEF_KINDS = ['bead', 'cover-under-edge', 'rounded-edge'] as const

/** Lengths of leaves that are not bonded: all alike, alike with room for the inner ones to buckle, or longer from the inside out. */
export const LEAF_LENGTHS = ['equal', 'equal-free-to-buckle', 'stepped'] as const

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
    /** Inside radius at the flatter end of the motion; null where the part flexes from flat. */
    flexesFromRadiusMm: z
      .number()
      .positive('must be greater than 0 mm')
      .max(10_000, 'must be at most 10000 mm')
      .nullable(),
    /** The same as an angle, over the same length of the part; one of both is stated. 0 is flat. */
    flexesFromAngleDeg: z.number().nonnegative('must not be negative').max(3600, 'must be at most 3600°').nullable(),
    /** Inside radius of a fold that was made here once, before the part takes its radius or flexes. */
    foldedToRadiusMm: z.number().positive('must be greater than 0 mm').max(1000, 'must be at most 1000 mm').nullable(),
    /** Force along the part that acts together with the bend, over its whole width. */
    pullN: z.number().nonnegative('must not be negative').max(100_000, 'must be at most 100000 N').nullable(),
    /** Turn of one end about the part's length against the other, from one end of the motion to the other. */
    twistDeg: z.number().nonnegative('must not be negative').max(3600, 'must be at most 3600°').nullable(),
    /** Over which the part twists. */
    twistLengthMm: lengthMmSchema.nullable(),
    /** Needed for dynamic use. */
    requiredCycles: z.number().positive('must be greater than 0').max(1e12, 'must be at most 1e12').nullable(),
    radiusHeldBy: z.enum(RADIUS_HOLDERS).nullable(),
    /** Between two parallel faces that hold a fold of 180 degrees with nothing inside it. */
    faceGapMm: lengthMmSchema.nullable(),
    /** From the bend's nearest edge to the edge of a rigid or stiffened zone. */
    distanceToRigidMm: distanceMmSchema.nullable(),
    /** Strain relief (a bead, or coverlay carried under the rigid edge) at that transition. */
    strainReliefAtTransition: z.boolean().nullable(),
    strainReliefKind: z.enum(STRAIN_RELIEF_KINDS).nullable(),
    /** How far the bead, or the cover under the edge, reaches from the edge. */
    strainReliefWidthMm: lengthMmSchema.nullable(),
    leafLengths: z.enum(LEAF_LENGTHS).nullable(),
    /** Stepped leaves: by how much the outermost is longer than the innermost. */
    leafStepMm: distanceMmSchema.nullable(),
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
    /** How the bend is made. */
    forming: z.strictObject({
      method: z.enum(FORMING_METHODS).nullable(),
      by: z.enum(FORMED_BY).nullable(),
      springbackAllowed: z.boolean().nullable(),
    }),
    /** What happens to it besides the motion that it is checked for. */
    inProduct: z.strictObject({
      /** Times it is worked in assembly, test, rework and service calls. */
      handlingCycles: z.number().nonnegative('must not be negative').max(1_000_000).nullable(),
      /** Nothing that shakes the product moves it. */
      isTiedDown: z.boolean().nullable(),
      furtherMotion: z.enum(FURTHER_MOTIONS).nullable(),
      rubsOn: z.enum(RUBBING).nullable(),
      /** Followed through its motion in the model of the enclosure, slack and clearance included. */
      followedInEnclosure: z.boolean().nullable(),
    }),
    note: textSchema,
  })
  .refine((bend) => bend.radiusToleranceMm < bend.insideRadiusMm, {
    path: ['radiusToleranceMm'],
    message: 'must be smaller than the inside radius',
  })

export type Bend = z.infer<typeof bendSchema>

/** Nothing is stated yet about how flexing is tested. */
const UNKNOWN_FLEX_TEST: Bend['flexTest'] = {
  cyclesPerMinute: null,
  travelMm: null,
  mandrelDiameterMm: null,
  pointsOfApplication: '',
}

export const UNKNOWN_FORMING: Bend['forming'] = { method: null, by: null, springbackAllowed: null }

export const UNKNOWN_IN_PRODUCT: Bend['inProduct'] = {
  handlingCycles: null,
  isTiedDown: null,
  furtherMotion: null,
  rubsOn: null,
  followedInEnclosure: null,
}

/** What a new bend says of itself where nobody has said anything: a new field gets its unknown value here. */
export const UNKNOWN_BEND = {
  use: null,
  motion: 'one-way',
  flexesFromRadiusMm: null,
  flexesFromAngleDeg: null,
  foldedToRadiusMm: null,
  pullN: null,
  twistDeg: null,
  twistLengthMm: null,
  requiredCycles: null,
  radiusHeldBy: null,
  faceGapMm: null,
  distanceToRigidMm: null,
  strainReliefAtTransition: null,
  strainReliefKind: null,
  strainReliefWidthMm: null,
  leafLengths: null,
  leafStepMm: null,
  triedOnModel: null,
  flexTest: UNKNOWN_FLEX_TEST,
  forming: UNKNOWN_FORMING,
  inProduct: UNKNOWN_IN_PRODUCT,
  note: '',
} as const satisfies Partial<Bend>

/** What most bends leave blank, since it says that there is no such thing: shown where it is stated. */
export const BEND_STATE_KEYS = [
  'flexesFromRadiusMm',
  'flexesFromAngleDeg',
  'foldedToRadiusMm',
  'pullN',
  'twistDeg',
  'twistLengthMm',
  'faceGapMm',
] as const satisfies readonly (keyof Bend)[]

/** Those of them that a bend states. */
export function listStatedStateKeys(bend: Bend): readonly (typeof BEND_STATE_KEYS)[number][] {
  return BEND_STATE_KEYS.filter((key) => bend[key] !== null)
}
