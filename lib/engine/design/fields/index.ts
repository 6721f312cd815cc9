export { BEND_FIELDS } from './bend-fields'
export { BRIEF_FIELDS } from './brief-fields'
export { LAYER_FIELDS, ZONE_FIELDS } from './construction-fields'
export { findFieldWords, getChoiceWord, getFieldInText, listChoices, NOT_STATED } from './design-fields'
export { FEATURE_FIELDS } from './feature-fields'
export type { FieldNode, FieldWords } from './field'
export { MATERIAL_FIELDS } from './material-fields'
export {
  findFieldPattern,
  isNumericField,
  type KindField,
  listFieldPatterns,
  listKindFields,
} from './patterns'
export { PLAN_FIELDS } from './plan-fields'
