import type { ItemExample } from '../item-example'

export const performanceClassExamples: readonly ItemExample[] = [{ name: 'any part', expect: 'needs-judgment' }]
