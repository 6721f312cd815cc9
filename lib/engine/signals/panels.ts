import { getHeightUm, type LineConductor, type LineSection, listInterfaces } from './section'

/** A straight piece of a surface on which charge is a sum of Legendre polynomials. Lengths in units of the mesh's scale. */
export interface Panel {
  readonly x: number
  readonly y: number
  /** From the middle to the end. */
  readonly halfX: number
  readonly halfY: number
  readonly halfLength: number
  /** Number of polynomials, and of points at which its equation holds. */
  readonly order: number
  /** Conductor that it belongs to; -1 is a face between dielectrics. */
  readonly conductor: number
  /** Permittivity on either side. A thick conductor has one side outside: both are the same. */
  readonly below: number
  readonly above: number
}

export interface MeshFineness {
  /** Size of the last piece at a corner, as a share of the conductor's smallest face. */
  readonly cornerShare: number
  /** A piece is at most so many times as long as it lies from the nearest corner. */
  readonly growth: number
  /** The same close to corners, where little charge lies. */
  readonly cornerGrowth: number
  /** Polynomials of a piece away from corners. */
  readonly order: number
  /** A section that takes more unknowns is refused, since the work grows with the cube of their number; absent where a person waits for a reference. */
  readonly mostUnknowns?: number
}

type Point = readonly [x: number, y: number]

interface Corner {
  readonly at: Point
  /** Length of the last piece that ends there. */
  readonly smallest: number
}

/** How far faces between dielectrics are followed, in heights of the section: over a plane their charge falls with the square of the distance. */
const REACH_OVER_PLANE = 150
const REACH_BETWEEN_PLANES = 6
const REACH_WITHOUT_PLANE = 600

/** Charge of a face whose permittivities differ by less than this share of their sum is so weak that its error counts as much less. */
const WEAK_CONTRAST = 0.06

/** Charge on faces between dielectrics is weaker than on conductors, and bound to theirs: it needs fewer polynomials. */
function lessOrders({ below, above }: Pick<Panel, 'below' | 'above'>): number {
  return Math.abs(above - below) < WEAK_CONTRAST * (above + below) ? 2 : 1
}

/** Mesh of a section; without dielectrics where only the conductors count. */
export function makePanels(
  section: LineSection,
  fineness: MeshFineness,
  withDielectrics: boolean,
  scaleUm: number,
): Panel[] {
  const panels: Panel[] = []
  const heightUm = getHeightUm(section)
  const narrowestUm = Math.min(...section.conductors.map(({ bottomWidthUm }) => bottomWidthUm))
  const corners = section.conductors.flatMap((conductor): Corner[] => {
    const { bottomWidthUm, topWidthUm, thicknessUm } = conductor
    const faceUm =
      thicknessUm > 0
        ? Math.min(bottomWidthUm, topWidthUm, thicknessUm)
        : Math.min(bottomWidthUm, Math.max(heightUm, narrowestUm))
    const smallest = (fineness.cornerShare * faceUm) / scaleUm
    return listCorners(conductor, scaleUm).map((at) => ({ at, smallest }))
  })
  const bothPlanes = section.hasPlaneBelow && section.hasPlaneAbove
  const longest = bothPlanes ? heightUm / scaleUm : Number.POSITIVE_INFINITY
  const add = (from: Point, to: Point, surface: Pick<Panel, 'conductor' | 'below' | 'above'>) =>
    divide(from, to, { corners, longest, fineness }, (a, b, most) => {
      const order = surface.conductor < 0 ? Math.max(2, Math.min(most, fineness.order - lessOrders(surface))) : most
      const halfX = (b[0] - a[0]) / 2
      const halfY = (b[1] - a[1]) / 2
      panels.push({
        x: (a[0] + b[0]) / 2,
        y: (a[1] + b[1]) / 2,
        halfX,
        halfY,
        halfLength: Math.hypot(halfX, halfY),
        order,
        ...surface,
      })
    })
  section.conductors.forEach((conductor, index) => {
    for (const [from, to, below, above] of listFaces(conductor, section, withDielectrics, scaleUm))
      add(from, to, { conductor: index, below, above })
  })
  if (withDielectrics) {
    for (const { from, to, y, below, above } of listOpenInterfaces(section, scaleUm))
      add([from, y], [to, y], { conductor: -1, below, above })
  }
  return panels
}

function listCorners(
  { centreUm, bottomUm, bottomWidthUm, topWidthUm, thicknessUm }: LineConductor,
  scale: number,
): Point[] {
  const y = bottomUm / scale
  const ends: Point[] = [
    [(centreUm - bottomWidthUm / 2) / scale, y],
    [(centreUm + bottomWidthUm / 2) / scale, y],
  ]
  if (thicknessUm === 0) return ends
  const top = (bottomUm + thicknessUm) / scale
  return [...ends, [(centreUm + topWidthUm / 2) / scale, top], [(centreUm - topWidthUm / 2) / scale, top]]
}

function listFaces(
  conductor: LineConductor,
  section: LineSection,
  withDielectrics: boolean,
  scale: number,
): [Point, Point, number, number][] {
  const at = (yUm: number, side: 'below' | 'above') => (withDielectrics ? permittivityAt(section, yUm, side) : 1)
  const topUm = conductor.bottomUm + conductor.thicknessUm
  const corners = listCorners(conductor, scale)
  const [a, b, c, d] = corners
  if (a === undefined || b === undefined) return []
  const under = at(conductor.bottomUm, 'below')
  if (c === undefined || d === undefined) return [[a, b, under, at(conductor.bottomUm, 'above')]]
  const beside = at((conductor.bottomUm + topUm) / 2, 'below')
  const over = at(topUm, 'above')
  return [
    [a, b, under, under],
    [b, c, beside, beside],
    [c, d, over, over],
    [d, a, beside, beside],
  ]
}

