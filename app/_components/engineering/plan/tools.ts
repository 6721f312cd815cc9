import type { PlanListKey } from '@/lib/plan/edit'

/** Something that can be drawn: how many points it takes, and what of the design it belongs to. */
export interface Tool {
  readonly key: 'outline' | PlanListKey
  /** On the button. */
  readonly label: string
  /** One of it in a sentence. */
  readonly singular: string
  readonly idPrefix: string
  readonly takes: 'point' | 'segment' | 'path' | 'loop'
}

export const TOOLS: readonly Tool[] = [
  { key: 'outline', label: 'Outline', singular: 'outline', idPrefix: 'outline', takes: 'loop' },
  { key: 'dividingLines', label: 'Dividing line', singular: 'dividing line', idPrefix: 'line', takes: 'path' },
  { key: 'areas', label: 'Area mark', singular: 'area', idPrefix: 'area', takes: 'point' },
  { key: 'bendLines', label: 'Bend line', singular: 'bend line', idPrefix: 'bend-line', takes: 'segment' },
  { key: 'stiffeners', label: 'Stiffener', singular: 'stiffener', idPrefix: 'stiffener', takes: 'loop' },
  { key: 'cutOuts', label: 'Cut-out', singular: 'cut-out', idPrefix: 'cut-out', takes: 'loop' },
  { key: 'slits', label: 'Slit', singular: 'slit', idPrefix: 'slit', takes: 'path' },
  { key: 'holes', label: 'Hole', singular: 'hole', idPrefix: 'hole', takes: 'point' },
  { key: 'pads', label: 'Pad', singular: 'pad', idPrefix: 'pad', takes: 'point' },
  {
    key: 'coverlayOpenings',
    label: 'Coverlay opening',
    singular: 'coverlay opening',
    idPrefix: 'opening',
    takes: 'loop',
  },
  { key: 'components', label: 'Component', singular: 'component', idPrefix: 'component', takes: 'loop' },
  {
    key: 'connectorEnds',
    label: 'Connector end',
    singular: 'connector end',
    idPrefix: 'connector-end',
    takes: 'segment',
  },
  { key: 'routes', label: 'Route', singular: 'route', idPrefix: 'route', takes: 'path' },
  { key: 'corners', label: 'Corner', singular: 'corner', idPrefix: 'corner', takes: 'point' },
  { key: 'datums', label: 'Datum', singular: 'datum', idPrefix: 'datum', takes: 'segment' },
  { key: 'dimensions', label: 'Dimension', singular: 'dimension', idPrefix: 'dimension', takes: 'segment' },
  { key: 'notes', label: 'Note', singular: 'note', idPrefix: 'note', takes: 'point' },
  { key: 'markings', label: 'Marking', singular: 'marking', idPrefix: 'marking', takes: 'point' },
]

/** Points after which a drawing of this kind is complete by itself; null where somebody says so. */
export const pointsOf = ({ takes }: Tool): number | null => (takes === 'point' ? 1 : takes === 'segment' ? 2 : null)

export const leastPoints = ({ takes }: Tool): number => ({ point: 1, segment: 2, path: 2, loop: 3 })[takes]

export const LIST_WORDS: Readonly<Record<'outline' | PlanListKey, string>> = {
  outline: 'Outline',
  cutOuts: 'Cut-outs',
  areas: 'Areas',
  dividingLines: 'Dividing lines',
  stiffeners: 'Stiffeners',
  coverlayOpenings: 'Coverlay openings',
  components: 'Components',
  connectorEnds: 'Connector ends',
  routes: 'Routes',
  pads: 'Pads',
  holes: 'Holes',
  slits: 'Slits',
  bendLines: 'Bend lines',
  corners: 'Corners',
  datums: 'Datums',
  dimensions: 'Dimensions',
  notes: 'Notes',
  markings: 'Markings',
}
