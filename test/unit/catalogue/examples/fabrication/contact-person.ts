import type { ItemExample } from '../item-example'

export const contactPersonExamples: readonly ItemExample[] = [{ name: 'any part', expect: 'needs-judgment' }]
