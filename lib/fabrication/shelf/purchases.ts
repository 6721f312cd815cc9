import { type Design, findMaterial, type Layer } from '@/lib/engine'

/** A sheet of the construction as it is bought: a clad, a coated coverlay film, or one material by itself. */
export interface Purchase {
  /** Id of the layer that carries it. */
  readonly id: string
  readonly kind: 'clad' | 'coverlay' | 'plain'
  readonly layer: Layer & { readonly materialId: string }
  /** Foils of a clad; two where both sides have one. */
  readonly foilLayers: readonly SheetLayer[]
  /** Adhesive between film and foil, or on the coverlay film. */
  readonly adhesiveLayers: readonly SheetLayer[]
}

type SheetLayer = Layer & { readonly materialId: string }

const hasMaterial = (layer: Layer | undefined): layer is SheetLayer => layer !== undefined && 'materialId' in layer

/**
 * The construction's materials as they are bought. A base film or rigid laminate comes clad with the foils that lie on it,
 * directly or, for a film, over an adhesive; a coverlay film comes with its adhesive; whatever is left comes by itself.
 * Common practice, no published source.
 */
export function listPurchases(design: Design): Purchase[] {
  const { layers } = design.construction
  const taken = new Set<string>()
  const free = (layer: Layer | undefined, kind: Layer['kind']): SheetLayer | null =>
    hasMaterial(layer) && layer.kind === kind && !taken.has(layer.id) ? layer : null
  const purchases: { readonly at: number; readonly purchase: Purchase }[] = []
  const take = (at: number, kind: Purchase['kind'], foilLayers: SheetLayer[], adhesiveLayers: SheetLayer[]) => {
    const layer = layers[at]
    if (!hasMaterial(layer)) return
    for (const part of [layer, ...foilLayers, ...adhesiveLayers]) taken.add(part.id)
    purchases.push({ at, purchase: { id: layer.id, kind, layer, foilLayers, adhesiveLayers } })
  }

  layers.forEach((layer, at) => {
    if (layer.kind !== 'base-film' && layer.kind !== 'rigid-laminate') return
    const sides = ([-1, 1] as const).flatMap((step) => {
      const foil = free(layers[at + step], 'conductor')
      if (foil !== null) return [{ foil, adhesive: null }]
      const adhesive = layer.kind === 'base-film' ? free(layers[at + step], 'adhesive') : null
      const over = adhesive === null ? null : free(layers[at + 2 * step], 'conductor')
      return over === null ? [] : [{ foil: over, adhesive }]
    })
    if (sides.length === 0) return
    const adhesives = sides.flatMap(({ adhesive }) => adhesive ?? [])
    take(
      at,
      'clad',
      sides.map(({ foil }) => foil),
      adhesives,
    )
  })
  layers.forEach((layer, at) => {
    if (layer.kind !== 'coverlay-film') return
    // The coverlay's own adhesive looks at the copper or the film; one that looks at a stiffener is bought for that.
    const adhesive = ([1, -1] as const)
      .filter((step) => layers[at + 2 * step]?.kind !== 'stiffener')
      .map((step) => free(layers[at + step], 'adhesive'))
      .find((found) => found !== null)
    take(at, 'coverlay', [], adhesive === undefined || adhesive === null ? [] : [adhesive])
  })
  layers.forEach((layer, at) => {
    if (hasMaterial(layer) && !taken.has(layer.id)) take(at, 'plain', [], [])
  })
  return purchases.sort((a, b) => a.at - b.at).map(({ purchase }) => purchase)
}

/** `Polyimide of an adhesiveless clad, 25 µm, with 12 µm rolled-annealed copper foil on both sides`. */
export function describePurchase(design: Design, { layer, foilLayers, adhesiveLayers, kind }: Purchase): string {
  const nameOf = (materialId: string) => findMaterial(design, materialId)?.name ?? materialId
  const inText = (name: string) => name.charAt(0).toLowerCase() + name.slice(1)
  const parts = [`${nameOf(layer.materialId)}, ${layer.thicknessUm} µm`]
  const [adhesive] = adhesiveLayers
  const coat = adhesive === undefined ? null : `${adhesive.thicknessUm} µm ${inText(nameOf(adhesive.materialId))}`
  if (kind === 'coverlay' && coat !== null) parts.push(`with ${coat}`)
  if (kind === 'clad') {
    const foils = foilLayers.map((foil) => `${foil.thicknessUm} µm ${inText(nameOf(foil.materialId))}`)
    const isSame = new Set(foils).size === 1
    const clad = isSame ? `${foils[0]} on ${foils.length === 2 ? 'both sides' : 'one side'}` : foils.join(' and ')
    parts.push(`with ${clad}${coat === null ? '' : ` over ${coat}`}`)
  }
  return parts.join(' ')
}
