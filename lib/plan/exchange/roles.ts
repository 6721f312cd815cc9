import type { Drawing } from '@/lib/drawing-files'

/**
 * What a layer of a drawing file can be in a plan, with the name of the layer that is written. Colours are of the index that the format has: they only
 * tell layers apart.
 */
export const PLAN_ROLES = [
  {
    key: 'outline',
    label: 'Outline',
    layer: 'OUTLINE',
    colour: 7,
    pattern: /outline|profile|contour|board|part.?edge/i,
  },
  { key: 'cutOuts', label: 'Cut-outs', layer: 'CUT_OUTS', colour: 1, pattern: /cut.?out|window|aperture|milling/i },
  {
    key: 'dividingLines',
    label: 'Dividing lines',
    layer: 'DIVIDING_LINES',
    colour: 8,
    pattern: /divid|zone|border|transition/i,
  },
  { key: 'bendLines', label: 'Bend lines', layer: 'BEND_LINES', colour: 5, pattern: /bend|fold/i },
  { key: 'stiffeners', label: 'Stiffeners', layer: 'STIFFENERS', colour: 3, pattern: /stiff/i },
  { key: 'holes', label: 'Holes', layer: 'HOLES', colour: 2, pattern: /hole|drill/i },
  {
    key: 'coverlayOpenings',
    label: 'Coverlay openings',
    layer: 'COVERLAY_OPENINGS',
    colour: 30,
    pattern: /cover|opening|mask/i,
  },
  { key: 'components', label: 'Components', layer: 'COMPONENTS', colour: 6, pattern: /comp|body|bodies/i },
  { key: 'slits', label: 'Slits', layer: 'SLITS', colour: 4, pattern: /slit/i },
] as const

export type PlanRole = (typeof PLAN_ROLES)[number]['key']

export interface RoleSuggestion {
  readonly layer: string
  readonly strokes: number
  /** Null: leave it out. */
  readonly role: PlanRole | null
  readonly reason: string
}

/** A layer may be called for two things: what is more particular comes first. */
const IN_ORDER: readonly PlanRole[] = [
  'stiffeners',
  'bendLines',
  'slits',
  'cutOuts',
  'coverlayOpenings',
  'holes',
  'dividingLines',
  'components',
  'outline',
]

/** What each layer probably is, and why: by its name alone, or the one with the largest extent where none is called an outline. */
export function suggestRoles(drawing: Drawing): RoleSuggestion[] {
  const byName = drawing.layers.map(({ name, strokes, isHidden }): RoleSuggestion => {
    if (isHidden) return { layer: name, strokes, role: null, reason: 'It is switched off in the file.' }
    for (const key of IN_ORDER) {
      const role = PLAN_ROLES.find((candidate) => candidate.key === key)
      const match = role?.pattern.exec(name)
      if (role != null && match != null)
        return { layer: name, strokes, role: key, reason: `Its name holds "${match[0]}".` }
    }
    return { layer: name, strokes, role: null, reason: 'Nothing in its name says what it is.' }
  })
  if (byName.some(({ role }) => role === 'outline')) return byName
  const largest = findLargest(drawing, new Set(byName.filter(({ role }) => role === null).map(({ layer }) => layer)))
  return byName.map((suggestion) =>
    suggestion.layer === largest && !isHidden(drawing, largest)
      ? { ...suggestion, role: 'outline', reason: 'No layer is called an outline, and this one reaches furthest.' }
      : suggestion,
  )
}

const isHidden = (drawing: Drawing, layer: string): boolean =>
  drawing.layers.find(({ name }) => name === layer)?.isHidden === true

function findLargest(drawing: Drawing, among: ReadonlySet<string>): string | null {
  const boxes = new Map<string, [number, number, number, number]>()
  for (const { layer, pieces } of drawing.strokes) {
    if (!among.has(layer)) continue
    const box = boxes.get(layer) ?? [Infinity, Infinity, -Infinity, -Infinity]
    for (const [x, y] of pieces.flatMap(({ from, to }) => [from, to])) {
      box[0] = Math.min(box[0], x)
      box[1] = Math.min(box[1], y)
      box[2] = Math.max(box[2], x)
      box[3] = Math.max(box[3], y)
    }
    boxes.set(layer, box)
  }
  let best: string | null = null
  let most = 0
  for (const [layer, [x0, y0, x1, y1]] of boxes) {
    const size = (x1 - x0) * (y1 - y0)
    if (size > most) [best, most] = [layer, size]
  }
  return best
}
