/** Of the texts that are kept, all in all: some hundred designs. Our choice, in characters. */
const MOST_CHARACTERS = 4_000_000

/**
 * A reader of stored texts that remembers what it read lately: one request reads a design several times, and what is worked out of a document is
 * often kept with the document itself. What it gives is frozen, since several share it.
 *
 * @param read  the same text always gives the same; where it throws, nothing is kept
 */
export function readOnce<T>(read: (text: string) => T): (text: string) => T {
  const kept = new Map<string, T>()
  let characters = 0
  return (text) => {
    const known = kept.get(text)
    const found = known ?? freezeDeep(read(text))
    if (text.length > MOST_CHARACTERS / 4) return found
    // What was asked for last goes last, and what nobody asked for longest goes first.
    if (known === undefined) characters += text.length
    else kept.delete(text)
    kept.set(text, found)
    for (const oldest of kept.keys()) {
      if (characters <= MOST_CHARACTERS) break
      kept.delete(oldest)
      characters -= oldest.length
    }
    return found
  }
}

/** The value itself, of which nobody can change anything any more. For what comes of JSON: no cycles. */
export function freezeDeep<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value
  for (const inner of Object.values(value)) freezeDeep(inner)
  return Object.freeze(value)
}
