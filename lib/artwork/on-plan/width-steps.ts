import type { StackedCopper } from '../copper/copper-stack'
import { NM_PER_MM } from '../limits'
import { ARC_CLOCKWISE, FLASH, LINE, NUMBERS_PER_OBJECT, REGION } from '../objects/objects'
import type { Rings } from './ground'
import type { OnPlanFacts } from './on-plan-facts'
import { isInside } from './rings'

type WidthSteps = OnPlanFacts['layers'][number]['zones'][number]['widthSteps']

/** Ends this near to each other are one place: rounding. */
const JOINED_NM = 1000
/** A stroke wider than the next by less than this is a part of a taper, or rounding. Our choice. */
const LEAST_RATIO = 1.2
/** Looked at this far past the round end of the wide stroke, and this far beside the narrow one: a taper is wider there. Our choice, as for teardrops. */
const PAST_END = 1.1
const PAST_END_NM = 10_000
const BESIDE_NM = 10_000

interface StrokeEnd {
  readonly x: number
  readonly y: number
  /** Into the stroke. */
  readonly ux: number
  readonly uy: number
  readonly widthNm: number
}

/** Where two strokes of a layer meet that differ in width, and nothing else meets them. */
export interface WidthStep {
  readonly x: number
  readonly y: number
  readonly wideNm: number
  readonly narrowNm: number
  /** Nothing fills the corners between both: no taper, no land and no plane. */
  readonly isAbrupt: boolean
}

export function findWidthSteps(layer: StackedCopper): WidthStep[] {
  const joints = new Map<string, StrokeEnd[]>()
  for (const end of listEnds(layer)) {
    const key = `${Math.round(end.x / JOINED_NM)} ${Math.round(end.y / JOINED_NM)}`
    const there = joints.get(key)
    if (there === undefined) joints.set(key, [end])
    else if (!there.some((known) => isSame(known, end))) there.push(end)
  }
  const steps: WidthStep[] = []
  for (const [one, other, ...more] of joints.values()) {
    if (one === undefined || other === undefined || more.length > 0) continue
    const [wide, narrow] = one.widthNm >= other.widthNm ? [one, other] : [other, one]
    if (wide.widthNm < LEAST_RATIO * narrow.widthNm) continue
    steps.push({
      x: narrow.x,
      y: narrow.y,
      wideNm: wide.widthNm,
      narrowNm: narrow.widthNm,
      isAbrupt: !isFilled(layer, wide, narrow),
    })
  }
  return steps
}

/** The same stroke drawn twice. */
const isSame = (one: StrokeEnd, other: StrokeEnd): boolean =>
  one.widthNm === other.widthNm && one.ux * other.ux + one.uy * other.uy > 1 - 1e-12

function listEnds({ objects }: StackedCopper): StrokeEnd[] {
  const ends: StrokeEnd[] = []
  for (let object = 0; object < objects.count; object += 1) {
    const kind = objects.kinds[object]
    if (kind === FLASH || kind === REGION || objects.isClear[object] === 1) continue
    const widthNm = objects.apertures[objects.apertureAt[object] ?? -1]?.diameterNm ?? 0
    const from = object * NUMBERS_PER_OBJECT
    const [ax = 0, ay = 0, bx = 0, by = 0, cx = 0, cy = 0] = objects.numbers.subarray(from, from + NUMBERS_PER_OBJECT)
    if (widthNm <= 0 || (ax === bx && ay === by)) continue
    if (kind === LINE) {
      const length = Math.hypot(bx - ax, by - ay)
      const [ux, uy] = [(bx - ax) / length, (by - ay) / length]
      ends.push({ x: ax, y: ay, ux, uy, widthNm }, { x: bx, y: by, ux: -ux, uy: -uy, widthNm })
      continue
    }
    // Along the arc: square to its radius, on the side that it turns to.
    const sign = kind === ARC_CLOCKWISE ? -1 : 1
    const along = (x: number, y: number, way: number) => {
      const radius = Math.hypot(x - cx, y - cy) || 1
      return { x, y, ux: (-(y - cy) * sign * way) / radius, uy: ((x - cx) * sign * way) / radius, widthNm }
    }
    ends.push(along(ax, ay, 1), along(bx, by, -1))
  }
  return ends
}

/** Copper on both sides of the narrow stroke, just past the round end of the wide one. */
function isFilled({ islands }: StackedCopper, wide: StrokeEnd, { x, y, ux, uy, widthNm }: StrokeEnd): boolean {
  const along = (PAST_END * wide.widthNm) / 2 + PAST_END_NM
  const beside = widthNm / 2 + BESIDE_NM
  return [1, -1].every(
    (side) =>
      islands.at(Math.round(x + ux * along - side * uy * beside), Math.round(y + uy * along + side * ux * beside)) !==
      null,
  )
}

/** Those within a zone. */
export function stepsIn(
  steps: readonly WidthStep[],
  areas: readonly Rings[],
  toMm: (x: number, y: number) => [number, number],
): WidthSteps {
  const own = steps.filter(({ x, y }) => areas.some((rings) => isInside(rings, x, y)))
  const abrupt = own.filter(({ isAbrupt }) => isAbrupt)
  const worst = abrupt.reduce<WidthStep | null>(
    (most, step) => (most === null || step.wideNm * most.narrowNm > most.wideNm * step.narrowNm ? step : most),
    null,
  )
  return {
    count: own.length,
    abruptCount: abrupt.length,
    worst:
      worst === null
        ? null
        : { wideMm: worst.wideNm / NM_PER_MM, narrowMm: worst.narrowNm / NM_PER_MM, atMm: toMm(worst.x, worst.y) },
  }
}
