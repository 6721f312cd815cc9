import { type Design, findMaterial, type Layer, listLibraryMaterials, type Material } from '@/lib/engine'
import type { Purchase } from './purchases'
import type { ShelfRow } from './row'

const fold = (text: string) => text.trim().toLowerCase().replaceAll(/\s+/g, ' ')

/** Is this the material that a row speaks of? Rows name it by its id, its name, or the sheet by which it is called out. */
export function isCalled(material: Material, text: string): boolean {
  const wanted = fold(text)
  return [material.id, material.name, material.specification].some((name) => name !== '' && fold(name) === wanted)
}

/** Materials that a row may mean: the design's own first, then the library's. */
export function findCalledMaterials(design: Design, text: string): Material[] {
  return [...design.materials, ...listLibraryMaterials()].filter((material) => isCalled(material, text))
}

/** Inch and metric names of the same sheet: 25 um is sold as 1 mil (25.4 um), 12 um foil as 12 or 12.7 um. */
const SHEET_TOLERANCE_FRACTION = 0.03
const FOIL_TOLERANCE_FRACTION = 0.065
const LEAST_TOLERANCE_UM = 0.5

export function isSameThickness(aUm: number, bUm: number, of: 'sheet' | 'foil'): boolean {
  const share = of === 'sheet' ? SHEET_TOLERANCE_FRACTION : FOIL_TOLERANCE_FRACTION
  return Math.abs(aUm - bUm) <= Math.max(LEAST_TOLERANCE_UM, share * Math.max(aUm, bUm)) + 1e-9
}

/** Solder mask is printed, not bought by thickness. */
const hasThickness = (layer: Layer) => layer.kind !== 'solder-mask'

/** Is the row the material that is to be bought? A clad with foil on both sides serves for one side too: the other is etched off. */
export function matchesPurchase(design: Design, purchase: Purchase, row: ShelfRow): boolean {
  const { layer, foilLayers, adhesiveLayers } = purchase
  const isOf = (materialId: string, text: string) => {
    const material = findMaterial(design, materialId)
    return material !== null && isCalled(material, text)
  }
  if (!isOf(layer.materialId, row.material)) return false
  const of = layer.kind === 'conductor' ? 'foil' : 'sheet'
  if (hasThickness(layer) && !isSameThickness(layer.thicknessUm, row.thicknessUm, of)) return false
  if (!hasRightShape(purchase, row)) return false
  const foilsMatch = foilLayers.every(
    (foil) => isOf(foil.materialId, row.foil ?? '') && isSameThickness(foil.thicknessUm, row.foilUm ?? 0, 'foil'),
  )
  const adhesivesMatch = adhesiveLayers.every(
    (adhesive) =>
      isOf(adhesive.materialId, row.adhesive ?? '') &&
      isSameThickness(adhesive.thicknessUm, row.adhesiveUm ?? 0, 'sheet'),
  )
  return foilsMatch && adhesivesMatch
}

/** Foil where foil is wanted, on enough sides, and adhesive exactly where it is wanted. */
export function hasRightShape({ foilLayers, adhesiveLayers }: Purchase, row: ShelfRow): boolean {
  if ((row.foil !== null) !== foilLayers.length > 0) return false
  if ((row.adhesive !== null) !== adhesiveLayers.length > 0) return false
  if (adhesiveLayers.length > 0 && foilLayers.length > 0 && adhesiveLayers.length !== foilLayers.length) return false
  return (row.foilSides ?? 0) >= foilLayers.length
}
