import { describe, expect, it } from 'vitest'
import { type Nesting, nestPart, type PanelFormat } from '@/lib/fabrication/panel'
import type { Polygon } from '@/lib/geometry'
import { findNestingFaults } from './independent-check'
import { HOOK, L_SHAPE, makeRandom, makeRandomPart, makeStar, mm, NEEDLE, U_SHAPE, Z_SHAPE } from './shapes'

const FORMAT: PanelFormat = {
  id: 'production',
  name: 'Production panel',
  widthMm: 457.2,
  heightMm: 609.6,
  marginLeftMm: 25.4,
  marginRightMm: 20,
  marginTopMm: 12.7,
  marginBottomMm: 30,
  spacingMm: 2.54,
  allowedRotationsDeg: [0, 90, 180, 270],
  foilRollingDirection: null,
  note: '',
}

function checkAgainstDefinitions(outline: Polygon, nesting: Nesting, format: PanelFormat): string[] {
  return findNestingFaults(outline, nesting.placements, {
    left: format.marginLeftMm * 1000,
    bottom: format.marginBottomMm * 1000,
    right: (format.widthMm - format.marginRightMm) * 1000,
    top: (format.heightMm - format.marginTopMm) * 1000,
    spacingUm: format.spacingMm * 1000,
  })
}

describe('true outlines', () => {
  it.each([
    ['an L', L_SHAPE],
    ['a U', U_SHAPE],
    ['a Z', Z_SHAPE],
    ['a hook', HOOK],
    ['a triangle', mm([0, 0], [70, 0], [10, 60])],
    ['a needle', NEEDLE],
  ])('%s interlocks: more than its rectangle allows, and nothing touches', (_name, outline) => {
    const nesting = nestPart({ outline, rollingDirection: null }, FORMAT)
    expect(nesting.count).toBeGreaterThan(nesting.mixedGridCount)
    expect(nesting.excessFraction).toBe(0)
    expect(checkAgainstDefinitions(outline, nesting, FORMAT)).toEqual([])
  })

  // Widths of the arm, margins and spacings in mm, with a count that is reached; rectangles alone hold 2. The arrangements are checked from the
  // definitions, and a count is no more than the areas allow: nothing published lists them.
  it.each([
    [40, 12.7, 2.54, 3],
    [50, 12.7, 2.54, 4],
    [60, 12.7, 2.54, 3],
    [70, 12.7, 2.54, 3],
    [80, 10, 2, 3],
    [90, 0, 0, 3],
  ])(
    'few large parts are placed one by one: an L of 250 x 200 with arms of %d mm',
    (armMm, marginMm, spacingMm, least) => {
      const outline = mm([0, 0], [250, 0], [250, armMm], [armMm, armMm], [armMm, 200], [0, 200])
      const margins = {
        marginLeftMm: marginMm,
        marginRightMm: marginMm,
        marginTopMm: marginMm,
        marginBottomMm: marginMm,
      }
      const format = { ...FORMAT, widthMm: 304.8, heightMm: 457.2, spacingMm, ...margins }
      const nesting = nestPart({ outline, rollingDirection: null }, format)
      expect(nesting.mixedGridCount).toBe(2)
      expect(nesting.count).toBeGreaterThanOrEqual(least)
      expect(checkAgainstDefinitions(outline, nesting, format)).toEqual([])
      const upright = nestPart({ outline, rollingDirection: null }, { ...format, allowedRotationsDeg: [0, 180] })
      expect(upright.count).toBeLessThanOrEqual(nesting.count)
      expect(upright.placements.every(({ rotationDeg }) => rotationDeg % 180 === 0)).toBe(true)
      expect(checkAgainstDefinitions(outline, upright, format)).toEqual([])
    },
  )

  it('an L of three squares fills the plane when nothing is kept between parts', () => {
    // Two of them make a rectangle of two by three squares: an area argument, nothing can do better.
    const outline = mm([0, 0], [20, 0], [20, 10], [10, 10], [10, 20], [0, 20])
    const format = { ...FORMAT, widthMm: 60, heightMm: 60, spacingMm: 0, ...NO_MARGINS }
    const nesting = nestPart({ outline, rollingDirection: null }, format)
    expect(nesting.count).toBe(12)
    expect(nesting.utilisationFraction).toBe(1)
    expect(checkAgainstDefinitions(outline, nesting, format)).toEqual([])
  })

  it('right-angled triangles pair up to rectangles', () => {
    const outline = mm([0, 0], [30, 0], [0, 20])
    const format = { ...FORMAT, widthMm: 300, heightMm: 100, spacingMm: 0, ...NO_MARGINS }
    expect(nestPart({ outline, rollingDirection: null }, format).count).toBe(100)
  })

  it('falls back to the grid for a rectangle, however its vertices run', () => {
    const clockwise = mm([0, 0], [0, 35], [30, 35], [60, 35], [60, 0])
    const nesting = nestPart({ outline: clockwise, rollingDirection: null }, { ...FORMAT, allowedRotationsDeg: [0] })
    expect(nesting).toMatchObject({ method: 'grid', count: nesting.gridCount })
  })

  it('leaves nothing on a panel that the part does not fit', () => {
    const nesting = nestPart({ outline: L_SHAPE, rollingDirection: null }, { ...FORMAT, widthMm: 90, heightMm: 90 })
    expect(nesting).toMatchObject({ count: 0, placements: [], utilisationFraction: 0 })
  })

  it('refuses coordinates that are not whole micrometres, by name', () => {
    const outline: Polygon = [
      [0, 0],
      [10.5, 0],
      [0, 10],
    ]
    expect(() => nestPart({ outline, rollingDirection: null }, FORMAT)).toThrow(/outline\[1\]\[0\].*10\.5/)
  })
})

