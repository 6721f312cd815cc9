import type { ItemDefinition } from '../define-item'
import { FABRICATION_ITEMS } from './fabrication'
import { GEOMETRY_ITEMS } from './geometry'
import { MATERIALS_ITEMS } from './materials'

/** Every review item, section by section, in the order in which a reviewer would go through them. */
export const CATALOGUE: readonly ItemDefinition[] = [...MATERIALS_ITEMS, ...GEOMETRY_ITEMS, ...FABRICATION_ITEMS]

/** Those that a review goes through where no profile is chosen. */
export const USUAL_ITEMS: readonly ItemDefinition[] = CATALOGUE.filter((item) => item.onlyWithProfile !== true)

const ITEMS_BY_ID: ReadonlyMap<string, ItemDefinition> = new Map(CATALOGUE.map((item) => [item.id, item]))

export function findItem(id: string): ItemDefinition | null {
  return ITEMS_BY_ID.get(id) ?? null
}

/** @throws RangeError for an id that the catalogue lacks */
export function getItem(id: string): ItemDefinition {
  const item = findItem(id)
  if (item === null) throw new RangeError(`no item "${id}" in the catalogue`)
  return item
}
