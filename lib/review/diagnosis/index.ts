export type { Cure } from './cures'
export { type Cause, type CauseRow, type DiagnosedItem, diagnose } from './diagnose'
export { countStanding, type Standing } from './standing'
export { THEMES } from './themes'
