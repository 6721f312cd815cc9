export { findLibraryMaterial, listLibraryMaterials, PLATED_COPPER_ID } from './library'
export { type ConstantEnds, readEnds } from './spreads'
