/**
 * Version of the engine, carried by every recorded result. Any change that can move a number or a verdict raises it
 * and is described in CHANGELOG.md: which numbers move, why, and on what source.
 */
export const ENGINE_VERSION = '6.3.0'
