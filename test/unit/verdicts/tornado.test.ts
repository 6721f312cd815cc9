import { parseHTML } from 'linkedom'
import { describe, expect, test } from 'vitest'
import { drawTornadoPlot, PRINT_PALETTE } from '@/lib/drawing'
import { computeTornado, evaluate } from '@/lib/engine'
import { makeOneBend } from './one-bend'

const design = makeOneBend()
const foil = design.construction.layers.find(({ id }) => id === 'foil')
if (foil !== undefined && foil.kind === 'conductor') Object.assign(foil, { tolerancePlusUm: 2, toleranceMinusUm: 2 })
const tornado = computeTornado(design, 'bend-0', 'foil')

describe('tornado of a bend', () => {
  test('each end is what the evaluation gives for the design with that input there', () => {
    const swing = tornado?.swings.find(({ quantity, layerId }) => quantity === 'thicknessUm' && layerId === 'foil')
    if (swing === undefined) throw new Error('no swing of the foil')
    const at = (thicknessUm: number) => {
      const bend = evaluate(makeOneBend({ copper: { thicknessUm } })).bends[0]
      return [bend?.peakStrainPct ?? 0, bend?.survivalLifeCycles ?? 0] as const
    }
    expect(swing.strainAtLowPct).toBeCloseTo(at(16)[0], 12)
    expect(swing.strainAtHighPct).toBeCloseTo(at(20)[0], 12)
    expect(swing.lifeAtHighCycles ?? 0).toBeCloseTo(at(20)[1], 3)
  })

  test('has thicknesses and constants, the one that moves the life most first', () => {
    const kinds = new Set(tornado?.swings.map(({ kind }) => kind))
    expect(kinds).toEqual(new Set(['thickness', 'constant']))
    const reach = (tornado?.swings ?? []).map(({ lifeAtLowCycles, lifeAtHighCycles }) =>
      Math.abs(Math.log((lifeAtHighCycles ?? 1) / (lifeAtLowCycles ?? 1))),
    )
    const moving = reach.filter((each) => each > 0)
    expect(moving).toEqual(moving.toSorted((a, b) => b - a))
  })

  test('is drawn for strain and for life, with every input in the table behind it', () => {
    if (tornado === null) throw new Error('no tornado')
    const { document } = parseHTML('<html><body></body></html>')
    for (const measure of ['strain', 'life'] as const) {
      const picture = drawTornadoPlot(tornado, { document, palette: PRINT_PALETTE, widthPx: 600, measure })
      expect(picture?.table.rows).toHaveLength(tornado.swings.length)
      expect(picture?.description).toContain('moves it most')
      expect(JSON.stringify(picture?.nodes)).not.toMatch(/NaN/)
    }
  })

  test('a life past an end of the relation says so in the table', () => {
    const wide = computeTornado(makeOneBend({ insideRadiusMm: 900 }), 'bend-0', 'foil')
    if (wide === null) throw new Error('no tornado')
    expect(
      wide.swings.every(
        ({ lifeAtLowBound, lifeAtHighBound }) => lifeAtLowBound === 'longer-than' && lifeAtHighBound === 'longer-than',
      ),
    ).toBe(true)
    const { document } = parseHTML('<html><body></body></html>')
    const picture = drawTornadoPlot(wide, { document, palette: PRINT_PALETTE, widthPx: 600, measure: 'life' })
    const cells = (picture?.table.rows ?? []).map(({ life }) => String(life))
    expect(cells).toHaveLength(wide.swings.length)
    for (const cell of cells) expect(cell.match(/longer than/g)).toHaveLength(2)
    expect(tornado?.swings.every(({ lifeAtLowBound }) => lifeAtLowBound === null)).toBe(true)
  })

  test('there is none for a bend without copper that decides', () => {
    expect(computeTornado(design, 'bend-0', null)).toBeNull()
    expect(computeTornado(design, 'no-such-bend', 'foil')).toBeNull()
  })
})
