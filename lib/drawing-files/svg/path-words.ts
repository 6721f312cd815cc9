import { type Curve, type EllipseCurve, makeLine, type Point } from '../curves'

/** One stretch of a path, from where the pen was put down. */
export interface SubPath {
  readonly curves: readonly Curve[]
}

export type ReadPath =
  | { readonly ok: true; readonly paths: readonly SubPath[] }
  | { readonly ok: false; readonly reason: string }

const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y
const FLAG = /[01]/y
const GAP = /[\s,]*/y
const NUMBERS_PER: Readonly<Record<string, number>> = { M: 2, L: 2, H: 1, V: 1, C: 6, S: 4, Q: 4, T: 2, A: 7, Z: 0 }
/** More words than a path of a plan can have. */
const MAX_CURVES = 100_000

/** The words of a path's `d` (SVG 2, chapter 9; from memory): up to the first error everything is drawn, which is what the standard asks for. */
export function readPathData(text: string): ReadPath {
  const words = splitWords(text)
  if (typeof words === 'string') return { ok: false, reason: words }
  const paths: { curves: Curve[] }[] = []
  const pen = new Pen()
  let open: { curves: Curve[] } | null = null
  let count = 0
  for (const { letter, numbers } of words) {
    const upper = letter.toUpperCase()
    if (upper === 'M' || open === null) {
      open = { curves: [] }
      paths.push(open)
    }
    const curve = pen.draw(letter, numbers)
    if (curve === null) continue
    open.curves.push(curve)
    count += 1
    if (count > MAX_CURVES) return { ok: false, reason: `has more than ${MAX_CURVES} pieces` }
    if (upper === 'Z') open = null
  }
  return { ok: true, paths: paths.filter(({ curves }) => curves.length > 0) }
}

interface Word {
  readonly letter: string
  readonly numbers: readonly number[]
}

/** One character at a time, so that no text takes longer than it is long. The flags of an arc may stand without anything between: `a1 1 0 0110 5`. */
function splitWords(text: string): Word[] | string {
  const words: Word[] = []
  let at = skipGaps(text, 0)
  let letter: string | null = null
  let isFresh = false
  while (at < text.length) {
    const next = text[at] ?? ''
    if (LETTER.test(next)) {
      if (isFresh) return `"${letter}" has no numbers`
      if (words.length === 0 && next.toUpperCase() !== 'M') return 'does not begin with M'
      letter = next
      at = skipGaps(text, at + 1)
      isFresh = letter.toUpperCase() !== 'Z'
      if (!isFresh) words.push({ letter, numbers: [] })
      continue
    }
    if (letter === null || letter.toUpperCase() === 'Z') return `has "${shorten(text, at)}" without a command`
    const read = readNumbers(text, at, letter)
    if (typeof read === 'string') return read
    words.push({ letter, numbers: read.numbers })
    at = read.end
    isFresh = false
    // Further pairs after a move are lines.
    if (letter === 'M') letter = 'L'
    else if (letter === 'm') letter = 'l'
  }
  return isFresh ? `"${letter}" has no numbers` : words
}

const LETTER = /[MLHVCSQTAZmlhvcsqtaz]/
const shorten = (text: string, at: number) => text.slice(at, at + 20).trim()

function readNumbers(text: string, start: number, letter: string): { numbers: number[]; end: number } | string {
  const upper = letter.toUpperCase()
  const numbers: number[] = []
  let at = start
  while (numbers.length < (NUMBERS_PER[upper] ?? 0)) {
    const isFlag = upper === 'A' && (numbers.length === 3 || numbers.length === 4)
    const pattern = isFlag ? FLAG : NUMBER
    pattern.lastIndex = at
    const match = pattern.exec(text)
    if (match === null) return `"${letter}" is not followed by the numbers that it needs, at "${shorten(text, at)}"`
    const number = Number(match[0])
    if (!Number.isFinite(number)) return 'has a number that is too large'
    numbers.push(number)
    at = skipGaps(text, pattern.lastIndex)
  }
  return { numbers, end: at }
}

function skipGaps(text: string, start: number): number {
  GAP.lastIndex = start
  GAP.test(text)
  return GAP.lastIndex
}

