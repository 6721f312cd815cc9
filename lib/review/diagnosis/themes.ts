/** What items of one theme have in common: at one place they are one cause, however many rows they fill. */
export interface Theme {
  readonly title: string
  /** What the place is, whatever the outcome names first: what stands on the drawing concerns no single layer. */
  readonly at?: 'document' | 'review'
  readonly itemIds: readonly string[]
}

/**
 * Which items speak of the same thing. Common practice, no published source. An item that no theme names is a cause of its own: a workspace's own items
 * are among them.
 */
export const THEMES = {
  'bend-section': {
    title: 'Copper and films in the bend',
    itemIds: [
      'bend-strain',
      'fatigue-life',
      'damage-sum',
      'plating-in-bend',
      'conductor-layers-in-bend',
      'copper-yield',
      'film-strain',
      'radius-rules',
      'neutral-axis',
      'leaf-pull',
      'unbonded-leaves',
      'foil-type',
      'clad-adhesive',
      'plane-in-bend',
      'plane-in-fold',
      'shield-stiffness',
      'bend-cover',
      'solder-mask-in-bend',
    ],
  },
  'bend-routing': {
    title: 'Conductors through the bend',
    itemIds: [
      'crossing-angle',
      'layer-stagger',
      'width-change-in-bend',
      'direction-change-in-bend',
      'ends-in-bend',
      'conductor-spacing',
      'rolling-direction',
      'rolling-direction-moving',
    ],
  },
  'near-bend': {
    title: 'Features in or too near the bend',
    itemIds: [
      'hole-to-bend',
      'opening-to-bend',
      'component-to-bend',
      'holes-in-flex',
      'coverlay-edge-in-bend',
      'straight-film',
      'surface-finish',
    ],
  },
  'bend-in-product': {
    title: 'How the bend is made, held and moved',
    itemIds: [
      'radius-holder',
      'fold-model',
      'fold-order-model',
      'transition-relief',
      'forming',
      'free-length',
      'combined-motion',
      'enclosure-fit',
      'wear',
      'handling-count',
      'bend-fit',
      'bend-use',
      'leaf-length',
      'cold-motion',
      'flex-test-terms',
    ],
  },
  thickness: {
    title: 'Thickness',
    itemIds: ['finger-thickness', 'stated-thickness', 'fitted-thickness', 'thickness-tolerance', 'tolerances-given'],
  },
  encapsulation: {
    title: 'Adhesive and prepreg over copper',
    itemIds: ['copper-encapsulation', 'coverlay-adhesive', 'outer-cover', 'sheet-bonds'],
  },
  'rigid-edge': {
    title: 'Beside the rigid edge',
    itemIds: [
      'transition-strip',
      'transition-strip-class-three',
      'stiffener-overlap',
      'hole-to-stiffener-edge',
      'prepreg-set-back',
      'bead',
      'bead-beside-moving-bend',
    ],
  },
  conductors: {
    title: 'Conductor widths and spaces',
    itemIds: [
      'conductor-width',
      'conductor-space',
      'etch-traps',
      'voltage-space',
      'hazardous-voltage-space',
      'width-step',
      'conductor-corners',
      'copper-to-outline',
    ],
  },
  load: { title: 'Current and voltage drop', itemIds: ['conductor-current', 'voltage-drop', 'foil-weight'] },
  lands: { title: 'Lands', itemIds: ['land-hold', 'teardrop', 'annular-ring', 'open-land'] },
  holes: { title: 'Plated holes', itemIds: ['hole-plating', 'hole-aspect', 'hole-life', 'via-structure'] },
  outline: { title: 'Corners and slits of the outline', itemIds: ['corner-radius', 'tear-stop', 'slit-end-relief'] },
  connector: {
    title: 'Connector ends',
    itemIds: ['contact-geometry', 'contact-strain', 'contact-finish', 'finger-support'],
  },
  drawing: {
    title: 'Drawing and layer table',
    at: 'document',
    itemIds: [
      'layer-names',
      'layer-table',
      'bend-call-out',
      'stiffener-detail',
      'coverlay-detail',
      'bend-on-plan',
      'material-call-outs',
      'registration-features',
      'plan-agreement',
      'statements-agree',
    ],
  },
  artwork: {
    title: 'Artwork against the design',
    at: 'document',
    itemIds: ['package-contents', 'artwork-agreement', 'netlist'],
  },
  review: {
    title: 'Open with the fabricator',
    at: 'review',
    itemIds: [
      'engineering-queries',
      'fabricator-currency',
      'buildable-construction',
      'capability-match',
      'stock-materials',
      'manufacturing-review',
    ],
  },
} as const satisfies Readonly<Record<string, Theme>>

export type ThemeId = keyof typeof THEMES

const THEME_OF: ReadonlyMap<string, ThemeId> = new Map(
  (Object.keys(THEMES) as ThemeId[]).flatMap((id) => THEMES[id].itemIds.map((itemId) => [itemId, id] as const)),
)

/** Null for an item that no theme names. */
export const findTheme = (itemId: string): ThemeId | null => THEME_OF.get(itemId) ?? null
