import { describe, expect, it } from 'vitest'
import { nestPart, type PanelFormat, readNestedPart } from '@/lib/fabrication'
import { getAreaUm2 } from '@/lib/geometry'
import { EMPTY_PLAN, type Plan } from '@/lib/plan'
import { readDemoDesign } from '../../engine-assembly/demo-design-files'

const PANEL: PanelFormat = {
  id: 'p',
  name: 'Panel',
  widthMm: 100,
  heightMm: 100,
  marginLeftMm: 0,
  marginRightMm: 0,
  marginTopMm: 0,
  marginBottomMm: 0,
  spacingMm: 2,
  allowedRotationsDeg: [0],
  foilRollingDirection: null,
  note: '',
}
const base = readDemoDesign('skua-rev-b')
const read = (plan: Partial<Plan>) => {
  const reading = readNestedPart({ ...base, plan: { ...EMPTY_PLAN, ...plan } })
  if (!reading.ok) throw new Error(reading.reason)
  return reading.part
}
const node = (at: [number, number], via: [number, number] | null = null) => ({ atMm: at, viaMm: via })
/** A stadium: 20 mm between half circles of 5 mm. */
const STADIUM = [node([0, -5]), node([20, -5], [25, 0]), node([20, 5]), node([0, 5], [-5, 0])]
/** A square of 20 mm with a half circle of 5 mm taken out of one side. */
const BITTEN = [node([0, 0]), node([20, 0]), node([20, 20]), node([15, 20], [10, 15]), node([5, 20]), node([0, 20])]

describe('the part that is laid on panels', () => {
  it('is the drawn outline, arcs held from outside: no less than the closed form, and hardly more', () => {
    for (const [outline, areaMm2, arcsMm] of [
      [STADIUM, 200 + 25 * Math.PI, 10 * Math.PI],
      [BITTEN, 400 - 12.5 * Math.PI, 5 * Math.PI],
    ] as const) {
      const areaUm2 = getAreaUm2(read({ outline: [...outline] }).outline)
      expect(areaUm2 / 1e6).toBeGreaterThan(areaMm2 - 0.02)
      // 0.01 mm along the arcs, and what whole micrometres round.
      expect(areaUm2 / 1e6).toBeLessThan(areaMm2 + arcsMm * 0.01 + 0.02)
    }
  })

  it('holds every point of its arcs, to a micrometre', () => {
    const { outline } = read({ outline: STADIUM })
    for (let turn = 0; turn < 400; turn += 1) {
      const rad = -Math.PI / 2 + (Math.PI * turn) / 400
      const point = [20 + 5 * Math.cos(rad), 5 * Math.sin(rad)] as const
      const least = Math.min(
        ...outline.map(([x, y], at) => {
          const [nx, ny] = outline[(at + 1) % outline.length] ?? [x, y]
          const length = Math.hypot(nx - x, ny - y)
          return ((nx - x) * (point[1] * 1000 - y) - (ny - y) * (point[0] * 1000 - x)) / length
        }),
      )
      expect(least).toBeGreaterThan(-1)
    }
  })

  it('has no window counted as part of it: what a panel is used for is the closed form, outline less windows', () => {
    const square = [node([0, 0]), node([30, 0]), node([30, 30]), node([0, 30])]
    const round = { id: 'w', name: 'Window', nodes: [node([10, 15], [15, 20]), node([20, 15], [15, 10])] }
    const part = read({ outline: square, cutOuts: [round] })
    expect(part.windowsUm2).toBeCloseTo(25 * Math.PI * 1e6, -1)
    const { count, utilisationFraction } = nestPart(part, PANEL)
    expect(count).toBe(9)
    expect(utilisationFraction).toBeCloseTo((9 * (900 - 25 * Math.PI)) / 10_000, 6)
    expect(read({ outline: square }).windowsUm2).toBeUndefined()
  })

  it('carries the foil’s direction: along y, and turned to x at any other angle', () => {
    const square = [node([0, 0]), node([30, 0]), node([30, 10]), node([0, 10])]
    expect(read({ outline: square, rollingDirectionDeg: 90 }).rollingDirection).toBe('along-y')
    const turned = read({ outline: square, rollingDirectionDeg: 30 })
    expect(turned.rollingDirection).toBe('along-x')
    // The long side, along x in the plan, lies 30 degrees below x once the foil's direction is x.
    const xs = turned.outline.map(([x]) => x)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(
      30_000 * Math.cos(Math.PI / 6) + 10_000 * Math.sin(Math.PI / 6),
      -1,
    )
    expect(read({ outline: square, rollingDirectionDeg: null }).rollingDirection).toBe(
      base.features.outline?.rollingDirection,
    )
  })

  it('is what was stated where nothing is drawn', () => {
    const reading = readNestedPart(base)
    expect(reading.ok && reading.part.outline.length).toBe(base.features.outline?.verticesMm.length)
  })
})