class Pen {
  private at: Point = [0, 0]
  private start: Point = [0, 0]
  /** Control point that a smooth curve mirrors, and of which kind. */
  private control: Point | null = null
  private kind: 'C' | 'Q' | null = null

  draw(letter: string, n: readonly number[]): Curve | null {
    const upper = letter.toUpperCase()
    const isRelative = letter !== upper
    const [x, y] = this.at
    const point = (at: number): Point =>
      isRelative ? [x + (n[at] ?? 0), y + (n[at + 1] ?? 0)] : [n[at] ?? 0, n[at + 1] ?? 0]
    const line = (to: Point): Curve => this.moveTo(to, makeLine(this.at, to))
    switch (upper) {
      case 'M':
        this.at = point(0)
        this.start = this.at
        this.control = null
        return null
      case 'L':
        return line(point(0))
      case 'H':
        return line([(isRelative ? x : 0) + (n[0] ?? 0), y])
      case 'V':
        return line([x, (isRelative ? y : 0) + (n[0] ?? 0)])
      case 'Z':
        return line(this.start)
      case 'C':
        return this.bezier([point(0), point(2)], point(4), 'C')
      case 'S':
        return this.bezier([this.mirrored('C'), point(0)], point(2), 'C')
      case 'Q':
        return this.bezier([point(0)], point(2), 'Q')
      case 'T':
        return this.bezier([this.mirrored('Q')], point(0), 'Q')
      default:
        return this.moveTo(point(5), arcTo(this.at, point(5), n))
    }
  }

  private moveTo(to: Point, curve: Curve): Curve {
    this.at = to
    this.control = null
    this.kind = null
    return curve
  }

  private mirrored(kind: 'C' | 'Q'): Point {
    if (this.control === null || this.kind !== kind) return this.at
    return [2 * this.at[0] - this.control[0], 2 * this.at[1] - this.control[1]]
  }

  private bezier(controls: readonly Point[], to: Point, kind: 'C' | 'Q'): Curve {
    const points = [this.at, ...controls, to]
    const degree = points.length - 1
    const knots = [...Array<number>(degree + 1).fill(0), ...Array<number>(degree + 1).fill(1)]
    this.moveTo(to, makeLine(to, to))
    this.control = controls.at(-1) ?? null
    this.kind = kind
    return { kind: 'spline', degree, knots, points, weights: null }
  }
}

/** From ends and radii to middle and angles (SVG 2, appendix B.2.4; from memory). Radii that are too small grow until they reach. */
function arcTo(from: Point, to: Point, n: readonly number[]): Curve {
  const [rx0 = 0, ry0 = 0, turnDeg = 0, large = 0, sweep = 0] = n
  let [rx, ry] = [Math.abs(rx0), Math.abs(ry0)]
  if (rx === 0 || ry === 0 || (from[0] === to[0] && from[1] === to[1])) return makeLine(from, to)
  const turn = (turnDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const [hx, hy] = [(from[0] - to[0]) / 2, (from[1] - to[1]) / 2]
  const [px, py] = [cos * hx + sin * hy, -sin * hx + cos * hy]
  const reach = (px / rx) ** 2 + (py / ry) ** 2
  if (reach > 1) [rx, ry] = [rx * Math.sqrt(reach), ry * Math.sqrt(reach)]
  const share = Math.sqrt(Math.max(0, 1 / Math.max(reach, 1e-300) - 1)) * (large === sweep ? -1 : 1)
  const scale = reach > 1 ? 0 : share
  const [qx, qy] = [(scale * rx * py) / ry, (-scale * ry * px) / rx]
  const middle: Point = [cos * qx - sin * qy + (from[0] + to[0]) / 2, sin * qx + cos * qy + (from[1] + to[1]) / 2]
  const startRad = Math.atan2((py - qy) / ry, (px - qx) / rx)
  const endRad = Math.atan2((-py - qy) / ry, (-px - qx) / rx)
  const turned = (((endRad - startRad) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  const curve: EllipseCurve = {
    kind: 'ellipse',
    middle,
    u: [rx * cos, rx * sin],
    v: [-ry * sin, ry * cos],
    startRad,
    sweepRad: sweep === 1 ? turned : turned - 2 * Math.PI,
    ends: [from, to],
  }
  return curve
}
