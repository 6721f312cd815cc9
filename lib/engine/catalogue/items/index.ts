import type { ItemDefinition } from '../define-item'
import { FABRICATION_EXPOSURE, GEOMETRY_EXPOSURE, MATERIALS_EXPOSURE } from './exposure'
import { FABRICATION_ITEMS } from './fabrication'
import { GEOMETRY_ITEMS } from './geometry'
import { MATERIALS_ITEMS } from './materials'
import { FABRICATION_TERMS, MATERIALS_TERMS } from './terms'

/** Every review item, section by section, in the order in which a reviewer would go through them. */
export const CATALOGUE: readonly ItemDefinition[] = [
  ...MATERIALS_ITEMS,
  ...MATERIALS_TERMS,
  ...MATERIALS_EXPOSURE,
  ...GEOMETRY_ITEMS,
  ...GEOMETRY_EXPOSURE,
  ...FABRICATION_ITEMS,
  ...FABRICATION_TERMS,
  ...FABRICATION_EXPOSURE,
]

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
