import { describe, expect, it } from 'vitest'
import {
  type BendResult,
  computeTornado,
  type Design,
  evaluate,
  findLibraryMaterial,
  readStoredResults,
  type TestedLife,
} from '@/lib/engine'
import type { FlexTestRow } from '@/lib/engine/flex-tests'
import { findRemedies } from '@/lib/engine/remedies'
import { makeBends } from '@/lib/package/report/bends'
import { makeBrief } from '@/lib/package/report/opening'
import { makeContent } from '../../integration/package/content-factory'
import { listOutcomes, makeOneBend, type OneBend } from '../verdicts/one-bend'
import { FABRICATOR, livesOf, makeRows, WORKSPACE } from './rows'

const ROWS = makeRows({ strainRangePct: 0.233 })
const LIVES = livesOf(ROWS)

/** The slope of the brief is left to its default, as nobody typed one. */
function makeDesign(bend: OneBend = {}, brief: Partial<Design['brief']> = {}): Design {
  const design = makeOneBend({ requiredCycles: 5000, ...bend })
  return { ...design, brief: { ...design.brief, lifeWeibullSlope: null, ...brief } }
}

function bendOf(design: Design, testedLives: readonly TestedLife[] = LIVES): BendResult {
  const [bend] = evaluate(design, { testedLives }).bends
  if (bend === undefined) throw new Error('no bend')
  return bend
}

describe('own flex tests in a bend that they cover', () => {
  const plain = bendOf(makeDesign(), [])
  const tested = bendOf(makeDesign())

  it('give slope and ductility, and the bend says whose they are', () => {
    expect(plain.ownTests).toEqual([])
    expect(tested.ownTests).toHaveLength(1)
    expect(tested.ownTests[0]).toMatchObject({
      layerId: 'foil',
      owner: WORKSPACE,
      set: 'Hinge 18',
      specimens: 12,
      failures: 9,
      reports: ['QM-T-0412'],
      temperatureDegC: 23,
    })
    expect(tested.medianLifeCycles).not.toBe(plain.medianLifeCycles)
  })

  it('use the lower bound of the slope, and the bounds of the ductility as its range', () => {
    const { slope, fatigueDuctility } = LIVES[0] ?? {}
    const [use] = tested.ownTests
    expect(use?.usedSlope).toBe(slope?.low)
    expect(use?.fatigueDuctility).toEqual(fatigueDuctility)
    // Weibull: N(1 %) / N(50 %) = (ln 0.99 / ln 0.5)^(1 / slope).
    const ratio = (Math.log(0.99) / Math.log(0.5)) ** (1 / (slope?.low ?? 1))
    expect((tested.survivalLifeCycles ?? 0) / (tested.medianLifeCycles ?? 1)).toBeCloseTo(ratio, 9)
    const narrow = bendOf(
      makeDesign(),
      withDuctility((each) => ({ ...each, low: each.value, high: each.value })),
    )
    expect(narrow.survivalLifeRangeCycles?.low).toBeGreaterThan(tested.survivalLifeRangeCycles?.low ?? 0)
  })

  it('never meet by the best estimate alone: what the lower bound misses is a thin margin or a failure', () => {
    const required = Math.floor((tested.survivalLifeRangeCycles?.low ?? 0) * 1.2)
    const [outcome] = listOutcomes(
      evaluate(makeDesign({ requiredCycles: required }), { testedLives: LIVES }),
      'fatigue-life',
    )
    expect(outcome?.kind === 'decided' ? outcome.verdict : '').not.toBe('meets')
  })

  it('carry a caution with set, counts, bounds, range and what is extrapolated', () => {
    const [caution] = tested.cautions.filter((each) => each.includes('own tests'))
    for (const words of ['Hinge 18', 'Quillmoor', 'n = 12, 9 failed', 'worse end', 'R/t 43', '23 °C', 'extrapolated']) {
      expect(caution).toContain(words)
    }
    expect(caution).toContain('99 % survival lies beyond the first of 12 specimens')
    expect(tested.cautions.join()).not.toContain('Weibull slope 2 is a default')
    expect(plain.cautions.join()).toContain('Weibull slope 2 is a default')
  })

  it('are named by the verdict on life', () => {
    const [outcome] = listOutcomes(evaluate(makeDesign(), { testedLives: LIVES }), 'fatigue-life')
    expect(outcome?.summary).toContain('from own tests (set Hinge 18 of Quillmoor (workspace), n = 12, 9 failed)')
  })

  it('move the tornado and the remedies with the bend', () => {
    const design = makeDesign()
    expect(computeTornado(design, 'bend-0', 'foil', LIVES)?.survivalLifeCycles).toBeCloseTo(
      tested.survivalLifeCycles ?? 0,
      6,
    )
    const report = findRemedies(design, 'bend-0', { testedLives: LIVES, mostChanges: 1 })
    expect(report.before?.survivalLifeCycles).toBe(tested.survivalLifeCycles)
  })
})

