import { type Curve, FULL_TURN_RAD, makeLine, type Point } from '../curves'
import { readPathData } from './path-words'

type ShapeCurves =
  | { readonly ok: true; readonly paths: readonly (readonly Curve[])[] }
  | { readonly ok: false; readonly reason: string }

type Attributes = Readonly<Record<string, string>>

/** What the basic shapes draw (SVG 2, chapter 10; from memory). Lengths are in user units, with "px" or none. */
export function curvesOfShape(name: string, attributes: Attributes): ShapeCurves {
  if (name === 'path') {
    const read = readPathData(attributes.d ?? '')
    return read.ok ? { ok: true, paths: read.paths.map(({ curves }) => curves) } : read
  }
  const numbers = new Lengths(attributes)
  const curves = drawShape(name, numbers)
  if (numbers.fault !== null) return { ok: false, reason: numbers.fault }
  return curves === null ? { ok: false, reason: 'has no size' } : { ok: true, paths: [curves] }
}

class Lengths {
  fault: string | null = null
  constructor(private readonly attributes: Attributes) {}

  get(key: string): number {
    const text = this.attributes[key]
    if (text === undefined) return 0
    const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(px)?\s*$/i.exec(text)
    if (match === null) this.fault ??= `has a "${key}" of "${text.slice(0, 20)}", which is not a number of user units`
    return Number(match?.[1] ?? 0)
  }

  has = (key: string): boolean => this.attributes[key] !== undefined

  points(): Point[] {
    const parts = (this.attributes.points ?? '').split(/[\s,]+/).filter((part) => part !== '')
    const numbers = parts.map(Number)
    if (!numbers.every(Number.isFinite) || numbers.length % 2 !== 0)
      this.fault ??= 'has points that are no pairs of numbers'
    return Array.from(
      { length: Math.floor(numbers.length / 2) },
      (_, at): Point => [numbers[2 * at] ?? 0, numbers[2 * at + 1] ?? 0],
    )
  }
}

function drawShape(name: string, n: Lengths): Curve[] | null {
  switch (name) {
    case 'line':
      return [makeLine([n.get('x1'), n.get('y1')], [n.get('x2'), n.get('y2')])]
    case 'circle':
      return oval([n.get('cx'), n.get('cy')], n.get('r'), n.get('r'))
    case 'ellipse':
      return oval([n.get('cx'), n.get('cy')], n.get('rx'), n.get('ry'))
    case 'rect':
      return box(n)
    default:
      return polyline(n.points(), name === 'polygon')
  }
}

function oval(middle: Point, rx: number, ry: number): Curve[] | null {
  if (!(rx > 0 && ry > 0)) return null
  return [{ kind: 'ellipse', middle, u: [rx, 0], v: [0, ry], startRad: 0, sweepRad: FULL_TURN_RAD, ends: null }]
}

function polyline(points: readonly Point[], isClosed: boolean): Curve[] | null {
  if (points.length < 2) return null
  return points.flatMap((point, at) => {
    const next = points[at + 1] ?? (isClosed ? points[0] : undefined)
    return next === undefined ? [] : [makeLine(point, next)]
  })
}

/** One radius that is given holds for both; neither is more than half a side. */
function box(n: Lengths): Curve[] | null {
  const [x, y, w, h] = [n.get('x'), n.get('y'), n.get('width'), n.get('height')]
  if (!(w > 0 && h > 0)) return null
  const rx = Math.min(w / 2, Math.max(0, n.has('rx') ? n.get('rx') : n.get('ry')))
  const ry = Math.min(h / 2, Math.max(0, n.has('ry') ? n.get('ry') : n.get('rx')))
  if (rx === 0 || ry === 0) {
    return polyline(
      [
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
      ],
      true,
    )
  }
  const corner = (cx: number, cy: number, startDeg: number, from: Point, to: Point): Curve => ({
    kind: 'ellipse',
    middle: [cx, cy],
    u: [rx, 0],
    v: [0, ry],
    startRad: (startDeg * Math.PI) / 180,
    sweepRad: Math.PI / 2,
    ends: [from, to],
  })
  return [
    makeLine([x + rx, y], [x + w - rx, y]),
    corner(x + w - rx, y + ry, -90, [x + w - rx, y], [x + w, y + ry]),
    makeLine([x + w, y + ry], [x + w, y + h - ry]),
    corner(x + w - rx, y + h - ry, 0, [x + w, y + h - ry], [x + w - rx, y + h]),
    makeLine([x + w - rx, y + h], [x + rx, y + h]),
    corner(x + rx, y + h - ry, 90, [x + rx, y + h], [x, y + h - ry]),
    makeLine([x, y + h - ry], [x, y + ry]),
    corner(x + rx, y + ry, 180, [x, y + ry], [x + rx, y]),
  ]
}
