import {
  CONTACT_NM,
  crossEdges,
  directionAt,
  isSamePoint,
  type LineOrArc,
  lengthOfEdge,
  looseBox,
  makeEdge,
  nearestOnEdge,
  pointAt,
  reverseEdge,
  roundPoint,
  shareOnArc,
  shareOnLine,
  signedAreaOf,
} from '../path'
import type { PointNm } from '../predicates'
import { pairsWithSharedBox } from './check-loop'

/** An edge that takes part in cutting the plane, and what it belongs to. */
export interface Cutter {
  readonly edge: LineOrArc
  /** The owner's own word for it, handed back with each piece. */
  readonly tag: number
  /** Ends that are drawn towards an edge as near as the reach: those of dividing lines. */
  readonly joinsFrom?: boolean
  readonly joinsTo?: boolean
}

/** One side of a piece of an edge; `twin` runs the other way. */
export interface HalfEdge {
  readonly edge: LineOrArc
  readonly tag: number
  readonly isForward: boolean
  readonly twin: number
  /** Number of the cycle that has it on its border, area to its left. */
  cycle: number
}

export interface Cycle {
  readonly halfEdges: readonly number[]
  readonly areaNm2: number
}

export interface Arrangement {
  readonly halfEdges: readonly HalfEdge[]
  /** Positive: border of a face. Negative: the outer rim of pieces that hang together. */
  readonly cycles: readonly Cycle[]
}

/**
 * Cuts edges where they meet and follows the cycles that have one face to their left. Points where edges meet are rounded to whole
 * nanometres once and shared, so that all pieces fit each other; an end that joins is moved onto an edge within `reachNm` of it.
 */
export function arrange(cutters: readonly Cutter[], reachNm: number): Arrangement {
  const cuts = cutters.map((): Cut[] => [])
  const edges = joinEnds(cutters, cuts, reachNm)
  for (const [first, second] of pairsWithSharedBox(edges)) {
    const [a, b] = [edges[first], edges[second]]
    if (a === undefined || b === undefined) continue
    for (const { onFirst, onSecond, point } of crossEdges(a, b)) {
      const near = findNear(cuts[first], cuts[second], a, b, point, reachNm)
      const shared = near ?? roundPoint(point)
      addCut(cuts[first], a, onFirst, shared)
      addCut(cuts[second], b, onSecond, shared)
    }
  }
  return followCycles(splitAt(edges, cutters, cuts))
}

interface Cut {
  readonly share: number
  readonly point: PointNm
}

/** An end of a dividing line that stops short of an edge, or runs past it, by less than the reach is moved onto that edge. */
function joinEnds(cutters: readonly Cutter[], cuts: Cut[][], reachNm: number): LineOrArc[] {
  const edges = cutters.map(({ edge }) => edge)
  const boxes = edges.map(looseBox)
  cutters.forEach(({ edge, joinsFrom, joinsTo }, own) => {
    const ends = [...(joinsFrom === true ? [edge.from] : []), ...(joinsTo === true ? [edge.to] : [])]
    for (const end of ends) {
      let best: { readonly at: number; readonly distanceNm: number; readonly point: PointNm } | null = null
      cutters.forEach(({ edge: other }, at) => {
        // Boxes are never farther than what they hold: most edges are elsewhere, and measuring each took most of the time.
        const box = boxes[at]
        if (at === own || box === undefined || !isNearBox(box, end, reachNm)) return
        const { distanceNm, point } = nearestOnEdge(other, end)
        if (distanceNm <= reachNm && (best === null || distanceNm < best.distanceNm)) {
          best = { at, distanceNm, point: roundPoint(point) }
        }
      })
      const found = best as { readonly at: number; readonly point: PointNm } | null
      const [moving, other] = [edges[own], found === null ? undefined : cutters[found.at]?.edge]
      if (found === null || moving === undefined || other === undefined) continue
      const share = shareOn(other, found.point)
      if (share !== null) addCut(cuts[found.at], other, share, found.point)
      edges[own] = moveEnd(moving, end, found.point)
    }
  })
  return edges
}

const isNearBox = ({ minX, minY, maxX, maxY }: ReturnType<typeof looseBox>, [x, y]: PointNm, reachNm: number) =>
  x >= minX - reachNm - 1 && x <= maxX + reachNm + 1 && y >= minY - reachNm - 1 && y <= maxY + reachNm + 1

function moveEnd(edge: LineOrArc, end: PointNm, to: PointNm): LineOrArc {
  const [from, until] = isSamePoint(edge.from, end) ? [to, edge.to] : [edge.from, to]
  return isSamePoint(from, until) ? edge : makeEdge(from, edge.kind === 'arc' ? edge.through : null, until)
}

const shareOn = (edge: LineOrArc, point: readonly [number, number]): number | null =>
  edge.kind === 'line' ? shareOnLine(edge, point) : shareOnArc(edge, point)

function findNear(
  first: readonly Cut[] | undefined,
  second: readonly Cut[] | undefined,
  a: LineOrArc,
  b: LineOrArc,
  point: readonly [number, number],
  reachNm: number,
): PointNm | null {
  return (
    findCutNear(first, point, reachNm) ??
    findCutNear(second, point, reachNm) ??
    [a.from, a.to, b.from, b.to].find((end) => isWithin(end, point, CONTACT_NM)) ??
    null
  )
}

/** An edge that many lines end on has as many cuts: no list is made of them. */
function findCutNear(cuts: readonly Cut[] | undefined, point: readonly [number, number], nm: number): PointNm | null {
  for (const cut of cuts ?? []) if (isWithin(cut.point, point, nm)) return cut.point
  return null
}