const withDuctility = (change: (each: NonNullable<TestedLife['fatigueDuctility']>) => TestedLife['fatigueDuctility']) =>
  LIVES.map((each) => ({
    ...each,
    fatigueDuctility: each.fatigueDuctility === null ? null : change(each.fatigueDuctility),
  }))

describe('own flex tests are not used where one thing differs', () => {
  it.each<[string, Partial<FlexTestRow>]>([
    ['another foil record', { foil: 'copper-ra-lta' }],
    ['another foil thickness', { foilUm: 22 }],
    ['another motion', { motion: 'reversed' }],
    ['a wider radius over thickness', { insideRadiusMm: 5 }],
    ['a tighter radius over thickness', { insideRadiusMm: 3 }],
  ])('%s', (_, change) => {
    const unused = bendOf(makeDesign(), livesOf(makeRows({ strainRangePct: 0.233, ...change })))
    expect(unused.ownTests).toEqual([])
    expect(unused).toEqual(bendOf(makeDesign(), []))
  })

  it.each<[string, Design]>([
    ['folded once', makeDesign({ bends: [{ use: 'fold-once' }] })],
    ['flexed to install', makeDesign({ bends: [{ use: 'flex-to-install' }] })],
    ['flexed between two radii', makeDesign({ bends: [{ flexesFromRadiusMm: 12 }] })],
    ['folded before it flexes', makeDesign({ bends: [{ foldedToRadiusMm: 2 }] })],
    ['pulled as it flexes', makeDesign({ bends: [{ pullN: 3 }] })],
    ['twisted as it flexes', makeDesign({ bends: [{ twistDeg: 30, twistLengthMm: 30 }] })],
    ['plated copper on the foil', makeDesign({ copper: { plating: PLATED } })],
    ['a foil of the design’s own under the same id', { ...makeDesign(), materials: ownCopper() }],
  ])('%s', (_, design) => {
    expect(bendOf(design).ownTests).toEqual([])
    expect(bendOf(design)).toEqual(bendOf(design, []))
  })

  it('keep the ductility of the record where the strain is another, and take the slope', () => {
    const [use] = bendOf(makeDesign(), livesOf(makeRows({ strainRangePct: 0.4 }))).ownTests
    expect(use?.fatigueDuctility).toBeNull()
    expect(use?.usedSlope).not.toBeNull()
  })

  it('leave a slope that the brief states, and take the ductility', () => {
    const typed = bendOf(makeDesign({}, { lifeWeibullSlope: 3 }))
    expect(typed.ownTests[0]).toMatchObject({ slope: null, usedSlope: null })
    const ratio = (Math.log(0.99) / Math.log(0.5)) ** (1 / 3)
    expect((typed.survivalLifeCycles ?? 0) / (typed.medianLifeCycles ?? 1)).toBeCloseTo(ratio, 9)
  })

  it('have no slope for results where its lower bound is open or below what the relation holds for', () => {
    for (const low of [null, 0.4]) {
      const open = LIVES.map((each) => ({
        ...each,
        fatigueDuctility: null,
        medians: [],
        slope: { value: 2, low, high: 3 },
      }))
      expect(bendOf(makeDesign(), open).ownTests).toEqual([])
    }
  })
})

