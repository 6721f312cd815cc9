import 'server-only'
import type { ServerRefusal } from './refusal'

/** Work that keeps a processor busy, in queues of their own: the person who asks for one kind does not wait for the other. */
export type TurnKind = 'documents' | 'calculations' | 'pages'

interface Limits {
  /** How many run at once. */
  readonly atOnce: number
  readonly mostOfOne: number
  readonly mostInAll: number
}

/**
 * Documents are laid out by one thread; a calculation, and a page that is computed, holds the one that answers everybody. So each
 * kind runs one at a time.
 * One person may have a whole set of drawings on the way, and a queue that is this long is minutes long.
 */
const LIMITS: Readonly<Record<TurnKind, Limits>> = {
  documents: { atOnce: 1, mostOfOne: 24, mostInAll: 120 },
  calculations: { atOnce: 1, mostOfOne: 16, mostInAll: 120 },
  // A browser that opens again brings back every tab that it had.
  pages: { atOnce: 1, mostOfOne: 60, mostInAll: 400 },
}

/** Why somebody is not let into a queue. Queues are the whole process's, and each bundle has a class of its own: the name tells, as with the errors of jobs. */
export class NoTurnError extends Error {
  constructor(readonly refusal: Extract<ServerRefusal, { kind: 'busy' | 'too-many' }>) {
    super(refusal.message)
    this.name = 'NoTurnError'
  }

  static override [Symbol.hasInstance](error: unknown): error is NoTurnError {
    return error instanceof Error && error.name === 'NoTurnError' && 'refusal' in error
  }
}

interface Waiting {
  readonly start: () => void
}

/**
 * A queue in which people take turns: next is the one who had no turn yet, or whose last one is longest ago; of those with none,
 * who came first.
 */
export class FairTurns {
  readonly #limits: Limits
  /** By person, in the order in which they came. */
  readonly #waiting = new Map<string, Waiting[]>()
  readonly #running = new Map<string, number>()
  /** The number of each person's last turn, since the queue was last empty. */
  readonly #lastTurns = new Map<string, number>()
  #turnCount = 0
  #runningCount = 0
  #waitingCount = 0

  constructor(limits: Limits) {
    this.#limits = limits
  }

  /**
   * Runs `work` in the person's turn.
   * @param signal  the person who goes away while waiting loses the turn
   * @throws NoTurnError where the queue, or the person's part of it, is full
   */
  async run<T>(personId: string, work: () => Promise<T>, signal?: AbortSignal): Promise<T> {
    const leave = await this.hold(personId, signal)
    try {
      return await work()
    } finally {
      leave()
    }
  }

  /**
   * Waits for the person's turn, for work that does not end where it began. The turn lasts until the returned function is
   * called; further calls of it do nothing.
   * @throws NoTurnError as `run`
   */
  async hold(personId: string, signal?: AbortSignal): Promise<() => void> {
    const own = (this.#waiting.get(personId)?.length ?? 0) + (this.#running.get(personId) ?? 0)
    if (own >= this.#limits.mostOfOne) throw new NoTurnError(TOO_MANY)
    if (this.#runningCount + this.#waitingCount >= this.#limits.mostInAll) throw new NoTurnError(BUSY)
    await this.#take(personId, signal)
    let isHeld = true
    return () => {
      if (!isHeld) return
      isHeld = false
      this.#end(personId)
    }
  }

  #take(personId: string, signal: AbortSignal | undefined): Promise<void> {
    return new Promise((resolve, reject) => {
      const leave = (): void => {
        this.#forget(personId, waiting)
        reject(signal?.reason ?? new Error('gone'))
      }
      const waiting: Waiting = {
        start: () => {
          signal?.removeEventListener('abort', leave)
          resolve()
        },
      }
      if (signal?.aborted === true) {
        reject(signal.reason)
        return
      }
      signal?.addEventListener('abort', leave)
      this.#waiting.set(personId, [...(this.#waiting.get(personId) ?? []), waiting])
      this.#waitingCount += 1
      this.#startNext()
    })
  }

  #forget(personId: string, gone: Waiting): void {
    const rest = (this.#waiting.get(personId) ?? []).filter((waiting) => waiting !== gone)
    this.#waitingCount -= 1
    if (rest.length === 0) this.#waiting.delete(personId)
    else this.#waiting.set(personId, rest)
  }

  #startNext(): void {
    while (this.#runningCount < this.#limits.atOnce) {
      const personId = this.#findNext()
      const [first] = (personId === null ? undefined : this.#waiting.get(personId)) ?? []
      if (personId === null || first === undefined) return
      this.#forget(personId, first)
      this.#turnCount += 1
      this.#lastTurns.set(personId, this.#turnCount)
      this.#runningCount += 1
      this.#running.set(personId, (this.#running.get(personId) ?? 0) + 1)
      first.start()
    }
  }

  #findNext(): string | null {
    let next: string | null = null
    for (const personId of this.#waiting.keys()) {
      if (next === null || this.#lastTurnOf(personId) < this.#lastTurnOf(next)) next = personId
    }
    return next
  }

  #lastTurnOf(personId: string): number {
    return this.#lastTurns.get(personId) ?? 0
  }

  #end(personId: string): void {
    const left = (this.#running.get(personId) ?? 1) - 1
    if (left === 0) this.#running.delete(personId)
    else this.#running.set(personId, left)
    this.#runningCount -= 1
    if (this.#runningCount + this.#waitingCount === 0) this.#lastTurns.clear()
    // Not at once: what came over the network while the last turn held the thread is read first, and may be next.
    setImmediate(() => this.#startNext())
  }
}

const TOO_MANY = {
  kind: 'too-many',
  message: 'Your earlier requests are still being processed. Try again in half a minute.',
} as const

const BUSY = {
  kind: 'busy',
  message: 'The server is busy with other people’s requests. Nothing was changed; try again in half a minute.',
} as const

/** One queue of each kind per process, however often a bundle holds this module. */
const PLACE = Symbol.for('bendworthy.fair-turns')
const process_ = globalThis as { [PLACE]?: Map<TurnKind, FairTurns> }

export function getFairTurns(kind: TurnKind): FairTurns {
  process_[PLACE] ??= new Map()
  const known = process_[PLACE].get(kind)
  if (known !== undefined) return known
  const made = new FairTurns(LIMITS[kind])
  process_[PLACE].set(kind, made)
  return made
}
