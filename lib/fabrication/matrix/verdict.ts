/** Where a value falls in the matrix. `not-stated` is the matrix's silence, never the design's. */
export const CAPABILITY_VERDICTS = ['outside', 'stretch', 'not-stated', 'comfortable'] as const

export type CapabilityVerdict = (typeof CAPABILITY_VERDICTS)[number]
