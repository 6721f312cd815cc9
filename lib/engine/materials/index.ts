export { findLibraryMaterial, listLibraryMaterials } from './library'
