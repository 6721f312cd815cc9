import type { DrawnLayer, LayerHead } from './format'

/** Colours of layers by their name in the style sheet. Copper layers beyond the fourth begin again with the first. */
export const LAYER_COLOURS = [
  'copper-1',
  'copper-2',
  'copper-3',
  'copper-4',
  'cover',
  'stiffener',
  'legend',
  'holes',
  'profile',
  'other',
] as const
export type LayerColour = (typeof LAYER_COLOURS)[number]

const COPPER_COLOURS = ['copper-1', 'copper-2', 'copper-3', 'copper-4'] as const

const COLOUR_OF_ROLE: Readonly<Record<string, LayerColour>> = {
  'solder mask': 'cover',
  coverlay: 'cover',
  adhesive: 'cover',
  stiffener: 'stiffener',
  legend: 'legend',
  holes: 'holes',
  'drill drawing': 'holes',
  profile: 'profile',
}

export function colourOf({ role, copperPlace }: LayerHead): LayerColour {
  if (role === 'copper') return COPPER_COLOURS[(copperPlace ?? 0) % COPPER_COLOURS.length] ?? 'copper-1'
  return COLOUR_OF_ROLE[role ?? ''] ?? 'other'
}

/** Layers that are seen before anybody chooses: what carries current, and where the part ends. */
export const isSeenFirst = ({ role }: LayerHead): boolean => role === 'copper' || role === 'holes' || role === 'profile'

/** Layers from the farthest to the nearest, as they are painted. Holes and profile lie over all. */
export function inOrderOfPaint<T extends { readonly head: LayerHead }>(
  layers: readonly T[],
  isFromBelow: boolean,
): T[] {
  const depth = ({ role, side, copperPlace }: LayerHead): number => {
    if (role === 'profile' || role === 'holes') return Infinity
    if (copperPlace !== null) return isFromBelow ? copperPlace : -copperPlace
    const above = side === 'bottom' ? -1 : side === 'top' ? 1 : 0
    return above === 0 ? -1e6 : 1e3 * (isFromBelow ? -above : above)
  }
  return [...layers].sort((one, other) => {
    const [a, b] = [depth(one.head), depth(other.head)]
    return a === b ? 0 : a - b
  })
}

/** What all layers take up, in the layer's units; null where nothing is drawn. */
export function boxOfLayers(layers: readonly DrawnLayer[]): readonly [number, number, number, number] | null {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { tileBoxes } of layers) {
    for (let at = 0; at < tileBoxes.length; at += 4) {
      minX = Math.min(minX, tileBoxes[at] ?? 0)
      minY = Math.min(minY, tileBoxes[at + 1] ?? 0)
      maxX = Math.max(maxX, tileBoxes[at + 2] ?? 0)
      maxY = Math.max(maxY, tileBoxes[at + 3] ?? 0)
    }
  }
  return minX > maxX ? null : [minX, minY, maxX, maxY]
}
