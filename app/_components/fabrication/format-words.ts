import type { PanelFormat } from '@/lib/fabrication'

export const FOIL_WORDS: Readonly<Record<NonNullable<PanelFormat['foilRollingDirection']>, string>> = {
  'along-width': 'along the width',
  'along-height': 'along the height',
}

export const METHOD_WORDS = {
  grid: 'rectangles, one orientation',
  'mixed-grid': 'rectangles, both orientations',
  'double-lattice': 'true outline, double lattice',
  'two-lattices': 'true outline, two blocks',
  'one-by-one': 'true outline, part by part',
} as const

export function formatTurns(turnsDeg: readonly number[]): string {
  return turnsDeg.length === 0 ? 'none' : turnsDeg.map((turn) => `${turn}°`).join(', ')
}
