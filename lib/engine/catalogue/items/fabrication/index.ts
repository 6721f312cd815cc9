import type { ItemDefinition } from '../../define-item'

/** Fabrication communication: what the fabricator must know, hold and have agreed to. */
export const FABRICATION_ITEMS: readonly ItemDefinition[] = []
