/** Plans out of drawing files and into them: which layer is what, and shapes both ways. */
export { type ImportedPlan, planFromDrawing } from './from-drawing'
export { PLAN_ROLES, type PlanRole, suggestRoles } from './roles'
export { placesOfHole, planAsDxf, planAsSvg } from './to-drawing'
