/**
 * Finds parts that overlap, come too near, or leave the panel. Written from the definitions, with nothing of the nesting
 * used: edges against edges, corners against insides, distances between segments. Plain doubles on micrometres.
 */
export interface CheckedPlacement {
  readonly xUm: number
  readonly yUm: number
  readonly rotationDeg: number
}

type Vertices = readonly (readonly [number, number])[]

/** Micrometres by which doubles may err in a distance. */
const SLACK_UM = 1e-3

export interface CheckedPanel {
  readonly left: number
  readonly bottom: number
  readonly right: number
  readonly top: number
  readonly spacingUm: number
}

/** Sentences about what is wrong; empty where all is well. */
export function findNestingFaults(
  outline: Vertices,
  placements: readonly CheckedPlacement[],
  panel: CheckedPanel,
): string[] {
  const shapes = placements.map((placement) => place(outline, placement))
  const faults: string[] = []
  shapes.forEach((shape, one) => {
    for (const [x, y] of shape) {
      if (x < panel.left || x > panel.right || y < panel.bottom || y > panel.top) {
        faults.push(`part ${one} leaves the usable area at ${x}, ${y}`)
        break
      }
    }
    for (let other = one + 1; other < shapes.length; other += 1) {
      const second = shapes[other] ?? []
      if (areFarApart(shape, second, panel.spacingUm)) continue
      if (doOverlap(shape, second)) faults.push(`parts ${one} and ${other} overlap`)
      else {
        const distanceUm = getDistance(shape, second)
        if (distanceUm < panel.spacingUm - SLACK_UM) {
          faults.push(`parts ${one} and ${other} are ${distanceUm} um apart`)
        }
      }
    }
  })
  return faults
}

function place(outline: Vertices, { xUm, yUm, rotationDeg }: CheckedPlacement): Vertices {
  const angle = (rotationDeg * Math.PI) / 180
  const [cos, sin] = [Math.round(Math.cos(angle)), Math.round(Math.sin(angle))]
  const turned = outline.map(([x, y]) => [x * cos - y * sin, x * sin + y * cos] as const)
  const minX = Math.min(...turned.map(([x]) => x))
  const minY = Math.min(...turned.map(([, y]) => y))
  return turned.map(([x, y]) => [x - minX + xUm, y - minY + yUm] as const)
}

function areFarApart(a: Vertices, b: Vertices, spacingUm: number): boolean {
  for (const axis of [0, 1] as const) {
    const highA = Math.max(...a.map((point) => point[axis]))
    const lowA = Math.min(...a.map((point) => point[axis]))
    const highB = Math.max(...b.map((point) => point[axis]))
    const lowB = Math.min(...b.map((point) => point[axis]))
    if (lowB - highA >= spacingUm || lowA - highB >= spacingUm) return true
  }
  return false
}

function* edgesOf(shape: Vertices) {
  for (let index = 0; index < shape.length; index += 1) {
    const from = shape[index]
    const to = shape[(index + 1) % shape.length]
    if (from !== undefined && to !== undefined) yield [from, to] as const
  }
}

/** Do the insides share a point? Edges that properly cross, or a corner, an edge's middle or the whole shape inside. */
function doOverlap(a: Vertices, b: Vertices): boolean {
  for (const [p, q] of edgesOf(a)) {
    for (const [r, s] of edgesOf(b)) {
      const d1 = side(p, q, r)
      const d2 = side(p, q, s)
      const d3 = side(r, s, p)
      const d4 = side(r, s, q)
      if (d1 * d2 < 0 && d3 * d4 < 0) return true
    }
  }
  return hasPointWithin(a, b) || hasPointWithin(b, a)
}

function hasPointWithin(a: Vertices, b: Vertices): boolean {
  for (const [p, q] of edgesOf(a)) {
    if (isWithin(p, b) || isWithin([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2], b)) return true
  }
  return false
}

function side(a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/** Inside and not on the rim, by counting the edges to the right. */
function isWithin(point: readonly [number, number], shape: Vertices): boolean {
  let inside = false
  for (const [p, q] of edgesOf(shape)) {
    if (getPointDistance(point, p, q) < SLACK_UM) return false
    if (p[1] > point[1] !== q[1] > point[1]) {
      const x = p[0] + ((point[1] - p[1]) / (q[1] - p[1])) * (q[0] - p[0])
      if (x > point[0]) inside = !inside
    }
  }
  return inside
}

function getDistance(a: Vertices, b: Vertices): number {
  let least = Infinity
  for (const [p, q] of edgesOf(a)) {
    for (const [r, s] of edgesOf(b)) {
      least = Math.min(
        least,
        getPointDistance(p, r, s),
        getPointDistance(q, r, s),
        getPointDistance(r, p, q),
        getPointDistance(s, p, q),
      )
    }
  }
  return least
}

function getPointDistance(
  point: readonly [number, number],
  from: readonly [number, number],
  to: readonly [number, number],
): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const square = dx * dx + dy * dy
  const along = square === 0 ? 0 : ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / square
  const clipped = Math.min(1, Math.max(0, along))
  return Math.hypot(point[0] - from[0] - clipped * dx, point[1] - from[1] - clipped * dy)
}
