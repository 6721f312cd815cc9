import { describe, expect, test } from 'vitest'
import type { OnPlanFacts } from '@/lib/artwork'
import type { Drawn, Writing } from './draw-set'
import { measureStrip, type StripLayers } from './strip'
import { WHOLE_TURNS } from './turned'

type Point = readonly [number, number]

/** Turned as a set on a plan that stays, and together with its plan by any angle. */
const WAYS: readonly (readonly [string, Writing, number])[] = [
  ...WHOLE_TURNS.map(([name, writing]) => [name, writing, 0] as const),
  ['with its plan turned by 17.3', {}, 17.3],
  ['with its plan turned by 61, in inches', { unit: 'inch' }, 61],
]

const box = (x0: number, y0: number, x1: number, y1: number): Point[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]
const area = (...corners: Parameters<typeof box>): Drawn => ({ area: box(...corners) })
const line = (x0: number, y0: number, x1: number, y1: number, widthMm = 0.2): Drawn => ({
  stroke: [
    [x0, y0],
    [x1, y1],
  ],
  widthMm,
})
/** 45° bars from x = 20 to x = 40, within 1 to 11 mm of the width. */
function hatch(barMm: number, pitchMm: number): Drawn[] {
  const step = pitchMm * Math.SQRT2
  return Array.from({ length: Math.floor(30 / step) }, (_, at) => 10 + at * step).flatMap((x): Drawn[] => [
    line(x, 1, x + 10, 11, barMm),
    line(x, 11, x + 10, 1, barMm),
  ])
}

