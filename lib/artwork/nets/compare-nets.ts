import type { Connections } from './connect'

/** A place that belongs to a net, by a netlist or by what the artwork's objects say of themselves. */
export interface NetPlace {
  readonly net: string
  readonly xNm: number
  readonly yNm: number
  /** Layers on which it may be reached, counted from 0 at the top. */
  readonly layers: readonly number[]
  /** Names the place: `J1-3`, or where in which file it stands. */
  readonly name: string
}

export interface NetComparison {
  readonly netCount: number
  readonly placeCount: number
  /** Places where there is copper to be compared. */
  readonly onCopperCount: number
  readonly firstOffCopper: NetPlace | null
  /** A net whose places lie on copper that does not hang together. */
  readonly opens: readonly { readonly net: string; readonly parts: number; readonly places: readonly NetPlace[] }[]
  /** Nets whose copper hangs together. */
  readonly shorts: readonly { readonly nets: readonly string[]; readonly places: readonly NetPlace[] }[]
}

/** Opens and shorts: each net against the copper that its places lie on. */
export function compareNets(places: readonly NetPlace[], connections: Connections): NetComparison {
  const partsOfNet = new Map<string, Map<number, NetPlace>>()
  const netsOfPart = new Map<number, Map<string, NetPlace>>()
  let onCopperCount = 0
  let firstOffCopper: NetPlace | null = null
  for (const place of places) {
    const parts = new Set(place.layers.flatMap((layer) => connections.at(layer, place.xNm, place.yNm) ?? []))
    if (parts.size === 0) {
      firstOffCopper ??= place
      continue
    }
    onCopperCount += 1
    for (const part of parts) {
      remember(partsOfNet, place.net, part, place)
      remember(netsOfPart, part, place.net, place)
    }
  }
  return {
    netCount: new Set(places.map(({ net }) => net)).size,
    placeCount: places.length,
    onCopperCount,
    firstOffCopper,
    opens: [...partsOfNet]
      .filter(([, parts]) => parts.size > 1)
      .map(([net, parts]) => ({ net, parts: parts.size, places: [...parts.values()].slice(0, 2) })),
    shorts: [...netsOfPart.values()]
      .filter((nets) => nets.size > 1)
      .map((nets) => ({ nets: [...nets.keys()], places: [...nets.values()].slice(0, 2) })),
  }
}

function remember<K, L>(map: Map<K, Map<L, NetPlace>>, key: K, inner: L, place: NetPlace): void {
  const known = map.get(key)
  if (known === undefined) map.set(key, new Map([[inner, place]]))
  else if (!known.has(inner)) known.set(inner, place)
}
