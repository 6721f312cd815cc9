export { CATALOGUE_SOURCES } from './catalogue-sources'
export { SOURCE_KINDS, type Source } from './kinds'
export { citeRecordedSource, citeSource, SOURCES, type SourceKey } from './sources'
