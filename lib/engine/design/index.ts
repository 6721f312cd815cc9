export type { Plan } from '@/lib/plan'
export * from './assumed'
export * from './bend'
export * from './blank'
export * from './brief'
export { BRIEF_TERMS } from './brief-terms'
export { callByName } from './call-by-name'
export * from './connectors'
export * from './construction'
export { countBendLayersOf, findMaterial, MAX_BEND_LAYERS } from './cross-checks'
export * from './design'
export type { Drawing, DrawnValue } from './drawing'
export * from './features'
export * from './fields'
export { hasGeneralNote, withGeneralNote } from './general-notes'
export { countLeastLaminations, listPlatedSpans } from './hole-spans'
export { decodeUtf8 } from './json-text'
export { LAYER_KIND_FACTS, LAYER_KINDS, nameLayerKind } from './layer-kinds'
export { liftDesign, readStoredDesign, readStoredDesignDocument, readStoredDesignWithSource } from './lift'
export * from './material'
export { findNetClass, withNetClasses } from './net-classes'
export { listLayerMaterialIds, listMaterialsFor, makeFreshId, makeLayerOfKind, withTakenMaterials } from './new-layers'
export { isOpen, isPlaceholder } from './open-text'
export * from './outgassing'
export * from './outline'
export {
  findOwnMaterialIssues,
  listMaterialConstants,
  makeOwnMaterialId,
  type NewMaterial,
  newMaterialSchema,
  readOwnMaterialId,
} from './own-materials'
export * from './primitives'
export * from './read-design'
export * from './stiffeners'
