export { assemble } from './assemble'
export type { Assembly } from './assembly'
export { DEFAULT_SURVIVAL_PCT } from './bend-allowables'
export { computeCopper } from './bend-copper'

export { computeTornado, type Swing, type SwingQuantity, type Tornado } from './tornado'

export { findFill } from './zone-section'
export { simulateZoneThickness } from './zone-simulation'
