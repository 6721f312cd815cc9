/** The part in plan: what is drawn, what follows from it. Pure; nothing is judged here. */

export { measureArray } from './derive/array'
export { measureCorners } from './derive/corners'
export type { PlanFacts } from './derive/facts'
export { measurePlan, type PlanMeasures } from './derive/measure-plan'
export { closedEndsOf } from './derive/slits'
export { checkPlan } from './document/check-plan'
export { EMPTY_PLAN, type Plan, planSchema } from './document/plan-schema'
export {
  distanceMmSchema,
  idSchema,
  lengthMmSchema,
  NM_PER_MM,
  nameSchema,
  type PointMm,
  textSchema,
} from './document/primitives'
export { pathInMm, pathInNm, toNm } from './document/to-geometry'
export { measureDimension } from './edit/dimension-way'
export { lengthenStiffener } from './edit/lengthen-stiffener'
export { wholePoint } from './edit/nodes'
export { refilletCorners } from './edit/refillet'
export { findRouteClashes, offsetRoutes, squareRoutes } from './edit/routes'
export { STARTING_SHAPES, startingShape } from './edit/starting-shape'
export { centreBendLine, stretchPlan } from './edit/stretch'
export { widenPlan } from './edit/widen'
export { areasOf } from './topology/areas'
