import type { ItemExample } from '../item-example'

export const buildableConstructionExamples: readonly ItemExample[] = [
  { name: 'any construction', expect: 'needs-judgment' },
]
