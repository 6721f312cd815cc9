import 'server-only'
import { NoTurnError } from './fair-turns'

/** Things that stay open for long and cost little each: event streams, and files on their way. */
export type PlaceKind = 'streams' | 'uploads'

interface Limits {
  readonly mostOfOne: number
  readonly mostInAll: number
}

/** A browser opens six connections to a server (HTTP/1.1, common practice); a person may have a few browsers. */
const LIMITS: Readonly<Record<PlaceKind, Limits>> = {
  streams: { mostOfOne: 20, mostInAll: 400 },
  uploads: { mostOfOne: 4, mostInAll: 40 },
}

const WORDS: Readonly<Record<PlaceKind, { readonly tooMany: string; readonly busy: string }>> = {
  streams: {
    tooMany: 'You have too many pages open that receive live updates. Close some of them and reload.',
    busy: 'The server has reached its limit of pages with live updates. Reload in a minute.',
  },
  uploads: {
    tooMany: 'You are already sending several files. Try again when one of them has arrived.',
    busy: 'The server is receiving as many files as it can at once. Try again in a minute.',
  },
}

/** How many of each kind a person, and everybody, has open. */
export class Places {
  readonly #limits: Limits
  readonly #words: { readonly tooMany: string; readonly busy: string }
  readonly #taken = new Map<string, number>()
  #count = 0

  constructor(kind: PlaceKind, limits: Limits = LIMITS[kind]) {
    this.#limits = limits
    this.#words = WORDS[kind]
  }

  /**
   * Takes a place, until the returned function is called; further calls of it do nothing.
   * @throws NoTurnError where none is left
   */
  take(personId: string): () => void {
    const own = this.#taken.get(personId) ?? 0
    if (own >= this.#limits.mostOfOne) throw new NoTurnError({ kind: 'too-many', message: this.#words.tooMany })
    if (this.#count >= this.#limits.mostInAll) throw new NoTurnError({ kind: 'busy', message: this.#words.busy })
    this.#taken.set(personId, own + 1)
    this.#count += 1
    let isTaken = true
    return () => {
      if (!isTaken) return
      isTaken = false
      this.#count -= 1
      const left = (this.#taken.get(personId) ?? 1) - 1
      if (left === 0) this.#taken.delete(personId)
      else this.#taken.set(personId, left)
    }
  }
}

/** As for the queues: one of each kind per process. */
const PLACE = Symbol.for('bendworthy.places')
const process_ = globalThis as { [PLACE]?: Map<PlaceKind, Places> }

export function getPlaces(kind: PlaceKind): Places {
  process_[PLACE] ??= new Map()
  const known = process_[PLACE].get(kind)
  if (known !== undefined) return known
  const made = new Places(kind)
  process_[PLACE].set(kind, made)
  return made
}
