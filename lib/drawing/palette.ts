/** Colours and type of a picture. Every value is a CSS colour or, on screen only, a CSS variable. */
export interface Palette {
  readonly paper: string
  readonly ink: string
  readonly inkSoft: string
  readonly hairline: string
  /** Neutral axes. */
  readonly axis: string
  /** Computed curves and the design's own point. */
  readonly strain: string
  readonly limit: string
  /** Ground of what is allowed. */
  readonly allowed: string
  readonly copper: string
  readonly film: string
  readonly adhesive: string
  readonly prepreg: string
  readonly laminate: string
  readonly mask: string
  readonly stiffener: string
  readonly shield: string
  readonly fontFamily: string
}

/** Faces of a picture that leaves the program, in the order of preference; the first is the one embedded in the PDF. */
export const FILE_FONTS = 'Source Sans 3, Source Sans Pro, Arial, Helvetica, sans-serif'

/** Fixed colours for paper: they differ in lightness too, so a grey copy can be read; pattern and text carry the meaning. */
export const PRINT_PALETTE: Palette = {
  paper: '#ffffff',
  ink: '#1a1d20',
  inkSoft: '#565b60',
  hairline: '#b4b8b2',
  axis: '#1b644c',
  strain: '#1d4c7a',
  limit: '#9c241f',
  allowed: '#eef0ea',
  copper: '#b0682f',
  film: '#e8d8a6',
  adhesive: '#dde4e7',
  prepreg: '#c5d2bb',
  laminate: '#a9bda4',
  mask: '#a2c0bb',
  stiffener: '#c1bfce',
  shield: '#9c9ea4',
  fontFamily: FILE_FONTS,
}

/** Follows the page's theme through the variables that the page's style sheet defines. */
export const SCREEN_PALETTE: Palette = {
  paper: 'var(--paper)',
  ink: 'var(--draw-line)',
  inkSoft: 'var(--muted)',
  hairline: 'var(--draw-rule)',
  axis: 'var(--draw-axis)',
  strain: 'var(--draw-strain)',
  limit: 'var(--draw-limit)',
  allowed: 'var(--tint)',
  copper: 'var(--draw-copper)',
  film: 'var(--draw-film)',
  adhesive: 'var(--draw-adhesive)',
  prepreg: 'var(--draw-prepreg)',
  laminate: 'var(--draw-laminate)',
  mask: 'var(--draw-mask)',
  stiffener: 'var(--draw-stiffener)',
  shield: 'var(--draw-shield)',
  fontFamily: 'inherit',
}
