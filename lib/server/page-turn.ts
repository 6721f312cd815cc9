import 'server-only'
import { after } from 'next/server'
import { cache } from 'react'
import type { Actor } from '@/lib/data'
import { type FairTurns, getFairTurns, NoTurnError } from './fair-turns'

/**
 * Pages draw and compute after their data is loaded, in chunks that hold the thread; a timer that is due fires only between
 * those. So a turn outlives the loading by this much, or until the answer is out. Longer would let a reader who takes the
 * page in slowly keep the others waiting.
 */
const REST_MS = 250

/** The error page says what it means: Next passes nothing else of a server's error to the browser. */
const BUSY_DIGEST = 'too-many-pages'

/** One page of one person: each load of it waits for the person's turn, and they share the one that is held. */
export class PageTurn {
  readonly #turns: FairTurns
  readonly #personId: string
  readonly #restMs: number
  #held: Promise<() => void> | null = null
  #loads = 0
  #rest: NodeJS.Timeout | undefined

  constructor(personId: string, turns: FairTurns = getFairTurns('pages'), restMs: number = REST_MS) {
    this.#personId = personId
    this.#turns = turns
    this.#restMs = restMs
  }

  /** @throws NoTurnError where the person, or everybody together, asks for too much at once */
  async run<T>(load: () => Promise<T>): Promise<T> {
    this.#loads += 1
    clearTimeout(this.#rest)
    try {
      this.#held ??= this.#turns.hold(this.#personId)
      await this.#held
      return await load()
    } finally {
      this.#loads -= 1
      if (this.#loads === 0) this.#rest = setTimeout(() => this.leave(), this.#restMs)
    }
  }

  /** The answer is out, or the time is over. What is still loading keeps the turn. */
  leave(): void {
    if (this.#loads > 0) return
    clearTimeout(this.#rest)
    const held = this.#held
    this.#held = null
    held?.then(
      (leave) => leave(),
      () => {},
    )
  }
}

const getPageTurn = cache((actor: Actor): PageTurn => {
  const turn = new PageTurn(actor.userId)
  after(() => turn.leave())
  return turn
})

/**
 * Loads what a page computes from, in the person's turn among all who ask for pages. For the pages of a revision and whatever
 * else reads results; not for pages that only list.
 */
export async function inPageTurn<T>(actor: Actor, load: () => Promise<T>): Promise<T> {
  try {
    return await getPageTurn(actor).run(load)
  } catch (error) {
    if (error instanceof NoTurnError) throw Object.assign(error, { digest: BUSY_DIGEST })
    throw error
  }
}
