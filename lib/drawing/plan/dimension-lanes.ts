import type { Plan } from '@/lib/plan'
import { measureText } from '../text-metrics'
import type { PlanFrame, Point } from './frame'

type Dimension = Plan['dimensions'][number]

/** A dimension line beside the part: short ones lie nearer to it, as ISO 129-1 has it (from memory). */
export interface LaidDimension {
  readonly id: string
  readonly text: string
  readonly lane: number
  /** Ends along the line, and the far ends of what leads to them. */
  readonly from: number
  readonly to: number
  readonly startsAt: readonly [Point, Point]
  /** Left end of the text, along the line's own axis for those along x. */
  readonly textAt: number
  /** Too short for arrows within: they point at it from outside. */
  readonly isShort: boolean
}

export interface Lanes {
  readonly alongX: readonly LaidDimension[]
  readonly alongY: readonly LaidDimension[]
  readonly laneCountX: number
  /** Width of each lane on the right. */
  readonly laneWidths: readonly number[]
  /** Dimensions that the table alone gives: beyond the lanes that a view has room for, or at a slant. */
  readonly left: readonly string[]
}

const MOST_LANES = 6
const GAP_EM = 0.8
/** Two arrows and a piece of line between them. */
const SHORT_EM = 2
/** What an arrow from outside takes beside its dimension. */
export const ARROW_EM = 0.8
/** Share of a view's width that the lanes on the right may take: with more, no part would be left beside them. */
const MOST_BESIDE = 0.4

/** Width that lanes on the right take, by the widest text of each. */
export const widthOfLanes = (laneWidths: readonly number[], fontSize: number): number =>
  laneWidths.reduce((sum, each) => sum + each + fontSize, fontSize)

/**
 * Dimension lines beside the part. The longest in each direction, which is the overall size or more, always has its lane; of the others
 * those that find none are left to the table.
 */
export function layDimensions(
  dimensions: readonly Dimension[],
  textOf: (dimension: Dimension) => string,
  frame: PlanFrame,
  room: { readonly left: number; readonly right: number },
  fontSize: number,
): Lanes {
  const left: string[] = []
  const axis = (direction: Dimension['direction']) =>
    dimensions
      .filter((dimension) => dimension.direction === direction)
      .map((dimension) => ({
        dimension,
        ends: [frame.toPicture(dimension.fromMm), frame.toPicture(dimension.toMm)] as const,
      }))
  const at = (direction: 'along-x' | 'along-y') => (direction === 'along-x' ? 0 : 1)
  const lay = (direction: 'along-x' | 'along-y') => {
    const key = at(direction)
    const isAlongX = direction === 'along-x'
    const lanes: { readonly taken: (readonly [number, number])[]; width: number }[] = []
    const span = ({ ends: [a, b] }: { readonly ends: readonly [Point, Point] }) => Math.abs(a[key] - b[key])
    const sorted = axis(direction).sort(
      (one, other) => span(one) - span(other) || one.dimension.id.localeCompare(other.dimension.id),
    )
    const last = sorted.at(-1)
    const mostBeside = MOST_BESIDE * (room.right - room.left)
    const reserved = last === undefined || isAlongX ? 0 : measureText(textOf(last.dimension), fontSize) + fontSize
    const hasRoom = (lane: number, width: number) => {
      if (lane >= MOST_LANES - 1) return false
      if (isAlongX) return true
      const widths = lanes.map((own, index) => (index === lane ? Math.max(own.width, width) : own.width))
      if (lane === lanes.length) widths.push(width)
      return widthOfLanes(widths, fontSize) + reserved <= mostBeside
    }
    return sorted.flatMap((each): LaidDimension[] => {
      const { dimension, ends } = each
      const text = textOf(dimension)
      const textWidth = measureText(text, fontSize)
      const [from, to] = [Math.min(ends[0][key], ends[1][key]), Math.max(ends[0][key], ends[1][key])]
      const isShort = to - from < SHORT_EM * fontSize
      const past = isShort ? 2 * ARROW_EM * fontSize : 0
      const width = isAlongX ? textWidth : fontSize * 1.2
      const middle = (from + to) / 2
      const textAt = isAlongX
        ? Math.max(room.left, Math.min(room.right - width, middle - width / 2))
        : middle + 0.26 * fontSize
      const taken = [
        Math.min(from - past, isAlongX ? textAt : middle - width / 2) - GAP_EM * fontSize,
        Math.max(to + past, isAlongX ? textAt + width : middle + width / 2) + GAP_EM * fontSize,
      ] as const
      let lane = lanes.findIndex((own) => own.taken.every(([low, high]) => taken[1] <= low || taken[0] >= high))
      if (lane === -1) lane = lanes.length
      if (each === last) lane = Math.max(lane, lanes.length)
      else if (!hasRoom(lane, textWidth)) {
        left.push(dimension.id)
        return []
      }
      const own = lanes[lane] ?? { taken: [], width: 0 }
      if (lane === lanes.length) lanes.push(own)
      own.taken.push(taken)
      own.width = Math.max(own.width, textWidth)
      return [{ id: dimension.id, text, lane, from, to, startsAt: ends, textAt, isShort }]
    })
  }
  const [alongX, alongY] = [lay('along-x'), lay('along-y')]
  left.push(...axis('straight').map(({ dimension }) => dimension.id))
  const count = (laid: readonly LaidDimension[]) => Math.max(0, ...laid.map(({ lane }) => lane + 1))
  return {
    alongX,
    alongY,
    laneCountX: count(alongX),
    laneWidths: Array.from({ length: count(alongY) }, (_, lane) =>
      Math.max(...alongY.filter((each) => each.lane === lane).map(({ text }) => measureText(text, fontSize))),
    ),
    left,
  }
}
