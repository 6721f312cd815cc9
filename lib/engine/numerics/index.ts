export { type BracketedRoot, findRoot } from './find-root'
export { normalUpperTailFraction } from './normal-distribution'
export { createRandomStream, type RandomStream } from './random'
export { type NumberRange, requireNumber } from './require-number'