describe('where more cycles are required than were tested', () => {
  const beyond = makeDesign({ requiredCycles: 95_000 })
  const slopeOf = (low: number) =>
    LIVES.map((each) => ({ ...each, fatigueDuctility: null, medians: [], slope: { value: low, low, high: 9 } }))

  it('tests that are kinder than the defaults are not used', () => {
    expect(bendOf(beyond, slopeOf(4)).ownTests).toEqual([])
    const ductile = withDuctility(() => ({ value: 1.2, low: 0.9, high: 1.5 })).map((each) => ({
      ...each,
      medians: [],
      slope: null,
    }))
    expect(bendOf(beyond, ductile).ownTests).toEqual([])
    expect(bendOf(makeDesign(), ductile).ownTests).toHaveLength(1)
  })

  it('tests that are less kind count, and the caution says so', () => {
    const bend = bendOf(beyond, slopeOf(1.2))
    expect(bend.ownTests[0]?.usedSlope).toBe(1.2)
    expect(bend.cautions.join()).toContain('More cycles are required than were tested')
    expect(bend.survivalLifeCycles).toBeLessThan(bendOf(beyond, []).survivalLifeCycles ?? 0)
  })

  it('no requirement is met by leaving tests out that fail a lesser one', () => {
    const verdicts = [300, 1000, 3000, 9000, 30_000, 91_000, 300_000].map((requiredCycles) => {
      const [outcome] = listOutcomes(evaluate(makeDesign({ requiredCycles }), { testedLives: LIVES }), 'fatigue-life')
      return outcome?.kind === 'decided' ? ['meets', 'thin-margin', 'fails'].indexOf(outcome.verdict) : 0
    })
    expect(verdicts).toEqual(verdicts.toSorted((a, b) => a - b))
    expect(new Set(verdicts).size).toBeGreaterThan(1)
  })
})

describe('circuits that give no ductility and broke sooner than the relation says', () => {
  /** Strain not stated; a tenth of the lives that the relation gives. */
  const short = livesOf(makeRows({ strainRangePct: null, result: 'failed' }, [3000, 4200, 5100, 6000, 7400, 8800]))
  const low = short[0]?.medians[0]?.lowCycles ?? 0

  it('shorten all lives to the low bound of their median, and the allowable with them', () => {
    const bend = bendOf(makeDesign(), short)
    const plain = bendOf(makeDesign(), [])
    expect(bend.ownTests[0]?.lifeFraction).toBeCloseTo(low / (plain.medianLifeCycles ?? 1), 9)
    expect(bend.medianLifeCycles).toBeCloseTo(low, 6)
    expect(bend.allowablePct).toBeLessThan(plain.allowablePct ?? 0)
    expect(bend.cautions.join()).toContain("of the fatigue relation's (low 90 % bound of the median tested)")
  })

  it('let nothing meet that they failed', () => {
    const design = makeDesign({ requiredCycles: 5000 })
    const [outcome] = listOutcomes(evaluate(design, { testedLives: short }), 'fatigue-life')
    expect(outcome?.kind === 'decided' ? outcome.verdict : '').toBe('fails')
  })

  it('strain and life agree: at the life that is reached the allowable is the strain', () => {
    const reached = Math.round(bendOf(makeDesign(), short).survivalLifeCycles ?? 0)
    const bend = bendOf(makeDesign({ requiredCycles: reached }), short)
    expect((bend.allowablePct ?? 0) / (bend.peakStrainPct ?? 1)).toBeCloseTo(1, 2)
  })

  it('never lengthen a life', () => {
    const long = short.map((each) => ({ ...each, slope: null, medians: [{ radiusRatio: 43, lowCycles: 9e9 }] }))
    expect(bendOf(makeDesign(), long)).toEqual(bendOf(makeDesign(), []))
  })

  it('count by the next tighter radius that was tested', () => {
    const two = short.map((each) => ({
      ...each,
      radiusRatio: { low: 20, high: 80 },
      medians: [
        { radiusRatio: 20, lowCycles: 1000 },
        { radiusRatio: 80, lowCycles: 60_000 },
      ],
    }))
    expect(bendOf(makeDesign(), two).medianLifeCycles).toBeCloseTo(1000, 6)
  })
})

