import { addBetweenPlanes } from './between-planes'
import { addInfluence, type Influence, makeInfluence, pointsOnPanel } from './influence'
import type { Panel } from './panels'

/** Whether a system stands for the whole section, or for the half on the right of its mirror plane, with potentials alike or opposite there. */
export type Part = 'whole' | 'even' | 'odd'

/** Sign of what the mirror image of a panel adds. */
const MIRRORED: Readonly<Record<Part, number>> = { whole: 0, even: 1, odd: -1 }

/** Where influences are worked out: of the panel itself, of its mirror image, and together by part. */
export interface Room {
  readonly parts: readonly Part[]
  readonly own: Influence
  readonly mirrored: Influence
  readonly byPart: readonly Influence[]
}

export const makeRoom = (parts: readonly Part[]): Room => ({
  parts,
  own: makeInfluence(),
  mirrored: makeInfluence(),
  byPart: parts.map(makeInfluence),
})

export interface Around {
  readonly hasPlane: boolean
  readonly spacing: number | null
}

/** Potential and field of a panel and its images in the planes, for each part. */
export function takeInfluence(
  source: Panel,
  x: number,
  y: number,
  { hasPlane, spacing }: Around,
  { parts, own, mirrored, byPart }: Room,
  withField: boolean,
): void {
  const [first, second] = byPart
  if (first === undefined) return
  // A charge on the left has the same potential where its mirror image on the right is asked at the mirrored point.
  if (second === undefined) {
    clear(first, source.order)
    addWithImages(source, x, y, 1, hasPlane, spacing, first, withField)
    const sign = MIRRORED[parts[0] ?? 'whole']
    if (sign !== 0) addWithImages(source, -x, y, sign, hasPlane, spacing, first, withField)
    return
  }
  clear(own, source.order)
  clear(mirrored, source.order)
  addWithImages(source, x, y, 1, hasPlane, spacing, own, withField)
  addWithImages(source, -x, y, 1, hasPlane, spacing, mirrored, withField)
  for (let at = 0; at < parts.length; at += 1) {
    const into = byPart[at] as Influence
    const sign = MIRRORED[parts[at] as Part]
    for (let n = 0; n < source.order; n += 1) {
      into.potential[n] = (own.potential[n] as number) + sign * (mirrored.potential[n] as number)
      if (withField) into.fieldY[n] = (own.fieldY[n] as number) + sign * (mirrored.fieldY[n] as number)
    }
  }
}

function clear({ potential, fieldY }: Influence, order: number): void {
  for (let n = 0; n < order; n += 1) {
    potential[n] = 0
    fieldY[n] = 0
  }
}

function addWithImages(
  source: Panel,
  x: number,
  y: number,
  sign: number,
  hasPlane: boolean,
  spacing: number | null,
  into: Influence,
  withField: boolean,
): void {
  addInfluence(source, x, y, sign, false, into, withField)
  if (hasPlane) addInfluence(source, x, -y, -sign, true, into, withField)
  if (spacing === null) return
  addInfluence(source, x, 2 * spacing - y, -sign, true, into, withField)
  addBetweenPlanes(source, x, y, sign, spacing, into, withField)
}

export function forEachPoint(panel: Panel, use: (x: number, y: number, node: number, weight: number) => void): void {
  const { nodes, weights } = pointsOnPanel(panel.order)
  nodes.forEach((node, index) => {
    use(panel.x + node * panel.halfX, panel.y + node * panel.halfY, index, weights[index] as number)
  })
}
