export type { RequirementRange } from './range'
export { REQUIREMENT_RANGES } from './ranges'
export { readRequirements } from './read-requirements'
export { checkSpan, isWithin, listSpans } from './spans'
