export { citeSource, SOURCES, type Source, type SourceKey, type SourceKind } from './sources'
