import type { ItemDefinition, ItemProse } from '../define-item'
import { FABRICATION_PROSE } from './fabrication'
import { GEOMETRY_PROSE } from './geometry'
import { MATERIALS_PROSE } from './materials'
import { TERM_PROSE } from './terms'

const DELIVERED: Readonly<Record<string, ItemProse>> = {
  ...MATERIALS_PROSE,
  ...GEOMETRY_PROSE,
  ...FABRICATION_PROSE,
  ...TERM_PROSE,
}

/**
 * The prose of an item: a workspace's own words where it has some, the delivered ones elsewhere.
 *
 * @throws RangeError where an item has neither
 */
export function readItemProse({ id, prose }: Pick<ItemDefinition, 'id' | 'prose'>): ItemProse {
  const delivered = Object.hasOwn(DELIVERED, id) ? DELIVERED[id] : undefined
  const why = prose?.why ?? delivered?.why
  const howToCheck = prose?.howToCheck ?? delivered?.howToCheck
  if (why === undefined || howToCheck === undefined) throw new RangeError(`item "${id}" has no prose`)
  return { why, howToCheck }
}
