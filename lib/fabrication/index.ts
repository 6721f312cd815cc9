/**
 * What a fabricator can build, holds and charges, set against a design. Pure, and apart from the engine, whose part of
 * the browser's load is bounded.
 */
export * from './construction-family'
export * from './cost'
export * from './estimate'
export * from './flex-tests'
export * from './matrix'
export * from './panel'
export * from './remedies'
export * from './sheets'
export * from './shelf'
export * from './table'
