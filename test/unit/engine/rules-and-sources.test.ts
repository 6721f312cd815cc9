import { describe, expect, it } from 'vitest'
import {
  computeHandbookRadius,
  computeRatioRadius,
  DEFAULT_RATIO_TABLE_ID,
  findRatioTable,
  RATIO_TABLES,
  ratioLayersFor,
} from '@/lib/engine/bending'
import { getSourceOwner } from '@/lib/engine/catalogue/limits'
import { FATIGUE_RELATION_CAUTION } from '@/lib/engine/cautions'
import { currentCapacityAmp, listCurrentCautions, resistanceOhm, voltageDropVolt } from '@/lib/engine/conductors'
import { computeDamage } from '@/lib/engine/life'
import { describeLimitOwner } from '@/lib/engine/results'
import { citeSource, SOURCES, type Source, type SourceKey } from '@/lib/engine/sources'

const sourceKeys = Object.keys(SOURCES) as SourceKey[]

describe('sources', () => {
  it.each(sourceKeys)('%s is cited with what it stands on', (key) => {
    const source: Source = SOURCES[key]
    const cited = citeSource(key)
    expect(cited.length).toBeGreaterThan(10)
    if (source.number !== null) expect(cited).toContain(source.number)
    if (source.year !== null) expect(cited).toContain(String(source.year))
    if (source.kind === 'memory') expect(cited).toMatch(/from memory$/)
    if (source.kind === 'common-practice') expect(cited).toMatch(/common practice/)
    if (source.kind === 'quoted') expect(cited).toContain(`as quoted by ${source.quotedBy}`)
    if (source.kind === 'abstract') expect(cited).toMatch(/scope or abstract read$/)
    if (source.kind === 'published') expect(cited).not.toMatch(/quoted|memory|practice|choice/)
    expect(`${cited} ${source.note}`).not.toMatch(/https?:|www\.|\.com/)
  })
})

describe('owners of limits', () => {
  it('carry the kind of the source: what is known through a guide is quoted, never published', () => {
    for (const key of sourceKeys) {
      const source: Source = SOURCES[key]
      const owner = getSourceOwner(key)
      expect(owner.kind).toBe(source.kind)
      const words = describeLimitOwner(owner)
      if (source.kind === 'quoted') expect(words).toContain(`as quoted by ${source.quotedBy}`)
      expect(words.includes('published'), words).toBe(source.kind === 'published')
    }
  })

  it('name themselves in words', () => {
    expect(describeLimitOwner(getSourceOwner('ipc2223'))).toBe('IPC-2223, as quoted by fabricator guides')
    expect(describeLimitOwner(getSourceOwner('ipc2223Recalled'))).toBe('IPC-2223, from memory')
    expect(describeLimitOwner(getSourceOwner('flexuralEndurance'))).toBe('IPC-TM-650 2.4.3 (published)')
    expect(describeLimitOwner(getSourceOwner('commonPractice'))).toBe('common practice')
    expect(describeLimitOwner(getSourceOwner('ownChoice'))).toBe('our choice')
    expect(describeLimitOwner({ kind: 'workspace', name: 'Quillmoor Instruments' })).toBe(
      'Quillmoor Instruments (workspace)',
    )
  })

  it('no standard is cited as read that only a guide quotes: those opened are listed', () => {
    const read = sourceKeys.filter((key) => SOURCES[key].kind === 'published' && SOURCES[key].number !== null)
    expect(read.sort()).toEqual([
      'bowAndTwist',
      'flexUses',
      'flexuralEndurance',
      'militaryFlexMarking',
      'militaryFlexRework',
    ])
  })

  it('no source is written twice', () => {
    const titles = sourceKeys.map((key) => `${SOURCES[key].number} ${SOURCES[key].title} ${SOURCES[key].year}`)
    expect(new Set(titles).size).toBe(titles.length)
  })
})

describe('the fatigue relation', () => {
  it('is quoted, and says that its use on bent foil is an assumption', () => {
    const cited = citeSource('fatigueDuctility')
    expect(cited).toContain('ANSI/VITA 51.1')
    expect(cited).toContain('IPC-TR-579')
    expect(cited).toContain('as quoted by')
    expect(SOURCES.fatigueDuctility.note).toContain('bent foil is an assumption')
    expect(FATIGUE_RELATION_CAUTION).toContain('bent foil is an assumption')
    expect(citeSource('mandrelStrain')).toMatch(/from memory$/)
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
    expect(clamped.warning).toMatch(/^The formula gives −2\.75 µm: it has no floor/)
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
    expect(computeDamage([])).toEqual({ damage: 0, repeatsToFailure: null, repeatsRange: null })
  })
})
