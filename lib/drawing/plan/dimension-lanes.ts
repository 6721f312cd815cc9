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
    const lanes: (readonly [number, number])[][] = []
    const span = ({ ends: [a, b] }: { readonly ends: readonly [Point, Point] }) => Math.abs(a[key] - b[key])
    return axis(direction)
      .sort((one, other) => span(one) - span(other) || one.dimension.id.localeCompare(other.dimension.id))
      .flatMap(({ dimension, ends }): LaidDimension[] => {
        const text = textOf(dimension)
        const [from, to] = [Math.min(ends[0][key], ends[1][key]), Math.max(ends[0][key], ends[1][key])]
        const width = direction === 'along-x' ? measureText(text, fontSize) : fontSize * 1.2
        const middle = (from + to) / 2
        const textAt =
          direction === 'along-x'
            ? Math.max(room.left, Math.min(room.right - width, middle - width / 2))
            : middle + 0.26 * fontSize
        const taken = [
          Math.min(from, direction === 'along-x' ? textAt : middle - width / 2) - GAP_EM * fontSize,
          Math.max(to, direction === 'along-x' ? textAt + width : middle + width / 2) + GAP_EM * fontSize,
        ] as const
        let lane = lanes.findIndex((own) => own.every(([low, high]) => taken[1] <= low || taken[0] >= high))
        if (lane === -1) lane = lanes.push([]) - 1
        if (lane >= MOST_LANES) {
          left.push(dimension.id)
          return []
        }
        lanes[lane]?.push(taken)
        return [{ id: dimension.id, text, lane, from, to, startsAt: ends, textAt }]
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