const isWithin = (one: PointNm, other: readonly [number, number], nm: number) =>
  Math.abs(one[0] - other[0]) <= nm && Math.hypot(one[0] - other[0], one[1] - other[1]) <= nm

function addCut(cuts: Cut[] | undefined, edge: LineOrArc, share: number, point: PointNm): void {
  if (cuts === undefined || isSamePoint(point, edge.from) || isSamePoint(point, edge.to)) return
  if (cuts.some((cut) => isSamePoint(cut.point, point))) return
  cuts.push({ share, point })
}

interface Piece {
  readonly edge: LineOrArc
  readonly tag: number
}

function splitAt(edges: readonly LineOrArc[], cutters: readonly Cutter[], cuts: readonly Cut[][]): Piece[] {
  const seen = new Set<string>()
  return edges.flatMap((edge, at): Piece[] => {
    const tag = cutters[at]?.tag ?? 0
    const sorted = [...(cuts[at] ?? [])].sort((one, other) => one.share - other.share)
    const stops: Cut[] = [{ share: 0, point: edge.from }, ...sorted, { share: 1, point: edge.to }]
    const pieces: Piece[] = []
    for (let stop = 0; stop + 1 < stops.length; stop += 1) {
      const [from, to] = [stops[stop], stops[stop + 1]]
      if (from === undefined || to === undefined || isSamePoint(from.point, to.point)) continue
      const piece = stops.length === 2 ? edge : makePiece(edge, from, to)
      // Two edges that run together are one piece, which belongs to the first.
      const key = keyOf(piece)
      if (!seen.has(key)) pieces.push({ edge: piece, tag })
      seen.add(key)
    }
    return pieces
  })
}

function makePiece(edge: LineOrArc, from: Cut, to: Cut): LineOrArc {
  if (edge.kind === 'line') return makeEdge(from.point, null, to.point)
  const through = roundPoint(pointAt(edge, (from.share + to.share) / 2))
  try {
    return makeEdge(from.point, through, to.point)
  } catch {
    // So short that rounding has straightened it.
    return makeEdge(from.point, null, to.point)
  }
}

function keyOf(edge: LineOrArc): string {
  const [low, high] =
    edge.from[0] < edge.to[0] || (edge.from[0] === edge.to[0] && edge.from[1] < edge.to[1])
      ? [edge.from, edge.to]
      : [edge.to, edge.from]
  return `${low}|${high}|${edge.kind === 'arc' ? edge.through : ''}`
}

function followCycles(pieces: readonly Piece[]): Arrangement {
  const halfEdges: HalfEdge[] = []
  const leaving = new Map<string, number[]>()
  const leave = (point: PointNm, half: number) => {
    const key = String(point)
    const list = leaving.get(key)
    if (list === undefined) leaving.set(key, [half])
    else list.push(half)
  }
  for (const { edge, tag } of pieces) {
    const at = halfEdges.length
    halfEdges.push({ edge, tag, isForward: true, twin: at + 1, cycle: -1 })
    halfEdges.push({ edge: reverseEdge(edge), tag, isForward: false, twin: at, cycle: -1 })
    leave(edge.from, at)
    leave(edge.to, at + 1)
  }
  const edgeOf = (half: number) => halfEdges[half]?.edge
  for (const list of leaving.values()) {
    list.sort((one, other) => compareLeaving(edgeOf(one), edgeOf(other)))
  }
  const next = halfEdges.map(({ edge, twin }) => {
    const list = leaving.get(String(edge.to)) ?? []
    // The first to the right of the way back: it keeps the face to the left.
    return list[(list.indexOf(twin) - 1 + list.length) % list.length] ?? twin
  })
  const cycles: Cycle[] = []
  halfEdges.forEach((half, start) => {
    if (half.cycle >= 0) return
    const members: number[] = []
    for (let at = start; halfEdges[at]?.cycle === -1; at = next[at] ?? start) {
      const member = halfEdges[at]
      if (member === undefined) break
      member.cycle = cycles.length
      members.push(at)
    }
    const edges = members.flatMap((member) => edgeOf(member) ?? [])
    cycles.push({ halfEdges: members, areaNm2: signedAreaOf(edges) })
  })
  return { halfEdges, cycles }
}

/** Counter-clockwise by the direction in which they leave; of two in one direction, the one that bends more to the right comes first. */
function compareLeaving(one: LineOrArc | undefined, other: LineOrArc | undefined): number {
  if (one === undefined || other === undefined) return 0
  const [a, b] = [directionAt(one, 0), directionAt(other, 0)]
  const [radA, radB] = [fromSeam(a), fromSeam(b)]
  const reach = Math.min(lengthOfEdge(one), lengthOfEdge(other))
  // Directions nearer than a rounding of the ends are compared a little further on.
  if (Math.abs(radA - radB) * reach > 4 * CONTACT_NM) return radA - radB
  return bendOf(one) - bendOf(other) || radA - radB
}

/**
 * Where the round of directions begins. Two edges that leave in one direction must not be told apart by a whole turn, and tangents along x
 * are common, so that it does not begin at half a turn, as atan2 has it.
 */
const SEAM_RAD = -3

function fromSeam([x, y]: readonly [number, number]): number {
  const rad = Math.atan2(y, x)
  return rad < SEAM_RAD ? rad + 2 * Math.PI : rad
}

/** Positive to the left, in 1/nm. */
const bendOf = (edge: LineOrArc) => (edge.kind === 'line' ? 0 : Math.sign(edge.sweepRad) / edge.radiusNm)
