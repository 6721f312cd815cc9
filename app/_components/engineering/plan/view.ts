import type { Plan } from '@/lib/engine'
import type { PointMm } from '@/lib/plan'
import { traceAll } from '@/lib/plan/pick'

/** What part of the plane is seen: its middle, and how much of it a pixel covers. */
export interface View {
  readonly middleMm: PointMm
  readonly mmPerPx: number
}

export interface SizePx {
  readonly width: number
  readonly height: number
}

const MARGIN_PX = 32
const EMPTY_MM = { width: 100, height: 60 }
const LEAST_MM_PER_PX = 1e-5
const MOST_MM_PER_PX = 50

/** All that is drawn, with room round it. */
export function fitView(plan: Plan, size: SizePx): View {
  const boxes = traceAll(plan).map(({ box }) => box)
  const box = boxes.reduce(
    (whole, each) => ({
      minX: Math.min(whole.minX, each.minX),
      minY: Math.min(whole.minY, each.minY),
      maxX: Math.max(whole.maxX, each.maxX),
      maxY: Math.max(whole.maxY, each.maxY),
    }),
    { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity },
  )
  const isEmpty = !(box.minX <= box.maxX)
  const [width, height] = isEmpty ? [EMPTY_MM.width, EMPTY_MM.height] : [box.maxX - box.minX, box.maxY - box.minY]
  const mmPerPx = Math.max(
    width / Math.max(1, size.width - 2 * MARGIN_PX),
    height / Math.max(1, size.height - 2 * MARGIN_PX),
    LEAST_MM_PER_PX,
  )
  return {
    middleMm: isEmpty ? [width / 2, height / 2] : [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2],
    mmPerPx: Math.min(mmPerPx, MOST_MM_PER_PX),
  }
}

/** Nearer or further, with one place staying where it is. */
export function zoomBy(view: View, factor: number, aboutMm: PointMm): View {
  const mmPerPx = Math.min(MOST_MM_PER_PX, Math.max(LEAST_MM_PER_PX, view.mmPerPx / factor))
  const share = mmPerPx / view.mmPerPx
  return {
    mmPerPx,
    middleMm: [
      aboutMm[0] + (view.middleMm[0] - aboutMm[0]) * share,
      aboutMm[1] + (view.middleMm[1] - aboutMm[1]) * share,
    ],
  }
}

/** The place under a pixel; y points up in the plan and down on screen. */
export function toPlan({ middleMm, mmPerPx }: View, size: SizePx, [x, y]: readonly [number, number]): PointMm {
  return [middleMm[0] + (x - size.width / 2) * mmPerPx, middleMm[1] - (y - size.height / 2) * mmPerPx]
}

export function viewBoxOf({ middleMm, mmPerPx }: View, size: SizePx): string {
  const [width, height] = [size.width * mmPerPx, size.height * mmPerPx]
  return `${middleMm[0] - width / 2} ${-middleMm[1] - height / 2} ${width} ${height}`
}
