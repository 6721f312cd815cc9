import type { ItemExample } from '../item-example'

export const registrationFeaturesExamples: readonly ItemExample[] = [{ name: 'any part', expect: 'needs-judgment' }]
