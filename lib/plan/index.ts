/** The part in plan: what is drawn, what follows from it. Pure; nothing is judged here. */
export { checkPlan } from './document/check-plan'
export type { PlanNode } from './document/path-schema'
export { EMPTY_PLAN, type Plan, planSchema } from './document/plan-schema'
export {
  distanceMmSchema,
  idSchema,
  lengthMmSchema,
  nameSchema,
  textSchema,
} from './document/primitives'
