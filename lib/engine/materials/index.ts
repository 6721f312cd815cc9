export { findLibraryMaterial, listLibraryMaterials, PLATED_COPPER_ID } from './library'
