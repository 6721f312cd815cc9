import { FABRICATION_EXAMPLES } from './fabrication'
import { GEOMETRY_EXAMPLES } from './geometry'
import type { ItemExample } from './item-example'
import { MATERIALS_EXAMPLES } from './materials'
import { TERMS_EXAMPLES } from './terms'

export type { ItemExample } from './item-example'

const EXAMPLES: Readonly<Record<string, readonly ItemExample[]>> = {
  ...MATERIALS_EXAMPLES,
  ...GEOMETRY_EXAMPLES,
  ...FABRICATION_EXAMPLES,
  ...TERMS_EXAMPLES,
}

/** Empty where an item has none. Beside the tests rather than beside the item, since every visitor's browser loads the items. */
export function listExamples(itemId: string): readonly ItemExample[] {
  return EXAMPLES[itemId] ?? []
}

/** Every id that examples are written for. */
export const EXAMPLE_ITEM_IDS: readonly string[] = Object.keys(EXAMPLES)
