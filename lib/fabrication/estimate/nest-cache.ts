import { type ExtraRoom, type NestedPart, type Nesting, nestPart, type PanelFormat } from '../panel'

/** Nests a part on a format; may know the answer already. */
export type Nester = (part: NestedPart, format: PanelFormat, extra: ExtraRoom) => Nesting

/**
 * Nestings by what they depend on: the same outline on the same panel comes to the same placements, no matter who asks, so that saving a
 * design whose outline did not change costs nothing here. What was asked for longest ago is forgotten first.
 */
export class NestingMemory {
  readonly #kept = new Map<string, Nesting>()
  readonly #mostKept: number

  constructor(mostKept = 300) {
    this.#mostKept = mostKept
  }

  find(...asked: Parameters<Nester>): Nesting | null {
    const key = makeKey(...asked)
    const known = this.#kept.get(key)
    if (known === undefined) return null
    this.#kept.delete(key)
    this.#kept.set(key, known)
    return known
  }

  keep(nesting: Nesting, ...asked: Parameters<Nester>): void {
    this.#kept.set(makeKey(...asked), nesting)
    if (this.#kept.size <= this.#mostKept) return
    const [oldest] = this.#kept.keys()
    if (oldest !== undefined) this.#kept.delete(oldest)
  }
}

/** The name and the note of a format move nothing. */
function makeKey(
  part: NestedPart,
  { id: _id, name: _name, note: _note, ...measures }: PanelFormat,
  { extraMarginMm, extraSpacingMm }: ExtraRoom,
): string {
  return JSON.stringify([part, measures, extraMarginMm, extraSpacingMm])
}

/** A nester that remembers, and nests here what it does not know. */
export function makeNester(memory = new NestingMemory()): Nester {
  return (part, format, extra) => {
    const known = memory.find(part, format, extra)
    if (known !== null) return known
    const nesting = nestPart(part, format, extra)
    memory.keep(nesting, part, format, extra)
    return nesting
  }
}
