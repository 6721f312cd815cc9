import { sweepOf } from '../gerber/arcs'
import { NM_PER_MM } from '../limits'
import {
  ARC_CLOCKWISE,
  ARC_COUNTERCLOCKWISE,
  FLASH,
  type LayerObjects,
  LINE,
  NUMBERS_PER_CORNER,
  NUMBERS_PER_OBJECT,
  REGION,
} from '../objects/objects'
import { Box } from '../shape/extents'
import { addArc } from '../shape/flatten'
import { areaNm2, type FlatPath } from '../shape/path'

/** Ends of strokes this near to each other are one point: what rounding in two programs leaves. Our choice. */
const JOINED_NM = 5000

/** One closed line of a profile, along the middle of its strokes. */
interface OutlineLoop {
  readonly areaMm2: number
  readonly extentMm: readonly [number, number, number, number]
  /** How many other loops it lies in: 0 is the circuit's border, 1 a cut-out. */
  readonly depth: number
}

export interface OutlineFacts {
  /** Every stroke belongs to a loop, and no loop branches. Otherwise areas and cut-outs are not known. */
  readonly isClosed: boolean
  /** Of the middle of all strokes, arcs with their bulge. */
  readonly extentMm: readonly [number, number, number, number]
  /** Largest first. */
  readonly loops: readonly OutlineLoop[]
  /** Where a stroke ends alone, or three meet; the first few. */
  readonly looseEndsMm: readonly (readonly [number, number])[]
}

interface Edge {
  readonly kind: number
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
  readonly cx: number
  readonly cy: number
}

const MOST_LOOSE_ENDS = 5

/** What a profile draws, taken along the middle of its strokes; null where it draws no line. */
export function traceOutline(objects: LayerObjects): OutlineFacts | null {
  const { strokes, closed } = collectEdges(objects)
  if (strokes.length === 0 && closed.length === 0) return null
  const chained = chain(strokes)
  const rings = [...closed, ...chained.rings]
  const whole = new Box()
  // A stroke from a point to itself is a speck that lies anywhere: it is no part of the outline.
  const drawn = [...chained.strokes, ...closed.flat()]
  if (drawn.length === 0) return null
  for (const edge of drawn) include(whole, edge)
  const measured = rings.map((ring) => {
    const box = new Box()
    for (const edge of ring) include(box, edge)
    return { ring, areaMm2: Math.abs(signedAreaNm2(ring)) / NM_PER_MM ** 2, extentMm: inMm(box) }
  })
  const loops = measured
    .map(({ ring, areaMm2, extentMm }) => ({
      areaMm2,
      extentMm,
      depth: measured.filter((other) => other.ring !== ring && other.areaMm2 > areaMm2 && contains(other.ring, ring))
        .length,
    }))
    .sort((one, other) => other.areaMm2 - one.areaMm2)
  return {
    isClosed: chained.looseEnds.length === 0 && loops.length > 0,
    extentMm: inMm(whole),
    loops,
    looseEndsMm: chained.looseEnds.slice(0, MOST_LOOSE_ENDS).map(([x, y]) => [x / NM_PER_MM, y / NM_PER_MM]),
  }
}

/** The closed lines of a profile as corners, arcs flattened: the largest first. Empty where its strokes do not all close. */
export function ringsOfOutline(objects: LayerObjects, toleranceNm: number): FlatPath[] {
  const { strokes, closed } = collectEdges(objects)
  const chained = chain(strokes)
  if (chained.looseEnds.length > 0) return []
  return [...closed, ...chained.rings]
    .map((ring) =>
      ring.flatMap((edge): number[] => {
        const path: FlatPath = [edge.x0, edge.y0]
        if (edge.kind === LINE) return path
        const radius = Math.hypot(edge.x0 - edge.cx, edge.y0 - edge.cy)
        const sweep = sweepOfEdge(edge) * (edge.kind === ARC_CLOCKWISE ? -1 : 1)
        addArc(path, edge.cx, edge.cy, radius, Math.atan2(edge.y0 - edge.cy, edge.x0 - edge.cx), sweep, toleranceNm)
        return path
      }),
    )
    .sort((one, other) => Math.abs(areaNm2(other)) - Math.abs(areaNm2(one)))
}

const inMm = ({ minX, minY, maxX, maxY }: Box) =>
  [minX / NM_PER_MM, minY / NM_PER_MM, maxX / NM_PER_MM, maxY / NM_PER_MM] as const

function include(box: Box, { kind, x0, y0, x1, y1, cx, cy }: Edge): void {
  if (kind === LINE) {
    box.include(x0, y0)
    box.include(x1, y1)
  } else box.includeArc(kind === ARC_CLOCKWISE, x0, y0, x1, y1, cx, cy)
}

