import type { ItemExample } from '../item-example'

export const packingExamples: readonly ItemExample[] = [{ name: 'any part', expect: 'needs-judgment' }]
