/** Changes of a plan as plain data, each with the one that takes it back. */
export { applyEdit } from './apply-edit'
export { dimensionWay, measureDimension } from './dimension-way'
export { fieldsOf, handlesOf, isClosedList, nodesOf, PLAN_LISTS } from './drawn'
export { wholePoint } from './nodes'
export type { DrawnRef, PlanEdit, PlanEntry, PlanListKey, PointRef } from './plan-edit'
export { STARTING_SHAPES, type StartingShape, startingShape } from './starting-shape'
