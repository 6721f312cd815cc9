import type { ItemExample } from '../item-example'

export const toleranceSchemeExamples: readonly ItemExample[] = [{ name: 'any part', expect: 'needs-judgment' }]
