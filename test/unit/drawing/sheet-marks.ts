import type { DrawingNode } from '@/lib/drawing'
import { listTextBoxes, type TextBox } from './sheet-boxes'

export type Segment = readonly [readonly [number, number], readonly [number, number]]

/** Something painted, in the order of painting: lines as segments in mm of the sheet, a text by its box, paper that hides what is beneath. */
export type Mark =
  | { readonly kind: 'text'; readonly box: TextBox }
  | { readonly kind: 'paper'; readonly box: Box }
  | { readonly kind: 'strokes'; readonly segments: readonly Segment[]; readonly isSymbol: boolean }

export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Pieces of an arc: its bulge is met within a thousandth of its radius. */
const ARC_PIECES = 24

/** All marks of a part of a sheet. Reads what the plan, the array and the folded view draw, and fails on what it does not know. */
export function listMarks(nodes: readonly DrawingNode[]): Mark[] {
  const marks: Mark[] = []
  const visit = (node: DrawingNode | string, place: (x: number, y: number) => readonly [number, number]) => {
    if (typeof node === 'string') return
    const { tag, attributes } = node
    const number = (key: string) => Number(attributes[key])
    const segment = (x1: number, y1: number, x2: number, y2: number): Segment => [place(x1, y1), place(x2, y2)]
    switch (tag) {
      case 'text':
        break
      case 'line':
        marks.push({
          kind: 'strokes',
          isSymbol: false,
          segments: [segment(number('x1'), number('y1'), number('x2'), number('y2'))],
        })
        break
      case 'circle': {
        const [cx, cy, r] = [number('cx'), number('cy'), number('r')]
        const at = (turn: number) => [cx + r * Math.cos(turn), cy + r * Math.sin(turn)] as const
        marks.push({
          kind: 'strokes',
          isSymbol: true,
          segments: Array.from({ length: ARC_PIECES }, (_, piece) => {
            const [from, to] = [at((piece * 2 * Math.PI) / ARC_PIECES), at(((piece + 1) * 2 * Math.PI) / ARC_PIECES)]
            return segment(...from, ...to)
          }),
        })
        break
      }
      case 'rect': {
        const [x, y, width, height] = [number('x'), number('y'), number('width'), number('height')]
        const [a, b] = [place(x, y), place(x + width, y + height)]
        if (attributes.stroke === undefined || attributes.stroke === 'none') {
          marks.push({ kind: 'paper', box: { left: a[0], top: a[1], right: b[0], bottom: b[1] } })
        } else {
          marks.push({
            kind: 'strokes',
            isSymbol: false,
            segments: [
              segment(x, y, x + width, y),
              segment(x + width, y, x + width, y + height),
              segment(x + width, y + height, x, y + height),
              segment(x, y + height, x, y),
            ],
          })
        }
        break
      }
      case 'path':
        marks.push({
          kind: 'strokes',
          isSymbol: false,
          segments: readPath(String(attributes.d)).map(([from, to]) => segment(...from, ...to)),
        })
        break
      case 'polygon':
      case 'polyline': {
        const numbers = (String(attributes.points).match(/-?\d*\.?\d+/g) ?? []).map(Number)
        const points = Array.from({ length: numbers.length / 2 }, (_, at): [number, number] => [
          numbers[2 * at] ?? 0,
          numbers[2 * at + 1] ?? 0,
        ])
        marks.push({
          kind: 'strokes',
          isSymbol: false,
          segments: points.slice(1).map((to, at) => segment(...(points[at] as [number, number]), ...to)),
        })
        break
      }
      case 'g':
        break
      default:
        throw new Error(`the test does not read a <${tag}>`)
    }
    if (tag === 'text') {
      const [origin, unit] = [place(0, 0), place(1, 0)]
      const scale = unit[0] - origin[0]
      const wrapped = {
        ...node,
        attributes: {
          ...attributes,
          x: origin[0] + number('x') * scale,
          y: origin[1] + number('y') * scale,
          'font-size': number('font-size') * scale,
        },
      }
      for (const box of listTextBoxes({ nodes: [wrapped] })) marks.push({ kind: 'text', box })
      return
    }
    const found = /^translate\((\S+) (\S+)\) scale\((\S+)\)$/.exec(String(attributes.transform ?? ''))
    if (attributes.transform !== undefined && found === null) {
      throw new Error(`the test does not read the transform "${attributes.transform}"`)
    }
    const [dx, dy, scale] = found === null ? [0, 0, 1] : found.slice(1).map(Number)
    const inner = (x: number, y: number) => place((dx ?? 0) + x * (scale ?? 1), (dy ?? 0) + y * (scale ?? 1))
    for (const child of node.children) visit(child, inner)
  }
  for (const node of nodes) visit(node, (x, y) => [x, y])
  return marks
}

