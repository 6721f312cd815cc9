import { describe, expect, it } from 'vitest'
import { nestPart, type PanelFormat, readNestedPart } from '@/lib/fabrication'
import { EMPTY_PLAN, type Plan } from '@/lib/plan'
import { readDemoDesign } from '../../engine-assembly/demo-design-files'

const base = readDemoDesign('skua-rev-b')
const node = (x: number, y: number) => ({ atMm: [x, y] as [number, number], viaMm: null })
/** An L: 30 by 20 mm without its upper right 18 by 12 mm; 384 mm2. */
const ELL = [node(0, 0), node(30, 0), node(30, 8), node(12, 8), node(12, 20), node(0, 20)]
const ARRAY: NonNullable<Plan['array']> = {
  columns: 3,
  rows: 2,
  columnStepMm: 32,
  rowStepMm: 22,
  frameMm: 5,
  tabs: [],
  fiducials: [],
}
const PANEL: PanelFormat = {
  id: 'p',
  name: 'Panel',
  widthMm: 250,
  heightMm: 180,
  marginLeftMm: 10,
  marginRightMm: 10,
  marginTopMm: 10,
  marginBottomMm: 10,
  spacingMm: 2,
  allowedRotationsDeg: [0, 90, 180, 270],
  foilRollingDirection: null,
  note: '',
}

function read(array: Plan['array'], panelForm = base.brief.panelForm, rollingDirectionDeg: number | null = 0) {
  const plan: Plan = { ...EMPTY_PLAN, outline: ELL, rollingDirectionDeg, array }
  const reading = readNestedPart({ ...base, brief: { ...base.brief, panelForm }, plan })
  if (!reading.ok) throw new Error(reading.reason)
  return reading
}

describe('an array on a panel', () => {
  it('is one piece: its frame, by the steps, the part and the width of the frame (exact arithmetic)', () => {
    const { part } = read(ARRAY)
    // 2 x 32 + 30 + 2 x 5 by 22 + 20 + 2 x 5.
    expect(part.outline.map((corner) => [...corner])).toEqual([
      [0, 0],
      [104_000, 0],
      [104_000, 52_000],
      [0, 52_000],
    ])
    expect(part.array?.parts).toHaveLength(6)
    expect(part.array?.parts[4]?.[0]).toEqual([37_000, 27_000])
  })

  it('counts every part of every array, and each part’s own area; two across and three up on 230 by 160 mm', () => {
    const { part } = read(ARRAY)
    const nesting = nestPart(part, PANEL)
    // Along x (230 + 2) / (104 + 2) = 2, along y (160 + 2) / (52 + 2) = 3; turned (232 / 54) = 4 by (162 / 106) = 1.
    expect(nesting.placements).toHaveLength(6)
    expect(nesting.count).toBe(36)
    expect(nesting.utilisationFraction).toBeCloseTo((36 * 384) / (250 * 180), 12)
    const single = nestPart({ outline: part.array?.part ?? [], rollingDirection: part.rollingDirection }, PANEL)
    expect(nesting.notes[0]).toBe(
      `6 arrays of 6 parts, 104 × 52 mm with the frame. Laid singly it would be ${single.count} parts.`,
    )
    expect(single.count).toBeGreaterThan(36)
  })

  it('is turned with the foil’s direction, frame and parts alike', () => {
    const upright = read(ARRAY, 'assembly-arrays', 90).part
    expect(upright.rollingDirection).toBe('along-y')
    const turned = read(ARRAY, 'assembly-arrays', 30).part
    const xs = turned.outline.map(([x]) => x)
    // A rectangle turned by 30 degrees: 104 cos + 52 sin.
    expect((Math.max(...xs) - Math.min(...xs)) / 1000).toBeCloseTo(104 * Math.cos(Math.PI / 6) + 52 * 0.5, 2)
    for (const each of turned.array?.parts ?? []) {
      expect(Math.min(...each.map(([x]) => x))).toBeGreaterThan(Math.min(...xs))
      expect(Math.max(...each.map(([x]) => x))).toBeLessThan(Math.max(...xs))
    }
  })

  it('is not laid where parts are delivered singly, or the fabricator decides, or nothing is stated', () => {
    for (const form of ['single-parts', 'fabricator-decides', null] as const) {
      expect(read(ARRAY, form).part.array).toBeUndefined()
    }
    expect(read({ ...ARRAY, columns: 1, rows: 1 }).part.array).toBeUndefined()
  })

  it('says why parts are laid singly where it is not all stated, or its parts lie over each other', () => {
    for (const change of [{ columnStepMm: null }, { rowStepMm: null }, { frameMm: null }]) {
      const { part, note } = read({ ...ARRAY, ...change })
      expect(part.array).toBeUndefined()
      expect(note).toMatch(/not all stated/)
    }
    expect(read(null).note).toMatch(/none is drawn/)
    const over = read({ ...ARRAY, columnStepMm: 29 })
    expect(over.part.array).toBeUndefined()
    expect(over.note).toMatch(/lie over each other/)
    // A step that is not asked for is no lack.
    expect(read({ ...ARRAY, rows: 1, rowStepMm: null }).part.array).toBeDefined()
  })

  it('lets parts lie within each other’s bounds where they leave room for it', () => {
    const steps = (columnStepMm: number, rowStepMm: number) => {
      const stair = [node(0, 0), node(30, 0), node(30, 8), node(12, 8), node(12, 20), node(0, 20)]
      const plan: Plan = {
        ...EMPTY_PLAN,
        outline: stair,
        array: { ...ARRAY, columns: 2, rows: 1, columnStepMm, rowStepMm },
      }
      const reading = readNestedPart({ ...base, plan })
      return reading.ok && reading.part.array !== undefined
    }
    // Side by side an L touches the next at its whole width, no sooner.
    expect(steps(30, 0)).toBe(true)
    expect(steps(29.999, 0)).toBe(false)
    const slanted = [node(0, 0), node(30, 0), node(40, 20), node(10, 20)]
    const plan: Plan = { ...EMPTY_PLAN, outline: slanted, array: { ...ARRAY, columns: 3, rows: 1, columnStepMm: 30.5 } }
    const reading = readNestedPart({ ...base, plan })
    // Slanted parts 40 mm wide follow each other every 30.5 mm: within each other's bounds, and clear of each other.
    expect(reading.ok && reading.part.array?.parts).toHaveLength(3)
  })
})
