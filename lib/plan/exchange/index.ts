/** Plans out of drawing files and into them: which layer is what, and shapes both ways. */
export { type ImportedPlan, planFromDrawing } from './from-drawing'
export { PLAN_ROLES, type PlanRole, type RoleSuggestion, suggestRoles } from './roles'
export { type HoleDiameters, placesOfHole, planAsDxf, planAsSvg } from './to-drawing'
