import 'server-only'
import { refuseBusy } from './errors'

/**
 * Thrown where something that takes long is needed and not at hand. Inside a transaction it rolls everything back: the
 * computation runs while nobody waits for the database, keeps what it found, and the work is done once more.
 */
export class ComputationNeededError extends Error {
  /** @param compute  finds what is needed, off the request path, and keeps it where the work looks */
  constructor(readonly compute: () => Promise<void>) {
    super('something has to be computed first')
    this.name = 'ComputationNeededError'
  }

  /** By name: the server's bundles hold copies of this module, and the open database, which all share, belongs to one of them. */
  static override [Symbol.hasInstance](error: unknown): error is ComputationNeededError {
    return error instanceof Error && error.name === 'ComputationNeededError'
  }
}

/** One round finds what the work asks for first; a save of a large design that is shared with several fabricators takes a few. */
const MOST_ROUNDS = 24

/**
 * Does work that may need long computations: each is made between two attempts, never within one. So `work` may run several
 * times, and changes nothing but what its own transaction rolls back.
 */
export async function computing<T>(work: () => T | Promise<T>): Promise<T> {
  for (let round = 1; ; round++) {
    try {
      return await work()
    } catch (error) {
      if (!(error instanceof ComputationNeededError)) throw error
      if (round === MOST_ROUNDS)
        refuseBusy('The inputs kept changing while this was computed. Try again in half a minute.')
      await error.compute()
    }
  }
}

/** What was computed last, by its inputs, for when the work that needed it is done once more. What came first is forgotten first. */
export class Computed<T> {
  readonly #kept = new Map<string, T>()
  readonly #mostKept: number

  constructor(mostKept: number) {
    this.#mostKept = mostKept
  }

  /** @throws ComputationNeededError  where it is not at hand */
  get(key: string, compute: () => Promise<T>): T {
    const known = this.#kept.get(key)
    if (known !== undefined) return known
    throw new ComputationNeededError(async () => {
      this.#kept.set(key, await compute())
      const [oldest] = this.#kept.keys()
      if (oldest !== undefined && this.#kept.size > this.#mostKept) this.#kept.delete(oldest)
    })
  }
}
