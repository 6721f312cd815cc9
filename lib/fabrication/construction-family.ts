import type { Design } from '@/lib/engine'

/** Constructions by which fabricators tell their limits apart, in the trade's words. */
export const CONSTRUCTION_FAMILIES = ['single-sided', 'double-sided', 'multilayer-flex', 'rigid-flex'] as const
export type ConstructionFamily = (typeof CONSTRUCTION_FAMILIES)[number]

export const FAMILY_NAMES: Readonly<Record<ConstructionFamily, string>> = {
  'single-sided': 'single-sided flex',
  'double-sided': 'double-sided flex',
  'multilayer-flex': 'multilayer flex',
  'rigid-flex': 'rigid-flex',
}

export function countConductorLayers(design: Design): number {
  return design.construction.layers.filter(({ kind }) => kind === 'conductor').length
}

/**
 * Rigid-flex has both rigid and flexible zones; the others go by their conductor layers. A stiffener makes no rigid-flex.
 * @returns null for a design without conductor layers
 */
export function findConstructionFamily(design: Design): ConstructionFamily | null {
  const { zones } = design.construction
  const layerCount = countConductorLayers(design)
  if (layerCount === 0) return null
  if (zones.some(({ kind }) => kind === 'rigid') && zones.some(({ kind }) => kind !== 'rigid')) return 'rigid-flex'
  if (layerCount === 1) return 'single-sided'
  return layerCount === 2 ? 'double-sided' : 'multilayer-flex'
}