/** Strokes, each once however often it is drawn; contours of regions and full circles are closed as they are. */
function collectEdges(objects: LayerObjects): { strokes: Edge[]; closed: Edge[][] } {
  const strokes: Edge[] = []
  const closed: Edge[][] = []
  const seen = new Set<string>()
  for (let index = 0; index < objects.count; index += 1) {
    const kind = objects.kinds[index] ?? 0
    if (objects.isClear[index] === 1 || kind === FLASH) continue
    const n = (offset: number) => objects.numbers[index * NUMBERS_PER_OBJECT + offset] ?? 0
    if (kind === REGION) {
      for (let contour = n(0); contour < n(0) + n(1); contour += 1) closed.push(contourOf(objects, contour))
      continue
    }
    const isArc = kind !== LINE
    const edge: Edge = {
      kind,
      x0: n(0),
      y0: n(1),
      x1: n(2),
      y1: n(3),
      cx: isArc ? n(4) : 0,
      cy: isArc ? n(5) : 0,
    }
    const isFull = edge.x0 === edge.x1 && edge.y0 === edge.y1
    if (isFull && !isArc) continue
    const ends = [`${edge.x0} ${edge.y0}`, `${edge.x1} ${edge.y1}`].sort().join(' ')
    // The same arc drawn the other way round has the other side.
    const isTurned = ends !== `${edge.x0} ${edge.y0} ${edge.x1} ${edge.y1}`
    const side = isArc && !isFull ? ((kind === ARC_CLOCKWISE) !== isTurned ? 'a' : 'b') : ''
    const key = `${ends} ${isArc ? `${edge.cx} ${edge.cy}` : ''}${side}`
    if (seen.has(key)) continue
    seen.add(key)
    if (isFull) closed.push([edge])
    else strokes.push(edge)
  }
  return { strokes, closed: closed.filter((ring) => ring.length > 0) }
}

function contourOf(objects: LayerObjects, contour: number): Edge[] {
  const edges: Edge[] = []
  const start = objects.contourStarts[contour] ?? 0
  const end = objects.contourStarts[contour + 1] ?? start
  for (let corner = start + 1; corner < end; corner += 1) {
    const c = (offset: number) => objects.corners[corner * NUMBERS_PER_CORNER + offset] ?? 0
    edges.push({
      kind: objects.cornerKinds[corner] ?? LINE,
      x0: c(-NUMBERS_PER_CORNER),
      y0: c(1 - NUMBERS_PER_CORNER),
      x1: c(0),
      y1: c(1),
      cx: c(2),
      cy: c(3),
    })
  }
  const [first, last] = [edges[0], edges.at(-1)]
  if (first !== undefined && last !== undefined && (first.x0 !== last.x1 || first.y0 !== last.y1))
    edges.push({ kind: LINE, x0: last.x1, y0: last.y1, x1: first.x0, y1: first.y0, cx: 0, cy: 0 })
  return edges
}

/** Joins strokes end to end into rings. Whatever hangs on a loose end or a branch is in no ring. */
function chain(given: readonly Edge[]): {
  rings: Edge[][]
  strokes: Edge[]
  looseEnds: (readonly [number, number])[]
} {
  const nodes = new NodeFinder()
  const found = given.map((edge) => ({
    edge,
    ends: [nodes.find(edge.x0, edge.y0), nodes.find(edge.x1, edge.y1)] as const,
  }))
  // A stroke from a point to itself joins nothing: it bridges a gap that is none, unless it is an arc that comes back.
  const isShort = ({ edge, ends: [from, to] }: (typeof found)[number]) => from === to && lengthOf(edge) <= 2 * JOINED_NM
  const kept = found.filter((each) => !isShort(each))
  const strokes = kept.map(({ edge }) => edge)
  const ends = kept.map((each) => each.ends)
  const edgesAt = nodes.places.map((): number[] => [])
  ends.forEach(([from, to], at) => {
    edgesAt[from]?.push(at)
    edgesAt[to]?.push(at)
  })
  const looseEnds = nodes.places.filter((_, node) => ![0, 2].includes(edgesAt[node]?.length ?? 0))
  const rings: Edge[][] = []
  const used = new Set<number>()
  for (let first = 0; first < strokes.length; first += 1) {
    if (used.has(first)) continue
    const ring: Edge[] = []
    const [start] = ends[first] ?? [0]
    let node = start
    let at: number | undefined = first
    let isRing = true
    while (at !== undefined && !used.has(at)) {
      used.add(at)
      const edge = strokes[at] as Edge
      const [from, to] = ends[at] ?? [0, 0]
      ring.push(from === node ? edge : turned(edge))
      node = from === node ? to : from
      const there: readonly number[] = edgesAt[node] ?? []
      if (there.length !== 2) isRing = false
      at = there.find((next) => !used.has(next))
    }
    if (isRing && node === start && edgesAt[start]?.length === 2) rings.push(ring)
  }
  return { rings, strokes, looseEnds }
}

