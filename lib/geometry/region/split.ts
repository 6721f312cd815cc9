import { edgesOfPath, extentAlong, type LineOrArc, type Path, roundPoint } from '../path'
import type { PointNm } from '../predicates'
import { type Arrangement, arrange, type Cutter, type Cycle } from './arrange'
import { edgesOfRegion, findInnerPoint, locateInRegion, makeCheckedRegion, type Region } from './region'

/** A piece of a region that was cut, and the pieces on the far side of its cuts. */
export interface SplitPiece {
  readonly region: Region
  /** Well inside of it. */
  readonly inner: PointNm
  readonly neighbours: readonly {
    readonly piece: number
    readonly line: number
    readonly edges: readonly LineOrArc[]
  }[]
}

export interface Split {
  readonly pieces: readonly SplitPiece[]
  /** Lines that part nothing: the same piece lies on both sides of all of them. */
  readonly idle: readonly number[]
}

/** An end of a dividing line this near to a border lies on it: 1 um, below anything that a shop can cut. Our choice. */
export const JOIN_REACH_NM = 1000

const BORDER = -1

/** Cuts a region along paths, which may end on its border, on each other, or cross. */
export function splitByLines(region: Region, lines: readonly Path[], reachNm = JOIN_REACH_NM): Split {
  const border: Cutter[] = edgesOfRegion(region).map((edge) => ({ edge, tag: BORDER }))
  const cutters: Cutter[] = lines.flatMap((line, tag) => {
    const edges = edgesOfPath(line)
    return edges.map((edge, at): Cutter => ({ edge, tag, joinsFrom: at === 0, joinsTo: at === edges.length - 1 }))
  })
  const arrangement = arrange([...border, ...cutters], reachNm)
  return collect(region, arrangement, lines.length)
}

function collect(region: Region, { halfEdges, cycles }: Arrangement, lineCount: number): Split {
  const edgesOf = (cycle: Cycle) => cycle.halfEdges.flatMap((half) => halfEdges[half]?.edge ?? [])
  const faces = cycles.flatMap((cycle, number) => {
    if (cycle.areaNm2 <= 0) return []
    const bare = makeCheckedRegion(withoutSpurs(edgesOf(cycle)), [])
    const inner = findInnerPoint(bare)
    return inner === null ? [] : [{ number, cycle, bare, inner }]
  })
  const rims = cycles.flatMap((cycle, number) => {
    const [first] = edgesOf(cycle)
    return cycle.areaNm2 >= 0 || first === undefined ? [] : [{ number, edges: edgesOf(cycle), at: first.from }]
  })
  // What hangs together and touches no border of a face lies in the smallest face around it, as a hole of it.
  const ownerOfRim = new Map<number, number>()
  for (const rim of rims) {
    const around = faces
      .filter(({ bare }) => rim.edges.every(({ from }) => locateInRegion(bare, from) === 'inside'))
      .sort((one, other) => one.bare.areaNm2 - other.bare.areaNm2)
    if (around[0] !== undefined) ownerOfRim.set(rim.number, around[0].number)
  }
  const inside = faces.flatMap((face) => {
    const holes = rims
      .filter(({ number }) => ownerOfRim.get(number) === face.number)
      .map(({ edges }) => withoutSpurs(edges))
    const cutAway = holes.filter((hole) => hole.length > 0)
    const whole = cutAway.length === 0 ? face.bare : makeCheckedRegion(face.bare.outer, cutAway)
    const inner = cutAway.length === 0 ? face.inner : findInnerPoint(whole)
    return inner === null || locateInRegion(region, inner) !== 'inside' ? [] : [{ ...face, whole, inner }]
  })
  const pieceOfCycle = new Map<number, number>()
  for (const [piece, { number }] of inside.entries()) pieceOfCycle.set(number, piece)
  for (const [rim, face] of ownerOfRim) {
    const piece = pieceOfCycle.get(face)
    if (piece !== undefined) pieceOfCycle.set(rim, piece)
  }
  const parts = new Set<number>()
  const cutsOf = inside.map((): (typeof halfEdges)[number][] => [])
  for (const half of halfEdges) {
    const piece = half.tag === BORDER ? undefined : pieceOfCycle.get(half.cycle)
    if (piece !== undefined) cutsOf[piece]?.push(half)
  }
  const pieces = inside.map(({ whole, inner }, piece): SplitPiece => {
    const shared = new Map<string, { piece: number; line: number; edges: LineOrArc[] }>()
    for (const half of cutsOf[piece] ?? []) {
      const other = pieceOfCycle.get(halfEdges[half.twin]?.cycle ?? -1)
      if (other === undefined || other === piece) continue
      parts.add(half.tag)
      const key = `${other}|${half.tag}`
      const found = shared.get(key)
      if (found === undefined) shared.set(key, { piece: other, line: half.tag, edges: [half.edge] })
      else found.edges.push(half.edge)
    }
    return { region: whole, inner, neighbours: [...shared.values()] }
  })
  return { pieces, idle: Array.from({ length: lineCount }, (_, line) => line).filter((line) => !parts.has(line)) }
}

/** A line that ends within a face is walked there and back: neither is part of the face's border. */
function withoutSpurs(edges: readonly LineOrArc[]): LineOrArc[] {
  const kept: LineOrArc[] = []
  const isBack = (a: LineOrArc, b: LineOrArc) =>
    a.from[0] === b.to[0] &&
    a.from[1] === b.to[1] &&
    a.kind === b.kind &&
    (a.kind === 'line' || b.kind === 'line' || (a.through[0] === b.through[0] && a.through[1] === b.through[1]))
  for (const edge of edges) {
    const last = kept.at(-1)
    if (last !== undefined && isBack(last, edge)) kept.pop()
    else kept.push(edge)
  }
  while (kept.length > 1 && isBack(kept[kept.length - 1] as LineOrArc, kept[0] as LineOrArc)) {
    kept.pop()
    kept.shift()
  }
  return kept
}

/** A straight band: the points within `halfWidthNm` of the endless line through two points. */
export interface Band {
  readonly from: PointNm
  readonly to: PointNm
  readonly halfWidthNm: number
}

/** The pieces of a region that lie in a band, cut by its two borders. */
export function clipToBand(region: Region, { from, to, halfWidthNm }: Band): Region[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const along = [(to[0] - from[0]) / length, (to[1] - from[1]) / length] as const
  const across = [-along[1], along[0]] as const
  const edges = edgesOfRegion(region)
  const reach = extentAlong(edges, along)
  const start = from[0] * along[0] + from[1] * along[1]
  const borderAt = (side: number): Path => {
    const at = (s: number): PointNm =>
      roundPoint([
        from[0] + (s - start) * along[0] + side * halfWidthNm * across[0],
        from[1] + (s - start) * along[1] + side * halfWidthNm * across[1],
      ])
    return [
      { at: at(reach.low - OVERHANG_NM), via: null },
      { at: at(reach.high + OVERHANG_NM), via: null },
    ]
  }
  const middle = from[0] * across[0] + from[1] * across[1]
  return splitByLines(region, [borderAt(1), borderAt(-1)], 0)
    .pieces.filter(({ inner }) => Math.abs(inner[0] * across[0] + inner[1] * across[1] - middle) <= halfWidthNm)
    .map((piece) => piece.region)
}

/** 1 mm past the region on either side, so that no border ends on it by chance. */
const OVERHANG_NM = 1e6
