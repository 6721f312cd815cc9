/**
 * Why each item matters and how to check it, for the person who reads the catalogue. Apart from the items, since every visitor's
 * browser loads those to compute, and these are read on few pages.
 */
export { readItemProse } from './read-prose'
export { listItemSourceKeys, makeReferencePage } from './reference-page'
export { fillWhatHelps, readWhatHelps } from './what-helps'