const lengthOf = (edge: Edge): number =>
  edge.kind === LINE
    ? Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0)
    : Math.hypot(edge.x0 - edge.cx, edge.y0 - edge.cy) * sweepOfEdge(edge)

const turned = ({ kind, x0, y0, x1, y1, cx, cy }: Edge): Edge => ({
  kind: kind === LINE ? LINE : kind === ARC_CLOCKWISE ? ARC_COUNTERCLOCKWISE : ARC_CLOCKWISE,
  x0: x1,
  y0: y1,
  x1: x0,
  y1: y0,
  cx,
  cy,
})

/** Points that lie within JOINED_NM of one that is known are that one. */
class NodeFinder {
  readonly places: (readonly [number, number])[] = []
  readonly #cells = new Map<string, number[]>()

  find(x: number, y: number): number {
    const [column, row] = [Math.floor(x / JOINED_NM), Math.floor(y / JOINED_NM)]
    for (let dx = -1; dx <= 1; dx += 1) {
      for (let dy = -1; dy <= 1; dy += 1) {
        for (const node of this.#cells.get(`${column + dx} ${row + dy}`) ?? []) {
          const [px, py] = this.places[node] ?? [0, 0]
          if (Math.hypot(px - x, py - y) <= JOINED_NM) return node
        }
      }
    }
    const node = this.places.push([x, y]) - 1
    const key = `${column} ${row}`
    this.#cells.set(key, [...(this.#cells.get(key) ?? []), node])
    return node
  }
}

const sweepOfEdge = ({ kind, x0, y0, x1, y1, cx, cy }: Edge): number => {
  if (x0 === x1 && y0 === y1) return 2 * Math.PI
  return sweepOf(x0 - cx, y0 - cy, x1 - cx, y1 - cy, kind === ARC_CLOCKWISE)
}

/** Green's theorem over lines and arcs, from the ring's own first point, so that large coordinates cost no digits. */
function signedAreaNm2(ring: readonly Edge[]): number {
  const [originX, originY] = [ring[0]?.x0 ?? 0, ring[0]?.y0 ?? 0]
  let twice = 0
  for (const [at, edge] of ring.entries()) {
    // Ends that count as one point may be micrometres apart: the ring goes straight on there.
    const next = ring[(at + 1) % ring.length] ?? edge
    twice += (edge.x1 - originX) * (next.y0 - originY) - (next.x0 - originX) * (edge.y1 - originY)
    const [x0, y0, x1, y1] = [edge.x0 - originX, edge.y0 - originY, edge.x1 - originX, edge.y1 - originY]
    if (edge.kind === LINE) twice += x0 * y1 - x1 * y0
    else {
      const [cx, cy] = [edge.cx - originX, edge.cy - originY]
      const radius = Math.hypot(x0 - cx, y0 - cy)
      const sweep = sweepOfEdge(edge) * (edge.kind === ARC_CLOCKWISE ? -1 : 1)
      twice += cx * (y1 - y0) - cy * (x1 - x0) + radius * radius * sweep
    }
  }
  return twice / 2
}

/** Does a ring hold another? Asked of the middle of the other's first edge, as rings of one profile touch in corners at most. */
function contains(outer: readonly Edge[], inner: readonly Edge[]): boolean {
  const [x, y] = middleOf(inner[0] as Edge)
  let isInside = false
  for (const edge of outer) {
    const points = edge.kind === LINE ? [edge.x0, edge.y0, edge.x1, edge.y1] : chordsOf(edge)
    for (let at = 0; at + 3 < points.length; at += 2) {
      const [ax = 0, ay = 0, bx = 0, by = 0] = points.slice(at, at + 4)
      if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) isInside = !isInside
    }
  }
  return isInside
}

const CHORDS = 32

function chordsOf(edge: Edge): number[] {
  const radius = Math.hypot(edge.x0 - edge.cx, edge.y0 - edge.cy)
  const from = Math.atan2(edge.y0 - edge.cy, edge.x0 - edge.cx)
  const sweep = sweepOfEdge(edge) * (edge.kind === ARC_CLOCKWISE ? -1 : 1)
  const points = [edge.x0, edge.y0]
  for (let at = 1; at < CHORDS; at += 1) {
    const angle = from + (sweep * at) / CHORDS
    points.push(edge.cx + radius * Math.cos(angle), edge.cy + radius * Math.sin(angle))
  }
  return [...points, edge.x1, edge.y1]
}

function middleOf(edge: Edge): readonly [number, number] {
  if (edge.kind === LINE) return [(edge.x0 + edge.x1) / 2, (edge.y0 + edge.y1) / 2]
  const points = chordsOf(edge)
  return [points[CHORDS] ?? 0, points[CHORDS + 1] ?? 0]
}