describe('several sets', () => {
  it('of one owner: the one with most failures', () => {
    const few = livesOf(makeRows({ set: 'Early', strainRangePct: 0.233 }, [20_000, 50_000, 80_000]))
    expect(bendOf(makeDesign(), [...few, ...LIVES]).ownTests[0]?.set).toBe('Hinge 18')
  })

  it('of several owners: the one that gives the shorter life', () => {
    const steep = LIVES.map((each) => ({ ...each, owner: FABRICATOR, slope: { value: 6, low: 5, high: 7 } }))
    const flat = LIVES.map((each) => ({ ...each, owner: FABRICATOR, slope: { value: 1, low: 0.8, high: 1.4 } }))
    const slopeOwner = (lives: readonly TestedLife[]) =>
      bendOf(makeDesign(), [...LIVES, ...lives]).ownTests.find(({ usedSlope }) => usedSlope !== null)?.owner
    expect(slopeOwner(steep)).toEqual(WORKSPACE)
    expect(slopeOwner(flat)).toEqual(FABRICATOR)
  })
})

it('bare foil gives its ductility to a bend of the same strain, and no slope', () => {
  // Mandrel at which the foil has the strain range of the bend, 0.233 %: one way t / (2 R + t).
  const mandrelMm = (18 / 0.00233 - 18) / 2000
  const rows = makeRows(
    { kind: 'bare-foil', thicknessUm: 18, insideRadiusMm: mandrelMm, strainRangePct: null },
    [31_000, 42_000, 47_000, 55_000, 64_000],
  )
  const [use] = bendOf(makeDesign(), livesOf(rows)).ownTests
  expect(use).toMatchObject({ kind: 'bare-foil', slope: null, usedSlope: null })
  expect(use?.fatigueDuctility?.value).toBeGreaterThan(0)
  const tighter = rows.map((row) => ({ ...row, insideRadiusMm: mandrelMm / 2 }))
  expect(bendOf(makeDesign(), livesOf(tighter)).ownTests).toEqual([])
})

it('results of an earlier engine rest on no tests', () => {
  const results = evaluate(makeDesign())
  const older = { ...results, bends: results.bends.map(({ ownTests: _none, ...bend }) => bend) }
  expect(readStoredResults(JSON.stringify(older)).bends[0]?.ownTests).toEqual([])
})

const PLATED = { process: 'panel', thicknessUm: 15, toleranceUm: 3, materialId: 'copper-plated' } as const

function ownCopper(): Design['materials'] {
  const copper = findLibraryMaterial('copper-ra')
  if (copper === null) throw new Error('no copper')
  return [copper]
}

it('the report names the tests beside the life, with their caution', () => {
  const content = makeContent()
  const { evaluation } = content.snapshot
  if (evaluation === null) throw new Error('no evaluation')
  const design = makeDesign()
  const reportOf = (testedLives: readonly TestedLife[]) => {
    const results = evaluate(design, { testedLives })
    const snapshot = { ...content.snapshot, design, evaluation: { ...evaluation, results } }
    return JSON.stringify([makeBrief({ ...content, snapshot }), makeBends({ ...content, snapshot }, null)])
  }
  const report = reportOf(LIVES)
  expect(report).toContain('from own tests (set Hinge 18 of Quillmoor (workspace), n = 12, 9 failed)')
  expect(report).toContain('99 % survival lies beyond the first of 12 specimens')
  expect(report).toContain('own flex tests where a bend names them')
  expect(reportOf([])).not.toContain('own tests')
})
