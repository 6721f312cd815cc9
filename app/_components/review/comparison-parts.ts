/** Parts of a comparison, as its filter names them. */
export const COMPARISON_PARTS = ['inputs', 'verdicts', 'numbers', 'answers'] as const
export type ComparisonPart = (typeof COMPARISON_PARTS)[number]
