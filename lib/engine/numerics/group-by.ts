/** Things with one key together, keys and things in the order in which they come. `Map.groupBy` does the same, from Node 21 on. */
export function groupBy<T, K>(things: Iterable<T>, keyOf: (thing: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>()
  for (const thing of things) {
    const key = keyOf(thing)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [thing])
    else group.push(thing)
  }
  return groups
}
