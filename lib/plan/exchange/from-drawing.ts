import {
  type Chain,
  chainStrokes,
  circleThrough,
  type Drawing,
  type FileIssue,
  type Piece,
  type Point,
  type Stroke,
} from '@/lib/drawing-files'
import { edgesOfLoop, locatePoint, signedAreaOf } from '@/lib/geometry'
import type { PlanNode } from '../document/path-schema'
import type { PointMm } from '../document/primitives'
import { pathInNm, toNm } from '../document/to-geometry'
import { isArc, isSame, wholePoint } from '../edit/nodes'
import type { PlanRole } from './roles'

/** What a drawing brings for a plan: shapes alone, since names and what they belong to are the design's. */
export interface ImportedPlan {
  readonly outline: readonly PlanNode[] | null
  readonly cutOuts: readonly (readonly PlanNode[])[]
  readonly dividingLines: readonly (readonly PlanNode[])[]
  readonly slits: readonly (readonly PlanNode[])[]
  readonly bendLines: readonly (readonly [PointMm, PointMm])[]
  readonly stiffeners: readonly (readonly PlanNode[])[]
  readonly coverlayOpenings: readonly (readonly PlanNode[])[]
  readonly components: readonly (readonly PlanNode[])[]
  readonly holes: readonly { readonly atMm: PointMm; readonly diameterMm: number | null }[]
  /** What was not taken over, or not as it stands. */
  readonly issues: readonly FileIssue[]
}

export interface ImportOptions {
  /** Ends this near to each other are one. */
  readonly matchMm: number
  /** Puts the lower left corner of the outline at the origin, on whole nanometres. */
  readonly toOrigin: boolean
}

const CLOSED_ROLES = ['cutOuts', 'stiffeners', 'coverlayOpenings', 'components'] as const
const OPEN_ROLES = ['dividingLines', 'slits'] as const
const MAX_NODES = 2000
/** As many as the plan's lists hold. */
const MOST: Readonly<Record<Exclude<PlanRole, 'outline'>, number>> = {
  cutOuts: 200,
  dividingLines: 400,
  slits: 200,
  bendLines: 400,
  stiffeners: 200,
  coverlayOpenings: 1000,
  components: 500,
  holes: 1000,
}

export function planFromDrawing(
  drawing: Drawing,
  roles: ReadonlyMap<string, PlanRole>,
  { matchMm, toOrigin }: ImportOptions,
): ImportedPlan {
  const taker = new Taker(drawing, roles, matchMm, toOrigin)
  const { outline, inner } = taker.outline()
  const closed = (role: (typeof CLOSED_ROLES)[number]) => taker.limit(role, taker.loops(role))
  const open = (role: (typeof OPEN_ROLES)[number]) => taker.limit(role, taker.ways(role))
  return {
    outline,
    cutOuts: taker.limit('cutOuts', [...inner, ...taker.loops('cutOuts')]),
    dividingLines: open('dividingLines'),
    slits: open('slits'),
    bendLines: taker.limit('bendLines', taker.straights()),
    stiffeners: closed('stiffeners'),
    coverlayOpenings: closed('coverlayOpenings'),
    components: closed('components'),
    holes: taker.limit('holes', taker.holes()),
    issues: taker.issues,
  }
}

class Taker {
  readonly issues: FileIssue[] = []
  private readonly shift: Point

  constructor(
    private readonly drawing: Drawing,
    private readonly roles: ReadonlyMap<string, PlanRole>,
    private readonly matchMm: number,
    toOrigin: boolean,
  ) {
    this.shift = toOrigin ? cornerOf(this.strokesOf('outline'), drawing.strokes) : [0, 0]
  }

  private strokesOf(role: PlanRole): Stroke[] {
    return this.drawing.strokes.filter(({ layer }) => this.roles.get(layer) === role)
  }

  private add(line: number | null | undefined, message: string): void {
    this.issues.push({ line: line ?? null, message })
  }

  private chainsOf(role: PlanRole): readonly Chain[] {
    const strokes = this.strokesOf(role)
    const { chains, doubles } = chainStrokes(
      strokes.filter(({ pieces }) => pieces.length > 0),
      this.matchMm,
    )
    if (doubles > 0) this.add(null, `${ROLE_WORDS[role]}: ${doubles} drawn twice, taken once`)
    const points = strokes.filter(({ point }) => point !== null)
    if (points.length > 0 && role !== 'holes') {
      this.add(points[0]?.line, `${ROLE_WORDS[role]}: ${points.length} single points left out`)
    }
    for (const { widestGapMm, lines } of chains) {
      if (widestGapMm > SILENT_GAP_MM) {
        this.add(lines[0], `${ROLE_WORDS[role]}: a gap of ${say(widestGapMm)} mm was closed`)
      }
    }
    return chains
  }

