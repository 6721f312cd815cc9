import { applyPatch } from 'rfc6902'
import { describe, expect, it, vi } from 'vitest'
import { type Design, evaluate, getOutcomeVerdict, parseDesign, type RemedyReport } from '@/lib/engine'
import { applyDesignPatch, doesDominate, findRemedies, listCounts } from '@/lib/engine/remedies'
import { isBreak } from '@/lib/engine/remedies/moves'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { findPairs, readDemo } from './demo'

// Hundreds of evaluations per report: a busy machine needs more than the usual seconds.
vi.setConfig({ testTimeout: 60_000 })

const CASES: readonly { name: string; design: Design; bendId: string }[] = [
  { name: 'Skua A, hinge', design: readDemo('skua-rev-a'), bendId: 'hinge' },
  { name: 'Skua A, fold', design: readDemo('skua-rev-a'), bendId: 'fold' },
  { name: 'Skua A alternative, hinge', design: readDemo('skua-rev-a-alternative'), bendId: 'hinge' },
  { name: 'Skua B, hinge', design: readDemo('skua-rev-b'), bendId: 'hinge' },
  ...listStartingConstructions().flatMap(({ name, makeDesign }) => {
    const design = makeDesign(name)
    return design.bends.map((bend) => ({ name: `${name}, ${bend.id}`, design, bendId: bend.id }))
  }),
]

const REPORTS = new Map<string, RemedyReport>(
  CASES.map(({ name, design, bendId }) => [name, findRemedies(design, bendId)]),
)

function getReport(name: string): RemedyReport {
  const report = REPORTS.get(name)
  if (report === undefined) throw new Error(`no report of ${name}`)
  return report
}

describe.each(CASES)('remedies of $name', ({ name, design, bendId }) => {
  const report = getReport(name)

  it('shows the state of the design as it is, as a full evaluation gives it', () => {
    expectStateOfEvaluation(design, bendId, report.before)
  })

  it('shows for every remedy what a full evaluation of the patched design gives', () => {
    for (const remedy of report.remedies) {
      const patched = applyDesignPatch(design, remedy.patch)
      const parsed = parseDesign(patched)
      expect(parsed.ok ? [] : parsed.issues, remedy.id).toEqual([])
      expectStateOfEvaluation(patched, bendId, remedy.after)
    }
  })

  it('is undone to the byte by the patch that takes it back', () => {
    const text = JSON.stringify(design)
    for (const { patch, undoPatch, id } of report.remedies) {
      const copy = JSON.parse(text)
      expect(
        applyPatch(copy, [...patch]).filter((error) => error !== null),
        id,
      ).toEqual([])
      expect(JSON.stringify(copy), id).not.toBe(text)
      expect(
        applyPatch(copy, [...undoPatch]).filter((error) => error !== null),
        id,
      ).toEqual([])
      expect(JSON.stringify(copy), id).toBe(text)
    }
  })

  it('keeps no remedy that another, or leaving the design as it is, beats on every count', () => {
    // What it makes fail is one more count.
    const counted = report.remedies.map((remedy) => {
      const breaks = remedy.movedItems.filter(isBreak).length
      return [
        ...listCounts({ ...remedy, changeCount: remedy.changes.length, countBreaks: () => breaks }, report.before),
        breaks,
      ]
    })
    const asItIs = [
      ...listCounts(
        { id: '', after: report.before, changeCount: 0, forbiddenBy: [], worsens: [], countBreaks: () => 0 },
        report.before,
      ),
      0,
    ]
    for (const [at, counts] of counted.entries()) {
      const beatenBy = [asItIs, ...counted.filter((_, other) => other !== at)].filter((other) =>
        isBeaten(counts, other),
      )
      expect(beatenBy, report.remedies[at]?.id).toEqual([])
    }
  })

  it('counts what it tried', () => {
    const { tried, leftOut, remedies, search } = report
    expect(remedies.length + leftOut).toBe(tried.alone + tried.inPairs + tried.inLargerSets)
    expect(remedies.every(({ changes }) => changes.length >= 1 && changes.length <= search.deepest)).toBe(true)
    expect(tried.inLargerSets > 0).toBe(search.deepest > 2)
    expect(search.isStopped).toBe(false)
    expect(new Set(remedies.map(({ id }) => id)).size).toBe(remedies.length)
  })

  it('lists what is allowed before what a need forbids, and what meets first', () => {
    const order = ['meets', 'thin-margin', 'fails']
    const keys = report.remedies.map(
      ({ forbiddenBy, after }) => Number(forbiddenBy.length > 0) * 10 + order.indexOf(after.verdict),
    )
    expect(keys).toEqual([...keys].sort((a, b) => a - b))
  })
})

