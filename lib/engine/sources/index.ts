export { CATALOGUE_SOURCES } from './catalogue-sources'
export { citeSource, SOURCES, type Source, type SourceKey, type SourceKind } from './sources'
