import type { ItemDefinition } from '../../define-item'

/** Geometry: dimensions in the plane of the part, typed in or measured in the artwork. */
export const GEOMETRY_ITEMS: readonly ItemDefinition[] = []