  /** Of several loops in the outline's layers the largest is the outline, and those inside of it are cut-outs. */
  outline(): { outline: PlanNode[] | null; inner: PlanNode[][] } {
    const loops = this.loops('outline')
    if (loops.length === 0) return { outline: null, inner: [] }
    const sized = loops.map((nodes) => {
      const edges = edgesOfLoop(pathInNm(nodes))
      return { nodes, edges, size: Math.abs(signedAreaOf(edges)) }
    })
    sized.sort((a, b) => b.size - a.size)
    const [largest, ...others] = sized
    const inner: PlanNode[][] = []
    for (const { nodes } of others) {
      const start = nodes[0]
      if (largest !== undefined && start !== undefined && locatePoint(largest.edges, toNm(start.atMm)) === 'inside') {
        inner.push(nodes)
      } else {
        this.add(null, 'outline: a second closed way beside the largest one was left out; a plan draws one part')
      }
    }
    return { outline: largest?.nodes ?? null, inner }
  }

  loops(role: PlanRole): PlanNode[][] {
    return this.chainsOf(role).flatMap(({ pieces, isClosed, lines }) => {
      if (!isClosed) {
        const [from, to]: [Point, Point] = [pieces[0]?.from ?? [0, 0], pieces.at(-1)?.to ?? [0, 0]]
        const gap = Math.hypot(from[0] - to[0], from[1] - to[1])
        this.add(
          lines[0],
          `${ROLE_WORDS[role]}: the way from ${this.place(from)} to ${this.place(to)} does not close (${say(gap)} mm apart): left out`,
        )
        return []
      }
      const nodes = this.nodesOf(role, pieces, true, lines[0])
      return nodes === null ? [] : [nodes]
    })
  }

  ways(role: PlanRole): PlanNode[][] {
    return this.chainsOf(role).flatMap(({ pieces, isClosed, lines }) => {
      if (isClosed) {
        this.add(lines[0], `${ROLE_WORDS[role]}: a closed way is none: left out`)
        return []
      }
      const nodes = this.nodesOf(role, pieces, false, lines[0])
      return nodes === null ? [] : [nodes]
    })
  }

  straights(): (readonly [PointMm, PointMm])[] {
    return this.chainsOf('bendLines').flatMap(({ pieces, isClosed, lines }) => {
      const nodes = isClosed ? null : this.nodesOf('bendLines', pieces, false, lines[0])
      const [from, to] = [nodes?.[0]?.atMm, nodes?.at(-1)?.atMm]
      if (nodes == null || from === undefined || to === undefined || !isStraight(nodes, this.matchMm)) {
        this.add(lines[0], 'bend lines: not one straight line, left out')
        return []
      }
      return [[from, to] as const]
    })
  }

  holes(): { atMm: PointMm; diameterMm: number | null }[] {
    const found: { atMm: PointMm; diameterMm: number | null }[] = []
    const seen = new Set<string>()
    const put = (at: Point, diameterMm: number | null, line: number | null) => {
      const atMm = wholePoint(this.moved(at))
      if (atMm === null) return this.add(line, 'holes: one lies further out than a plan reaches, left out')
      const key = `${atMm.join(' ')} ${diameterMm}`
      if (seen.has(key)) return
      seen.add(key)
      found.push({ atMm, diameterMm })
    }
    for (const { circle, point, pieces, line } of this.strokesOf('holes')) {
      const round = circle ?? circleOf(pieces)
      if (point !== null) put(point, null, line)
      else if (round !== null) put(round.middle, Math.round(2 * round.radius * 1e6) / 1e6, line)
      else this.add(line, 'holes: not a full circle, left out')
    }
    return found
  }

  limit<T>(role: Exclude<PlanRole, 'outline'>, list: readonly T[]): readonly T[] {
    const most = MOST[role]
    if (list.length > most)
      this.add(null, `${ROLE_WORDS[role]}: ${list.length} in the file, the first ${most} are taken`)
    return list.slice(0, most)
  }

  private moved = ([x, y]: Point): Point => [x - this.shift[0], y - this.shift[1]]

  private place(point: Point): string {
    const [x, y] = this.moved(point)
    return `(${say(x)}, ${say(y)})`
  }

