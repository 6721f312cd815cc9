import type { Material } from '../design/material'
import { ADHESIVES } from './adhesives'
import { FILMS } from './films'
import { FOILS } from './foils'
import { RIGID_AND_OTHERS } from './rigid-and-others'
import { withSpreads } from './spreads'

const LIBRARY: readonly Material[] = [...FOILS, ...FILMS, ...ADHESIVES, ...RIGID_AND_OTHERS].map(withSpreads)
const BY_ID: ReadonlyMap<string, Material> = new Map(LIBRARY.map((material) => [material.id, material]))

/** The generic material that a plating bath adds. */
export const PLATED_COPPER_ID = 'copper-plated'

/** Generic materials with the source of each constant, in the order in which a chooser shows them. */
export function listLibraryMaterials(): readonly Material[] {
  return LIBRARY
}

/** The generic material of that id, or null. Ids are stable: stored designs name them. */
export function findLibraryMaterial(materialId: string): Material | null {
  return BY_ID.get(materialId) ?? null
}