/** Brute force, written out: no count worse beyond rounding, one better. */
function isBeaten(counts: readonly number[], by: readonly number[]): boolean {
  const differences = counts.map((own, at) => {
    const other = by[at] ?? Number.NaN
    return Math.abs(own - other) <= 1e-9 * Math.max(Math.abs(own), Math.abs(other)) ? 0 : own - other
  })
  return differences.every((difference) => difference >= 0) && differences.some((difference) => difference > 0)
}

function expectStateOfEvaluation(design: Design, bendId: string, state: RemedyReport['before']): void {
  const evaluation = evaluate(design)
  const bend = evaluation.bends.find((each) => each.bendId === bendId)
  const verdictOf = (itemId: string) =>
    evaluation.items
      .find((item) => item.itemId === itemId)
      ?.outcomes.filter((outcome) => outcome.places.some(({ kind, id }) => kind === 'bend' && id === bendId))
      .map(getOutcomeVerdict)[0] ?? 'not-applicable'
  expect(state).toMatchObject({
    strainVerdict: verdictOf('bend-strain'),
    lifeVerdict: verdictOf('fatigue-life'),
    peakStrainPct: bend?.peakStrainPct,
    peakRangePct: bend?.peakRangePct,
    allowablePct: bend?.allowablePct,
    minRadiusMm: bend?.minRadiusByStrainMm,
    survivalLifeCycles: bend?.survivalLifeCycles,
    momentNmm: bend?.momentNmm,
    zones: evaluation.zones.map(({ zoneId, name, thicknessUm }) => ({ zoneId, name, thicknessUm })),
  })
}

describe('findRemedies', () => {
  it('leaves the design that it is given alone', () => {
    const design = deepFreeze(readDemo('skua-rev-a'))
    const text = JSON.stringify(design)
    findPairs(design, 'hinge')
    expect(JSON.stringify(design)).toBe(text)
  })

  it('gives the same report twice', () => {
    const design = readDemo('skua-rev-a')
    expect(findPairs(design, 'hinge')).toEqual(findPairs(design, 'hinge'))
  })

  it('names a bend that is not there', () => {
    expect(() => findRemedies(readDemo('pipit-rev-a'), 'nowhere')).toThrow('no bend "nowhere"')
  })

  it('says what is missing where a bend cannot be computed', () => {
    const design = readDemo('skua-rev-a')
    const [bend] = design.bends
    if (bend === undefined) throw new Error('no bend')
    bend.use = null
    const report = findRemedies(design, bend.id)
    expect(report.notTried).toBe(`Missing: use of bend ${bend.name}.`)
    expect(report.remedies).toEqual([])
  })

  it('compares cost where it can be found, and leaves it open elsewhere', () => {
    const design = readDemo('skua-rev-a')
    const byLayers = (each: Design) => each.construction.layers.length
    expect(findPairs(design, 'hinge', { costOf: byLayers }).before.costIndex).toBe(17)
    expect(findPairs(design, 'hinge').before.costIndex).toBeNull()
  })
})

describe('dominance', () => {
  it('needs one count that is better and none that is worse', () => {
    expect(doesDominate([1, 2], [1, 3])).toBe(true)
    expect(doesDominate([1, 3], [1, 3])).toBe(false)
    expect(doesDominate([0, 4], [1, 3])).toBe(false)
  })

  it('takes a difference in the last digits for a tie', () => {
    expect(doesDominate([1, 2], [1, 2 + 1e-12])).toBe(false)
  })
})

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    Object.freeze(value)
    for (const part of Object.values(value)) deepFreeze(part)
  }
  return value
}