  /** On whole nanometres; what shrinks to nothing there is dropped. Null where it cannot be a path of a plan. */
  private nodesOf(
    role: PlanRole,
    pieces: readonly Piece[],
    isClosed: boolean,
    line: number | null | undefined,
  ): PlanNode[] | null {
    const nodes: PlanNode[] = []
    for (const { from, via } of pieces) {
      const [atMm, viaMm] = [wholePoint(this.moved(from)), via === null ? null : wholePoint(this.moved(via))]
      if (atMm === null || (via !== null && viaMm === null)) {
        this.add(line, `${ROLE_WORDS[role]}: lies further out than a plan reaches (5000 mm from the origin), left out`)
        return null
      }
      nodes.push({ atMm, viaMm })
    }
    const end = isClosed ? null : wholePoint(this.moved(pieces.at(-1)?.to ?? [0, 0]))
    if (end !== null) nodes.push({ atMm: end, viaMm: null })
    const kept = nodes.filter(({ atMm }, at) => {
      const next = nodes[at + 1] ?? (isClosed ? nodes[0] : undefined)
      return next === undefined || !isSame(atMm, next.atMm)
    })
    const sound = kept.map(({ atMm, viaMm }, at): PlanNode => {
      const next = kept[at + 1] ?? (isClosed ? kept[0] : undefined)
      return { atMm, viaMm: viaMm !== null && next !== undefined && isArc(atMm, viaMm, next.atMm) ? viaMm : null }
    })
    if (sound.length < 2) {
      this.add(line, `${ROLE_WORDS[role]}: smaller than the nanometres that a plan is drawn in, left out`)
      return null
    }
    if (sound.length > MAX_NODES) {
      this.add(
        line,
        `${ROLE_WORDS[role]}: a way of ${sound.length} points; a plan's have at most ${MAX_NODES}, left out`,
      )
      return null
    }
    return sound
  }
}

/** A gap up to this is rounding of the file. */
const SILENT_GAP_MM = 1e-4

const ROLE_WORDS: Readonly<Record<PlanRole, string>> = {
  outline: 'outline',
  cutOuts: 'cut-outs',
  dividingLines: 'dividing lines',
  bendLines: 'bend lines',
  stiffeners: 'stiffeners',
  holes: 'holes',
  coverlayOpenings: 'coverlay openings',
  components: 'components',
  slits: 'slits',
}

/** Down to a micrometre: these are places to look at. */
const say = (mm: number): string => String(Math.round(mm * 1000) / 1000 + 0)

/** Least x and y of the outline, or of all where no layer is one. */
function cornerOf(outline: readonly Stroke[], all: readonly Stroke[]): Point {
  let [x, y] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const { pieces } of outline.length > 0 ? outline : all) {
    for (const { from, via, to } of pieces) {
      for (const point of [from, via, to]) {
        if (point === null) continue
        x = Math.min(x, point[0])
        y = Math.min(y, point[1])
      }
    }
  }
  const whole = (mm: number) => (Number.isFinite(mm) ? Math.round(mm * 1e6) / 1e6 : 0)
  return [whole(x), whole(y)]
}

function isStraight(nodes: readonly PlanNode[], withinMm: number): boolean {
  const [from, to] = [nodes[0]?.atMm, nodes.at(-1)?.atMm]
  if (from === undefined || to === undefined || nodes.some(({ viaMm }) => viaMm !== null)) return false
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = Math.hypot(dx, dy)
  return nodes.every(
    ({ atMm: [x, y] }) => Math.abs((x - from[0]) * dy - (y - from[1]) * dx) <= Math.max(withinMm, 1e-6) * length,
  )
}

/** Two arcs or more that together are one circle, as polylines draw them. */
function circleOf(pieces: readonly Piece[]): { readonly middle: Point; readonly radius: number } | null {
  const [first, last] = [pieces[0], pieces.at(-1)]
  if (first === undefined || last === undefined || pieces.length < 2) return null
  if (Math.hypot(first.from[0] - last.to[0], first.from[1] - last.to[1]) > 1e-6) return null
  const via = pieces.map((piece) => piece.via)
  const [a, b] = [first.from, first.via]
  if (b === null || via.includes(null)) return null
  const circle = circleThrough(a, b, first.to)
  if (circle === null) return null
  const [middle, radius] = circle
  const isOn = ([x, y]: Point) => Math.abs(Math.hypot(x - middle[0], y - middle[1]) - radius) <= 1e-5
  return pieces.every((piece) => isOn(piece.from) && piece.via !== null && isOn(piece.via)) ? { middle, radius } : null
}
