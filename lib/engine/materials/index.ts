export { findLibraryMaterial, listLibraryMaterials, PLATED_COPPER_ID } from './library'
export { type ConstantEnds, type DefaultSpreads, describeDefaultSpreads, readEnds } from './spreads'
