import { z } from 'zod'
import { pointMmSchema } from './primitives'

/**
 * A point of a path, and the way from it to the next: straight where `viaMm` is null, else the arc through that point. Start, through and
 * end alone define an arc, so that a mirrored or turned plan has the same arcs; it is at most a half circle.
 */
const nodeSchema = z.strictObject({ atMm: pointMmSchema, viaMm: pointMmSchema.nullable() })

export type PlanNode = z.infer<typeof nodeSchema>

const MAX_NODES = 2000
const TOO_MANY = `a path has at most ${MAX_NODES} points`

/** A closed path: from its last point it goes on to the first. */
export const loopSchema = z.array(nodeSchema).min(2, 'a closed path has at least 2 points').max(MAX_NODES, TOO_MANY)

/** An open path; the last point's `viaMm` is null. */
export const pathSchema = z.array(nodeSchema).min(2, 'a path has at least 2 points').max(MAX_NODES, TOO_MANY)
