import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nestPart, type PanelFormat, readNestedPart } from '@/lib/fabrication'
import { EMPTY_PLAN, type Plan } from '@/lib/plan'
import { readDemoDesign } from '../../engine-assembly/demo-design-files'
import { findNestingFaults } from './independent-check'

const base = readDemoDesign('skua-rev-b')
const box = (x0: number, y0: number, x1: number, y1: number) =>
  (
    [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ] as [number, number][]
  ).map((atMm) => ({ atMm, viaMm: null }))
/** An L of 30 by 20 mm with arms of 8 mm. */
const L_PART = (
  [
    [0, 0],
    [30, 0],
    [30, 8],
    [8, 8],
    [8, 20],
    [0, 20],
  ] as [number, number][]
).map((atMm) => ({ atMm, viaMm: null }))
const ARRAY: NonNullable<Plan['array']> = {
  columns: 3,
  rows: 2,
  columnStepMm: 33,
  rowStepMm: 24,
  frameMm: 5,
  tabs: [],
  fiducials: [],
}
const read = (plan: Partial<Plan>) => {
  const reading = readNestedPart({ ...base, plan: { ...EMPTY_PLAN, outline: L_PART, ...plan } })
  if (!reading.ok) throw new Error(reading.reason)
  return reading
}
const FORMAT: PanelFormat = {
  id: 'panel',
  name: 'Panel',
  widthMm: 300,
  heightMm: 250,
  marginLeftMm: 10,
  marginRightMm: 10,
  marginTopMm: 10,
  marginBottomMm: 10,
  spacingMm: 2,
  allowedRotationsDeg: [0, 90, 180, 270],
  foilRollingDirection: null,
  note: '',
}

/** Most rectangles that a grid of one way holds, counted by laying one after the other. */
function countByLaying(room: readonly [number, number], size: readonly [number, number], spacing: number): number {
  let count = 0
  for (let y = 0; y + size[1] <= room[1] + 1e-9; y += size[1] + spacing) {
    for (let x = 0; x + size[0] <= room[0] + 1e-9; x += size[0] + spacing) count += 1
  }
  return count
}

describe('a part that is delivered in an array', () => {
  it('is laid with its frame as one piece: 3 by 2 L of 30 by 20 mm at 33 and 24 mm in a frame of 5 mm are 106 by 54 mm', () => {
    const { part, note } = read({ array: ARRAY })
    expect(note).toContain('laid in its array of 3 × 2, its frame included')
    const nesting = nestPart(part, { ...FORMAT, allowedRotationsDeg: [0] })
    // 280 by 230 mm of room: two arrays side by side (106 + 2 + 106), four above one another (4 x 54 + 3 x 2 = 222).
    expect(nesting.count).toBe(2 * 4 * 6)
    expect(nesting.placements).toHaveLength(48)
    // 8 arrays of 6 parts of 30 x 8 + 8 x 12 = 336 mm2 each.
    expect(nesting.utilisationFraction).toBeCloseTo((48 * 336) / (300 * 250), 12)
    const alone = nestPart(read({}).part, { ...FORMAT, allowedRotationsDeg: [0] })
    expect(alone.count).toBeGreaterThan(nesting.count)
  })

  it('lies at its steps, whichever way the array is turned, and never over another part or past the panel', () => {
    for (const turn of [0, 90, 180, 270] as const) {
      const { part } = read({ array: ARRAY })
      const nesting = nestPart(part, { ...FORMAT, allowedRotationsDeg: [turn] })
      expect(nesting.count % 6).toBe(0)
      expect(nesting.count).toBeGreaterThan(0)
      // Frame and margin keep parts 15 mm from the rim; parts of one array are as near as their steps, 3 and 4 mm.
      const faults = findNestingFaults(part.outline, nesting.placements, {
        left: 15_000,
        bottom: 15_000,
        right: 285_000,
        top: 235_000,
        spacingUm: 3000,
      })
      expect(faults).toEqual([])
      const [first, second] = nesting.placements
      const [dx, dy] = [(second?.xUm ?? 0) - (first?.xUm ?? 0), (second?.yUm ?? 0) - (first?.yUm ?? 0)]
      const rad = (turn * Math.PI) / 180
      expect([dx, dy]).toEqual([Math.round(33_000 * Math.cos(rad)) + 0, Math.round(33_000 * Math.sin(rad)) + 0])
    }
  })

  it('comes to what laying arrays one after the other comes to, for any size, and to no more than areas allow', () => {
    const length = (low: number, high: number) => fc.integer({ min: low, max: high }).map((tenths) => tenths / 10)
    fc.assert(
      fc.property(
        length(50, 600),
        length(50, 600),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        length(0, 50),
        length(0, 80),
        (width, height, columns, rows, gap, frameMm) => {
          const array = { ...ARRAY, columns, rows, columnStepMm: width + gap, rowStepMm: height + gap, frameMm }
          const { part } = read({ outline: box(0, 0, width, height), array })
          const size = [
            columns * width + (columns - 1) * gap + 2 * (columns * rows === 1 ? 0 : frameMm),
            rows * height + (rows - 1) * gap + 2 * (columns * rows === 1 ? 0 : frameMm),
          ] as const
          const [room, each] = [[280, 230] as const, columns * rows]
          const oneWay = nestPart(part, { ...FORMAT, allowedRotationsDeg: [0] }).count
          expect(oneWay).toBe(countByLaying(room, size, 2) * each)
          const anyWay = nestPart(part, FORMAT).count
          expect(anyWay).toBeGreaterThanOrEqual(Math.max(oneWay, countByLaying(room, [size[1], size[0]], 2) * each))
          expect(anyWay * width * height).toBeLessThanOrEqual(280 * 230)
        },
      ),
      { numRuns: 60, seed: 14 },
    )
  })

  it('is laid by itself while a step is not stated, and says so; a frame that is not stated is not taken', () => {
    const open = read({ array: { ...ARRAY, rowStepMm: null } })
    expect(open.part.array).toBeUndefined()
    expect(open.note).toContain('A step of the array is not stated')
    expect(nestPart(open.part, FORMAT).count).toBe(nestPart(read({}).part, FORMAT).count)
    expect(read({ array: { ...ARRAY, frameMm: null } }).note).toContain('its frame is not stated, and none is taken')
    expect(read({ array: { ...ARRAY, columns: 1, rows: 1 } }).note).toBe(read({}).note)
  })
})

describe('a part with a cut-out', () => {
  it('lies as without, since nothing of its own size fits into itself, and makes use of less', () => {
    const [whole, open] = [
      read({ outline: box(0, 0, 40, 40) }).part,
      read({ outline: box(0, 0, 40, 40), cutOuts: [{ id: 'window', name: 'Window', nodes: box(5, 5, 35, 35) }] }).part,
    ]
    expect(open.cutOutAreaUm2).toBe(900e6)
    const [one, other] = [nestPart(whole, FORMAT), nestPart(open, FORMAT)]
    expect(other.placements).toEqual(one.placements)
    expect(other.utilisationFraction).toBeCloseTo((one.utilisationFraction * 700) / 1600, 12)
  })
})
