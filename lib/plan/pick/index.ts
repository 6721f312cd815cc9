/** What lies at a place of the plan, and where a pointer is taken to. Pure: distances are in mm, a caller divides pixels by its zoom. */
export { type Hit, hitsAt } from './hit'
export { type Snap, snapAt } from './snap'
export { traceAll, traceEntry } from './traced'
