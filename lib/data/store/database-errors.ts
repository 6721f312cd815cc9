import 'server-only'

/**
 * Errors of both databases, told apart in one way. Prisma wraps what the driver said, one to three levels deep and with
 * different words for each database, so the questions are asked here and nowhere else.
 */

/** Thrown when a change kept meeting other changes to the same records; nothing of it was stored. */
export class WriteConflictError extends Error {
  readonly attempts: number

  constructor(attempts: number, cause: unknown) {
    super(
      `The change conflicted with other changes to the same records ${attempts} times and was not stored; try again.`,
      { cause },
    )
    this.name = 'WriteConflictError'
    this.attempts = attempts
  }

  /** By name: the open database, which all of the server's bundles share, belongs to one of them, and so does what it throws. */
  static override [Symbol.hasInstance](error: unknown): error is WriteConflictError {
    return error instanceof Error && error.name === 'WriteConflictError'
  }
}

/** SQLSTATE serialization_failure and deadlock_detected (PostgreSQL documentation, appendix A). */
const CONFLICT_STATES = new Set(['40001', '40P01'])

/** Whether an error means that a transaction lost against another one and may be run again. */
export function isWriteConflict(error: unknown): boolean {
  return someLayer(error, (layer) => {
    const { code, kind, originalCode } = layer
    if (code === 'P2034' || kind === 'TransactionWriteConflict') return true
    return [code, originalCode].some((word) => typeof word === 'string' && CONFLICT_STATES.has(word))
  })
}

/** SQLSTATE character_not_in_repertoire: PostgreSQL can neither keep nor compare a NUL in a text. */
const UNSTORABLE_STATE = '22021'

/** Whether an error means that a text was asked for that the database cannot hold, so that no record has it. */
export function isUnstorableText(error: unknown): boolean {
  return someLayer(error, ({ code, originalCode }) => code === UNSTORABLE_STATE || originalCode === UNSTORABLE_STATE)
}

type Layer = Readonly<Record<string, unknown>>

const DEEPEST_LAYER = 6

function someLayer(error: unknown, test: (layer: Layer) => boolean, depth = 0): boolean {
  if (typeof error !== 'object' || error === null || depth > DEEPEST_LAYER) return false
  const layer = error as Layer
  if (test(layer)) return true
  return [layer.cause, layer.meta, layer.driverAdapterError].some((inner) => someLayer(inner, test, depth + 1))
}