describe.each(WAYS)('a set %s', (_, writing, deg) => {
  const measure = (layers: StripLayers) => measureStrip(layers, writing, deg)
  const inBend = (layers: StripLayers): OnPlanFacts['bands'][number]['layers'][number] => {
    const [top] = measure(layers).bands[0]?.layers ?? []
    if (top === undefined) throw new Error('the layer was not measured in the bend')
    return top
  }

  test('has the hatch that it draws in the bend and in its zone, by bar, pitch and angle', () => {
    const facts = measure({ top: hatch(0.25, 0.8) })
    const film = facts.layers[0]?.zones.find(({ zoneId }) => zoneId === 'film')?.hatch
    const bend = facts.bands[0]?.layers[0]?.hatch
    for (const found of [film, bend]) {
      expect(found?.barMm).toBeCloseTo(0.25, 4)
      expect(found?.pitchMm).toBeCloseTo(0.8, 3)
      expect(found?.openFraction).toBeCloseTo((0.55 / 0.8) ** 2, 3)
    }
    expect(bend?.angleDeg).toBeCloseTo(45, 1)
    expect(facts.layers[1]?.zones.every((zone) => zone.hatch === null)).toBe(true)
    expect(inBend({ top: hatch(0.25, 0.8) }).solid).toBeNull()
  })

  test('tells a plane from conductors, and how much of the bend is solid', () => {
    expect(inBend({ top: [area(20, 1, 40, 11)] }).solid?.fraction).toBeCloseTo(10 / 12, 2)
    expect(inBend({ top: [area(20, 1, 40, 11)] }).hatch).toBeNull()
    const part = inBend({ top: [...hatch(0.25, 0.8), area(20, 1, 40, 4)] })
    expect(part.solid?.fraction).toBeCloseTo(3 / 12, 1)
    expect(inBend({ top: [line(16, 5, 45, 5, 1.5), line(16, 8, 45, 8)] })).toMatchObject({ solid: null, hatch: null })
  })

  test('tells a step in width without a taper from one with it', () => {
    const abrupt = [line(18, 6, 24, 6, 0.6), line(24, 6, 28, 6, 0.2)]
    const film = (top: readonly Drawn[]) => measure({ top }).layers[0]?.zones.find(({ zoneId }) => zoneId === 'film')
    const found = film(abrupt)?.widthSteps
    expect(found).toMatchObject({ count: 1, abruptCount: 1 })
    expect(found?.worst?.wideMm).toBeCloseTo(0.6, 5)
    expect(found?.worst?.narrowMm).toBeCloseTo(0.2, 5)
    const taper: Drawn = {
      area: [
        [24, 5.7],
        [25.5, 5.9],
        [25.5, 6.1],
        [24, 6.3],
      ],
    }
    expect(film([...abrupt, taper])?.widthSteps).toEqual({ count: 1, abruptCount: 0, worst: null })
    // In a land, at a branch, by a tenth, along an arc of the same width: no step.
    expect(film([...abrupt, { pad: [24, 6], sizeMm: 1.2 }])?.widthSteps.abruptCount).toBe(0)
    expect(film([...abrupt, line(24, 6, 24, 9)])?.widthSteps.count).toBe(0)
    expect(film([line(18, 6, 24, 6, 0.22), line(24, 6, 28, 6, 0.2)])?.widthSteps.count).toBe(0)
    const arc: Drawn = {
      arc: [
        [24, 6],
        [26, 8],
        [24, 8],
      ],
      widthMm: 0.2,
    }
    expect(film([line(18, 6, 24, 6, 0.2), arc])?.widthSteps.count).toBe(0)
    expect(film([line(18, 6, 24, 6, 0.5), arc])?.widthSteps).toMatchObject({ count: 1, abruptCount: 1 })
  })

  test('tells the nearest hole and land to a rigid edge, and the nearest plated hole to the outline', () => {
    const facts = measure({
      top: [
        { pad: [17, 6], sizeMm: 1 },
        { pad: [13.2, 3], sizeMm: 0.6 },
      ],
      holes: [
        [13.2, 3],
        [40, 0.9],
      ],
    })
    expect(facts.transitions?.hole?.mm).toBeCloseTo(1.65, 3)
    // The land round the hole is the hole's.
    expect(facts.transitions?.land?.mm).toBeCloseTo(1.5, 2)
    expect(facts.platedHoleToOutline?.mm).toBeCloseTo(0.75, 3)
    expect(measure({ holes: [[40, 6]] }).platedHoleToOutline).toBeNull()
    expect(measure({ holes: [[40, 0.1]] }).platedHoleToOutline?.mm).toBe(0)
    expect(measure({ top: [{ pad: [15.1, 6], sizeMm: 1 }] }).transitions?.land?.mm).toBe(0)
  })

  test('tells how near an opening of the coverlay and a stiffener come to the bend', () => {
    const toBend = (cover: readonly Drawn[], stiffener: readonly Drawn[] = []) => {
      const { covers, stiffeners } = measure({ cover, stiffener })
      return [covers[0]?.bands[0]?.mm, stiffeners[0]?.bands[0]?.mm]
    }
    expect(toBend([area(34, 4, 36, 8)], [area(40, 0, 60, 12)])).toEqual([
      expect.closeTo(2.5, 4),
      expect.closeTo(8.5, 4),
    ])
    // Arcs are followed to 1 um.
    expect(Math.abs((toBend([{ pad: [34, 6], sizeMm: 2 }])[0] ?? 0) - 1.5)).toBeLessThan(0.0011)
    expect(toBend([area(31, 4, 36, 8)])[0]).toBe(0)
    // The same opening by its border.
    const border = [line(34, 4, 36, 4, 0.1), line(36, 4, 36, 8, 0.1), line(36, 8, 34, 8, 0.1), line(34, 8, 34, 4, 0.1)]
    expect(toBend(border)[0]).toBeCloseTo(2.5, 4)
    // Across the whole of the bend and beyond it.
    expect(toBend([area(27, -1, 33, 13)])[0]).toBe(0)
    expect(toBend([area(45, 4, 46, 8)])[0]).toBeUndefined()
  })

  test('tells how far a stiffener reaches past the end of the coverlay, drawn as an area or as its border', () => {
    const end = area(55, -1, 61, 13)
    const border = (x: number): Drawn[] => [
      line(x, 0, 60, 0, 0.1),
      line(60, 0, 60, 9, 0.1),
      line(60, 9, 57, 9, 0.1),
      line(57, 9, 57, 12, 0.1),
      line(57, 12, x, 12, 0.1),
      line(x, 12, x, 0, 0.1),
    ]
    const overlap = (cover: readonly Drawn[], stiffener: readonly Drawn[]) =>
      measure({ cover, stiffener }).stiffeners[0]?.overlap
    expect(overlap([end], [area(53.5, 0, 60, 12)])?.mm).toBeCloseTo(1.5, 3)
    expect(overlap([end], border(53.5))?.mm).toBeCloseTo(1.5, 3)
    expect(overlap([end], [area(55.5, 0, 60, 12)])?.mm).toBe(0)
    // Under a part of the width alone its side ends within the opening.
    expect(overlap([end], [area(53.5, 7, 60, 12)])?.mm).toBe(0)
    expect(overlap([area(20, 4, 22, 8)], [area(53.5, 0, 60, 12)])).toBeNull()
  })

  test('tells the nearest hole to an edge of a stiffener, and leaves edges along the outline and windows out', () => {
    const near = (stiffener: readonly Drawn[], holes: readonly Point[]) =>
      measure({ stiffener, holes }).stiffeners[0]?.nearestHole
    const board = area(0, 0, 20, 12)
    expect(
      near(
        [board],
        [
          [21, 6],
          [3, 0.8],
        ],
      )?.mm,
    ).toBeCloseTo(0.85, 3)
    expect(near([board], [[18, 6]])?.mm).toBeCloseTo(1.85, 3)
    expect(near([board], [[20, 6.02]])?.mm).toBe(0)
    expect(near([board, { pad: [10, 6], sizeMm: 2, isClear: true }], [[10, 6]])).toBeNull()
  })

  test('tells how lands are held in openings: by their rim, by spurs, or not at all', () => {
    const land: Drawn = { pad: [40, 6], sizeMm: 1.6 }
    const conductor = line(40, 6, 48, 6)
    const opening = (sizeMm: number): Drawn => ({ pad: [40, 6], sizeMm })
    const held = (top: readonly Drawn[], cover: readonly Drawn[], holes: readonly Point[] = []) =>
      measure({ top, cover, holes }).covers[0]?.zones.find(({ zoneId }) => zoneId === 'film')?.lands ?? []
    const [rim] = held([land, conductor], [opening(1.2)])
    expect(rim).toMatchObject({ spurCount: 0, count: 1 })
    expect(rim?.leastRim.mm).toBeCloseTo(0.2, 2)
    const [bare] = held([land, conductor], [opening(2)])
    expect(bare?.spurCount).toBe(0)
    expect(bare?.leastRim.mm).toBeCloseTo(-0.2, 2)
    // Aside by 0.15 mm: least on one side.
    const [aside] = held([land, conductor], [{ pad: [40.15, 6], sizeMm: 1.2 }])
    expect(aside?.leastRim.mm).toBeCloseTo(0.05, 2)
    const spur = line(40, 6, 38, 6)
    expect(held([land, conductor, spur], [opening(2)])).toMatchObject([{ spurCount: 1, count: 1 }])
    // A spur that ends within the opening holds nothing.
    expect(held([land, conductor, line(40, 6, 39.15, 6)], [opening(2.6)])).toMatchObject([{ spurCount: null }])
    expect(held([land, conductor], [opening(2)], [[40, 6]])).toEqual([])
    expect(held([{ pad: [5, 6], sizeMm: 1 }], [{ pad: [5, 6], sizeMm: 2 }])).toEqual([])
  })
})