/** Permittivity just below or just above a height. */
function permittivityAt(section: LineSection, yUm: number, side: 'below' | 'above'): number {
  const slack = 1e-9 * Math.max(getHeightUm(section), 1)
  let bottom = 0
  for (const { thicknessUm, relativePermittivity } of section.slabs) {
    const top = bottom + thicknessUm
    const isInside =
      side === 'below' ? yUm > bottom + slack && yUm <= top + slack : yUm >= bottom - slack && yUm < top - slack
    if (isInside) return relativePermittivity
    bottom = top
  }
  return 1
}

/** Faces between dielectrics, less what conductors cover. */
function listOpenInterfaces(section: LineSection, scale: number) {
  const ends = section.conductors.flatMap(({ centreUm, bottomWidthUm, topWidthUm }) => {
    const half = Math.max(bottomWidthUm, topWidthUm) / 2
    return [centreUm - half, centreUm + half]
  })
  const left = Math.min(...ends)
  const right = Math.max(...ends)
  const heightUm = getHeightUm(section)
  const slack = 1e-9 * Math.max(heightUm, 1)
  const hasPlane = section.hasPlaneBelow || section.hasPlaneAbove
  const reach = !hasPlane
    ? REACH_WITHOUT_PLANE * Math.max(heightUm, right - left)
    : section.hasPlaneBelow && section.hasPlaneAbove
      ? REACH_BETWEEN_PLANES * heightUm
      : REACH_OVER_PLANE * heightUm
  return listInterfaces(section).flatMap(({ atUm, below, above }) => {
    const covered = section.conductors
      .flatMap(({ centreUm, bottomUm, thicknessUm, bottomWidthUm, topWidthUm }) => {
        const width =
          Math.abs(bottomUm - atUm) <= slack
            ? bottomWidthUm
            : Math.abs(bottomUm + thicknessUm - atUm) <= slack
              ? topWidthUm
              : null
        return width === null ? [] : [[centreUm - width / 2, centreUm + width / 2] as const]
      })
      .sort(([a], [b]) => a - b)
    const pieces: { from: number; to: number; y: number; below: number; above: number }[] = []
    let from = left - reach
    for (const [start, end] of [...covered, [right + reach, 0] as const]) {
      if (start > from) pieces.push({ from: from / scale, to: start / scale, y: atUm / scale, below, above })
      from = end
    }
    return pieces
  })
}

interface Division {
  readonly corners: readonly Corner[]
  readonly longest: number
  readonly fineness: MeshFineness
}

/**
 * Pieces that get shorter towards corners in fixed proportion, with fewer polynomials there: what is left of the singular charge in the
 * last piece then counts as little as the polynomials of the others leave out (hp grading, common practice of the method).
 */
function divide(from: Point, to: Point, division: Division, emit: (a: Point, b: Point, order: number) => void): void {
  const { corners, longest, fineness } = division
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const touches = (point: Point) => corners.find(({ at }) => distance(at, point) <= 1e-9 * Math.max(length, 1e-3))
  const cornerAtFrom = touches(from)
  const cornerAtTo = touches(to)
  const atFrom = cornerAtFrom !== undefined
  const atTo = cornerAtTo !== undefined
  const between = (share: number): Point => [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
  const cut = (share: number) => {
    const middle = between(share)
    divide(from, middle, division, emit)
    divide(middle, to, division, emit)
  }
  if (length > longest || (atFrom && atTo)) {
    cut(0.5)
    return
  }
  const touched = cornerAtFrom ?? cornerAtTo
  if (touched !== undefined) {
    const { smallest } = touched
    if (length <= smallest * 1.25) {
      emit(from, to, Math.min(2, fineness.order))
      return
    }
    // The same distances from the corner on each face that meets there: charge on faces of different dielectrics is then resolved alike.
    const ratio = 1 + fineness.cornerGrowth
    const steps = Math.max(0, Math.ceil(Math.log(length / (smallest * 1.25)) / Math.log(ratio)) - 1)
    const share = (smallest * ratio ** steps) / length
    cut(atFrom ? share : 1 - share)
    return
  }
  let nearest = Number.POSITIVE_INFINITY
  let smallest = Number.POSITIVE_INFINITY
  for (const corner of corners) {
    const away = distanceToSegment(corner.at, from, to)
    if (away >= nearest) continue
    nearest = away
    smallest = corner.smallest
  }
  const growth = nearest < 4 * smallest * (1 + fineness.cornerGrowth) ? fineness.cornerGrowth : fineness.growth
  if (length > growth * nearest * 1.1) {
    // Cut where the nearer end stays in proportion, so that long faces need few pieces.
    const fromDistance = Math.min(...corners.map(({ at }) => distance(at, from)))
    const toDistance = Math.min(...corners.map(({ at }) => distance(at, to)))
    const near = Math.min(fromDistance, toDistance)
    const step = (growth * Math.max(near, nearest)) / length
    if (step < 0.5 && near <= nearest * 1.0001) cut(fromDistance <= toDistance ? step : 1 - step)
    else cut(0.5)
    return
  }
  const level = Math.round(Math.log(nearest / smallest) / Math.log(1 + fineness.cornerGrowth))
  emit(from, to, Math.min(fineness.order, 3 + level))
}

const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

function distanceToSegment(point: Point, from: Point, to: Point): number {
  const alongX = to[0] - from[0]
  const alongY = to[1] - from[1]
  const share = ((point[0] - from[0]) * alongX + (point[1] - from[1]) * alongY) / (alongX * alongX + alongY * alongY)
  const at = Math.min(1, Math.max(0, share))
  return Math.hypot(point[0] - from[0] - at * alongX, point[1] - from[1] - at * alongY)
}
