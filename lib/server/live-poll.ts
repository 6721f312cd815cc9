import 'server-only'
import { log } from '@/lib/config'
import { type Actor, takePulse } from '@/lib/data'

/** A page that listens to a revision. */
export interface Listener {
  readonly actor: Actor
  readonly revisionId: string
  /** Something may have happened that the page is to be told: it asks with the person's own rights. */
  readonly onNews: () => Promise<void>
  /** Nothing happened. */
  readonly onQuiet: () => void
  readonly onSessionEnded: () => void
}

/**
 * One question to the database for all pages that listen, however many: which revisions the trail went on about, and whose sessions
 * are still open. Only those that are concerned ask further.
 */
export class LivePoll {
  readonly #pauseMs: number
  readonly #listeners = new Set<Listener>()
  #timer: NodeJS.Timeout | undefined
  #lookedUpTo: number | null = null

  constructor(pauseMs: number) {
    this.#pauseMs = pauseMs
  }

  /** @param from  the record up to which the page was told already */
  add(listener: Listener, from: number): () => void {
    this.#listeners.add(listener)
    // Whoever joins later may be behind: the next round looks from there.
    this.#lookedUpTo = this.#lookedUpTo === null ? from : Math.min(this.#lookedUpTo, from)
    this.#timer ??= setTimeout(() => void this.#tick(), this.#pauseMs)
    return () => {
      this.#listeners.delete(listener)
      if (this.#listeners.size > 0) return
      clearTimeout(this.#timer)
      this.#timer = undefined
      this.#lookedUpTo = null
    }
  }

  async #tick(): Promise<void> {
    const listeners = [...this.#listeners]
    try {
      await this.#askFor(listeners)
    } catch (error) {
      log.error('unexpected error', { doing: 'looking for live events', error })
    }
    this.#timer = this.#listeners.size === 0 ? undefined : setTimeout(() => void this.#tick(), this.#pauseMs)
  }

  async #askFor(listeners: readonly Listener[]): Promise<void> {
    const after = this.#lookedUpTo ?? 0
    const sessionIds = listeners.flatMap(({ actor }) => actor.sessionId ?? [])
    const pulse = await takePulse(sessionIds, after)
    if (this.#lookedUpTo === after) this.#lookedUpTo = pulse.lastSequence
    for (const listener of listeners) {
      if (!this.#listeners.has(listener)) continue
      const { actor, revisionId, onNews, onQuiet, onSessionEnded } = listener
      if (actor.sessionId !== null && !pulse.openSessionIds.has(actor.sessionId)) onSessionEnded()
      else if (pulse.isBeyondRevisions || pulse.revisionIds.has(revisionId)) await onNews()
      else onQuiet()
    }
  }
}

/** One of each pause per process; pages have one pause. */
const PLACE = Symbol.for('bendworthy.live-poll')
const process_ = globalThis as { [PLACE]?: Map<number, LivePoll> }

export function getLivePoll(pauseMs: number): LivePoll {
  process_[PLACE] ??= new Map()
  const poll = process_[PLACE].get(pauseMs) ?? new LivePoll(pauseMs)
  process_[PLACE].set(pauseMs, poll)
  return poll
}