describe('grain', () => {
  const part = { outline: U_SHAPE, rollingDirection: 'along-x' as const }
  const turnsOf = (foilRollingDirection: PanelFormat['foilRollingDirection']) => {
    const nesting = nestPart(part, { ...FORMAT, foilRollingDirection })
    return { nesting, turns: [...new Set(nesting.placements.map(({ rotationDeg }) => rotationDeg % 180))] }
  }

  it('lays the part along the foil, whichever side of the panel that is', () => {
    expect(turnsOf('along-width').turns).toEqual([0])
    expect(turnsOf('along-height').turns).toEqual([90])
  })

  it('says which turns were left out, and that an unknown direction allowed all', () => {
    expect(turnsOf('along-width').nesting.notes).toEqual(['Turns across the foil’s rolling direction were left out.'])
    expect(turnsOf(null).nesting.notes).toEqual([expect.stringContaining('is not stated')])
  })

  it('holds no part where the allowed turns all lie across', () => {
    const nesting = nestPart(part, { ...FORMAT, allowedRotationsDeg: [90], foilRollingDirection: 'along-width' })
    expect(nesting.count).toBe(0)
    expect(nesting.notes).toEqual([expect.stringContaining('No turn that this panel allows')])
  })

  it('uses no turn that the panel does not allow', () => {
    for (const allowed of [[0], [180], [90], [0, 270], [0, 180]] as const) {
      const nesting = nestPart(
        { outline: HOOK, rollingDirection: null },
        { ...FORMAT, allowedRotationsDeg: [...allowed] },
      )
      expect(nesting.count).toBeGreaterThan(0)
      for (const { rotationDeg } of nesting.placements) expect(allowed).toContain(rotationDeg)
      expect(checkAgainstDefinitions(HOOK, nesting, FORMAT)).toEqual([])
    }
  })
})

describe('random parts on random panels', () => {
  it('never overlap, keep their distance and their panel, and never fall below the rectangle grid', () => {
    const random = makeRandom(20_261)
    let better = 0
    for (let round = 0; round < 60; round += 1) {
      const outline = makeRandomPart(random)
      const allowed = ([0, 90, 180, 270] as const).filter(() => random() > 0.3)
      const format: PanelFormat = {
        ...FORMAT,
        widthMm: Math.round(200 + 200 * random()),
        heightMm: Math.round(200 + 200 * random()),
        spacingMm: Math.round(random() * 5000) / 1000,
        allowedRotationsDeg: allowed.length === 0 ? [0] : allowed,
      }
      const nesting = nestPart({ outline, rollingDirection: null }, format)
      const label = `round ${round}: ${JSON.stringify(outline)}`
      expect(checkAgainstDefinitions(outline, nesting, format), label).toEqual([])
      expect(nesting.count, label).toBeGreaterThanOrEqual(Math.max(nesting.gridCount, nesting.mixedGridCount))
      expect(nesting.placements, label).toHaveLength(nesting.count)
      if (nesting.count > nesting.mixedGridCount) better += 1
    }
    expect(better).toBeGreaterThan(20)
  }, 120_000)

  it('holds for outlines of 200 vertices, whose pieces are joined on the safe side', () => {
    for (const outline of [
      makeStar(200, (index) => 35 + 10 * Math.cos((10 * Math.PI * index) / 200) + (index % 2)),
      makeStar(200, (index) => (index % 2 === 0 ? 30 : 40)),
    ]) {
      const nesting = nestPart({ outline, rollingDirection: null }, FORMAT)
      expect(checkAgainstDefinitions(outline, nesting, FORMAT)).toEqual([])
      expect(nesting.count).toBeGreaterThanOrEqual(nesting.mixedGridCount)
      expect(nesting.excessFraction).toBeGreaterThanOrEqual(0)
    }
  }, 60_000)

  it('gives the same placements again', () => {
    const nest = () => nestPart({ outline: HOOK, rollingDirection: null }, FORMAT)
    expect(nest()).toEqual(nest())
  })
})

const NO_MARGINS = { marginLeftMm: 0, marginRightMm: 0, marginTopMm: 0, marginBottomMm: 0 }
