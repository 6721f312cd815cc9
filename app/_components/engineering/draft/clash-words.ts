import { describePlace } from '@/lib/review'

/**
 * A place that two people changed differently, in the trade's words.
 *
 * @param clash  as `mergeDrafts` names it: keys, and ids for the entries of lists
 * @param designs  one of them holds the entry; the other may have lost it
 */
export function nameClash(clash: string, designs: readonly [object, ...object[]]): string {
  const keys = clash.split(' › ')
  for (const design of designs) {
    const tokens = toTokens(design, keys)
    if (tokens !== null) return describePlace(design, tokens).label
  }
  return describePlace(designs[0], keys).label
}

/** Ids of entries as their places in the lists; null where an entry is not there. */
function toTokens(design: object, keys: readonly string[]): string[] | null {
  const tokens: string[] = []
  let node: unknown = design
  for (const key of keys) {
    if (Array.isArray(node)) {
      const index = node.findIndex((entry) => [entry?.id, entry?.layerId, entry?.bendId].includes(key))
      if (index < 0) return null
      tokens.push(String(index))
      node = node[index]
    } else {
      tokens.push(key)
      node = typeof node === 'object' && node !== null ? (node as Record<string, unknown>)[key] : undefined
    }
  }
  return tokens
}