/** Segments of a path of M, L, A (at most half a circle), h, l and Z. */
function readPath(d: string): Segment[] {
  const segments: Segment[] = []
  let at: readonly [number, number] = [0, 0]
  let start = at
  for (const [, letter = '', rest = ''] of d.matchAll(/([MLAZhlvHV])([^MLAZhlvHV]*)/g)) {
    const numbers = (rest.match(/-?\d*\.?\d+(?:e-?\d+)?/g) ?? []).map(Number)
    const [a = 0, b = 0] = numbers
    const go = (to: readonly [number, number]) => {
      segments.push([at, to])
      at = to
    }
    switch (letter) {
      case 'M':
        at = [a, b]
        start = at
        break
      case 'L':
        go([a, b])
        break
      case 'l':
        go([at[0] + a, at[1] + b])
        break
      case 'h':
        go([at[0] + a, at[1]])
        break
      case 'Z':
        go(start)
        break
      case 'A': {
        const [radius = 0, , , , sweep = 0, x = 0, y = 0] = numbers
        for (const point of pointsOfArc(at, [x, y], radius, sweep === 1)) go(point)
        break
      }
      default:
        throw new Error(`the test does not read the path command ${letter}`)
    }
  }
  return segments
}

function pointsOfArc(
  from: readonly [number, number],
  to: readonly [number, number],
  radius: number,
  isSweep: boolean,
): (readonly [number, number])[] {
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const half = Math.hypot(to[0] - from[0], to[1] - from[1]) / 2
  if (half === 0) return [to]
  const r = Math.max(radius, half)
  const off = Math.sqrt(Math.max(0, r * r - half * half)) * (isSweep ? 1 : -1)
  const [ux, uy] = [(to[0] - from[0]) / (2 * half), (to[1] - from[1]) / (2 * half)]
  const centre = [mx - uy * off, my + ux * off] as const
  const first = Math.atan2(from[1] - centre[1], from[0] - centre[0])
  let turn = Math.atan2(to[1] - centre[1], to[0] - centre[0]) - first
  if (isSweep && turn < 0) turn += 2 * Math.PI
  if (!isSweep && turn > 0) turn -= 2 * Math.PI
  return Array.from({ length: ARC_PIECES }, (_, piece) => {
    const rad = first + (turn * (piece + 1)) / ARC_PIECES
    return [centre[0] + r * Math.cos(rad), centre[1] + r * Math.sin(rad)] as const
  })
}

export function boxOfMark(mark: Mark): Box {
  if (mark.kind !== 'strokes') return mark.box
  const points = mark.segments.flat()
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) }
}

/** Does a segment pass through the inside of a box? Clipped against its four sides in turn (Liang and Barsky 1984). */
export function crosses([[x1, y1], [x2, y2]]: Segment, box: Box): boolean {
  let [low, high] = [0, 1]
  for (const [p, q] of [
    [x1 - x2, x1 - box.left],
    [x2 - x1, box.right - x1],
    [y1 - y2, y1 - box.top],
    [y2 - y1, box.bottom - y1],
  ] as const) {
    if (p === 0) {
      if (q <= 0) return false
    } else if (p < 0) low = Math.max(low, q / p)
    else high = Math.min(high, q / p)
  }
  return low < high
}

/** Texts are pulled in by this before lines are held against them: line widths and rounding. */
const AIR_MM = 0.12

/** Texts that a line runs over, or through without paper between; and symbols that the paper of a text hides. */
export function findOverprints(nodes: readonly DrawingNode[]): string[] {
  const marks = listMarks(nodes)
  const found: string[] = []
  marks.forEach((mark, index) => {
    if (mark.kind !== 'text') return
    const { text } = mark.box
    const inner = {
      left: mark.box.left + AIR_MM,
      right: mark.box.right - AIR_MM,
      top: mark.box.top + AIR_MM,
      bottom: mark.box.bottom - AIR_MM,
    }
    let paperAt = -1
    marks.slice(0, index).forEach((other, at) => {
      if (other.kind === 'paper' && holds(other.box, inner)) paperAt = at
    })
    marks.forEach((other, at) => {
      if (other.kind === 'paper' && at > index && meets(other.box, inner)) found.push(`paper over "${text}"`)
      if (other.kind !== 'strokes' || at < paperAt) return
      if (other.segments.some((segment) => crosses(segment, inner))) found.push(`a line through "${text}"`)
    })
    const paper = marks[paperAt]
    if (paper?.kind !== 'paper') return
    marks.slice(0, paperAt).forEach((other) => {
      if (other.kind !== 'strokes' || !other.isSymbol) return
      const box = boxOfMark(other)
      const within = {
        left: box.left + AIR_MM,
        right: box.right - AIR_MM,
        top: box.top + AIR_MM,
        bottom: box.bottom - AIR_MM,
      }
      if (meets(within, paper.box)) found.push(`a symbol beneath "${text}"`)
    })
  })
  return found
}

const holds = (outer: Box, inner: Box) =>
  outer.left <= inner.left && outer.right >= inner.right && outer.top <= inner.top && outer.bottom >= inner.bottom

const meets = (one: Box, other: Box) =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom
