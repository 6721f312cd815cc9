import { describe, expect, it } from 'vitest'
import {
  computeHandbookRadius,
  computeRatioRadius,
  DEFAULT_RATIO_TABLE_ID,
  findRatioTable,
  RATIO_TABLES,
  ratioLayersFor,
} from '@/lib/engine/bending'
import { currentCapacityAmp, listCurrentCautions, resistanceOhm, voltageDropVolt } from '@/lib/engine/conductors'
import { computeDamage } from '@/lib/engine/life'
import { citeSource, SOURCES, type SourceKey } from '@/lib/engine/sources'

const sourceKeys = Object.keys(SOURCES) as SourceKey[]

describe('sources', () => {
  it.each(sourceKeys)('%s is cited with what it stands on', (key) => {
    const source = SOURCES[key]
    const cited = citeSource(key)
    expect(cited.length).toBeGreaterThan(10)
    if (source.number !== null) expect(cited).toContain(source.number)
    if (source.year !== null) expect(cited).toContain(String(source.year))
    if (source.kind === 'memory') expect(cited).toMatch(/from memory$/)
    if (source.kind === 'common-practice') expect(cited).toMatch(/common practice/)
    if (source.kind === 'standard') expect(source.number).not.toBeNull()
    expect(`${cited} ${source.note}`).not.toMatch(/https?:|www\.|\.com/)
  })
})

describe('ratio rules', () => {
  it('have distinct ids and entries that run from low to high', () => {
    expect(new Set(RATIO_TABLES.map((table) => table.id)).size).toBe(RATIO_TABLES.length)
    const entries = RATIO_TABLES.flatMap(({ entries: byLayers }) => Object.values(byLayers).flatMap(Object.values))
    for (const entry of entries) if (Array.isArray(entry)) expect(entry[0]).toBeLessThanOrEqual(entry[1])
  })

  it('differ by a factor of two or more for a static single-sided bend', () => {
    const ratios = RATIO_TABLES.flatMap((table) => {
      const radius = computeRatioRadius({ table, use: 'static', conductorLayerCount: 1, totalThicknessUm: 100 })
      return radius.kind === 'stated' ? [radius.lowestRatio, radius.requiredRatio] : []
    })
    expect(Math.max(...ratios) / Math.min(...ratios)).toBeGreaterThanOrEqual(2)
  })

  it('say when they advise against a bend and when they are silent', () => {
    const byDefault = findRatioTable(DEFAULT_RATIO_TABLE_ID)
    const silent = findRatioTable('trade-article-2019')
    if (byDefault === null || silent === null) throw new Error('a table is gone')
    const bend = { use: 'dynamic', conductorLayerCount: 4, totalThicknessUm: 200 } as const
    expect(computeRatioRadius({ table: byDefault, ...bend })).toEqual({ kind: 'advised against' })
    expect(computeRatioRadius({ table: silent, ...bend })).toEqual({ kind: 'not stated' })
    expect(findRatioTable('none of these')).toBeNull()
  })

  it('read their column by the count of conductor layers', () => {
    expect([1, 2, 3, 8].map(ratioLayersFor)).toEqual(['single', 'double', 'multilayer', 'multilayer'])
  })
})

describe('handbook radius', () => {
  it('of a multilayer with one dielectric is that of a double-sided circuit', () => {
    const double = computeHandbookRadius(
      { sides: 'double', copperThicknessUm: 18, coverThicknessUm: 50, dielectricThicknessUm: 25 },
      0.3,
    )
    const multilayer = computeHandbookRadius(
      { sides: 'multilayer', coverThicknessUm: 50, midPlaneToOuterCopperUm: 12.5 + 18 },
      0.3,
    )
    expect(multilayer.minInsideRadiusMm).toBe(double.minInsideRadiusMm)
  })

  it('below zero is clamped, with a warning that says what the formula gave', () => {
    const clamped = computeHandbookRadius({ sides: 'single', copperThicknessUm: 18, coverThicknessUm: 50 }, 16)
    expect(clamped).toMatchObject({ clamped: true, minInsideRadiusMm: 0 })
    expect(clamped.warning).toMatch(/^The formula gives -2.8 um: it has no floor/)
  })
})

describe('conductors and damage', () => {
  it('runs in series add, and a return path doubles the drop', () => {
    const wide = { lengthMm: 50, widthMm: 0.2, thicknessUm: 18 }
    const narrow = { lengthMm: 10, widthMm: 0.1, thicknessUm: 18 }
    const of = (runs: (typeof wide)[]) => resistanceOhm({ runs, temperatureDegC: 60 })
    expect(of([wide, narrow])).toBeCloseTo(of([wide]) + of([narrow]), 12)
    const load = { resistanceOhm: 0.5, currentAmp: 0.2 }
    expect(voltageDropVolt(load)).toBe(0.1)
    expect(voltageDropVolt(load, { returnsSameWay: true })).toBe(0.2)
  })

  it('the current relation cautions outside the range that it was fitted to', () => {
    const inside = { currentAmp: 1, temperatureRiseDegC: 20, location: 'internal' } as const
    expect(listCurrentCautions(inside)).toEqual([])
    expect(listCurrentCautions({ ...inside, currentAmp: 20 })).toHaveLength(1)
    expect(listCurrentCautions({ ...inside, currentAmp: 20, temperatureRiseDegC: 5 })).toHaveLength(2)
  })

  it('external conductors carry twice what internal ones do in that relation', () => {
    const section = { widthMm: 0.3, thicknessUm: 18 }
    const at = (location: 'internal' | 'external') => currentCapacityAmp(section, { temperatureRiseDegC: 20, location })
    expect(at('external') / at('internal')).toBeCloseTo(2, 12)
  })

  it('no bending does no damage', () => {
    expect(computeDamage([])).toEqual({ damage: 0, repeatsToFailure: null })
  })
})
