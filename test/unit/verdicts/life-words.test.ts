import { describe, expect, test } from 'vitest'
import { formatReport } from '@/lib/cli/evaluation-report'
import { drawLifePlot } from '@/lib/drawing'
import {
  type BendResult,
  CANNOT_TELL,
  type Design,
  evaluate,
  formatComputedReading,
  makeResultsDocument,
  readBendLife,
  readBendLifeRange,
  readConductorLife,
  readDamage,
} from '@/lib/engine'
import { asComputed } from '@/lib/engine/units'
import { makeBends } from '@/lib/package/report/bends'
import { makeSummary } from '@/lib/package/report/opening'
import { listNumberMoves } from '@/lib/review'
import { makeContent } from '../../integration/package/content-factory'
import { makeDocument, makeOptions } from '../drawing/demo-design'
import { listOutcomes, makeOneBend } from './one-bend'

/** So wide that the median life lies past the end of the relation. */
const CAPPED = makeOneBend({ insideRadiusMm: 400 })
/** Half of the least radius at which a strain can be told. */
const TOO_TIGHT = makeOneBend({ insideRadiusMm: 0.23, requiredCycles: 1, survivalPct: 50 })
/** Electrodeposited foil that reaches its cycles by its tensile strength alone. */
const UNPROVEN = makeOneBend({ foilId: 'copper-ed', insideRadiusMm: 5, requiredCycles: 50_000 })

function theBend(design: Design): BendResult {
  const [bend] = evaluate(design).bends
  if (bend === undefined) throw new Error('no bend')
  return bend
}

const say = (bend: BendResult) => formatComputedReading(readBendLife(bend), 'lifeCycles')

function listReportTexts(design: Design): string {
  const content = makeContent()
  const results = evaluate(design)
  const { evaluation } = content.snapshot
  if (evaluation === null) throw new Error('no evaluation')
  const snapshot = { ...content.snapshot, design, evaluation: { ...evaluation, results } }
  return JSON.stringify([makeSummary({ ...content, snapshot }), makeBends({ ...content, snapshot }, null)])
}

describe('a life past the end of the relation', () => {
  test('is longer than its figure in the outcome, its sentence, the headline, the report, the command and the comparison', () => {
    const results = evaluate(CAPPED)
    const frame = { ...makeOptions(CAPPED), document: makeDocument() }
    const [bend] = results.bends
    if (bend === undefined) throw new Error('no bend')
    expect(bend.isLifeAtCap).toBe(true)
    const words = say(bend)
    expect(words).toMatch(/^longer than \d/)
    const [outcome] = listOutcomes(results, 'fatigue-life')
    expect(outcome).toMatchObject({ verdict: 'meets', value: { bound: 'longer-than' } })
    expect(outcome?.summary).toContain(words)
    expect(results.headlineQuantities.at(-1)?.quantity).toMatchObject({ bound: 'longer-than' })
    expect(JSON.stringify(makeResultsDocument(results, results))).toContain(words)
    expect(listReportTexts(CAPPED).split(words).length - 1).toBeGreaterThanOrEqual(3)
    expect(formatReport(CAPPED, results).split('longer than').length - 1).toBeGreaterThanOrEqual(4)
    expect(drawLifePlot(bend, 400, { ...frame, widthPx: 400, heightPx: 300 })?.description).toContain('longer than')
    const [move] = listNumberMoves(evaluate(makeOneBend({ insideRadiusMm: 6 })), results).filter(({ quantity }) =>
      quantity.startsWith('life'),
    )
    expect(move?.after).toMatch(/^longer than /)
    expect(move?.before).toMatch(/^\d/)
  })

  test('at the short end is shorter than its figure, and each end of a range says its own', () => {
    const bend = { ...theBend(makeOneBend()), medianLifeCycles: 1, survivalLifeCycles: 0.1 }
    expect(say(bend)).toBe('shorter than 1 cycle')
    const range = { low: 0.1, high: 1e11 }
    const ends = readBendLifeRange({ ...bend, survivalLifeRangeCycles: range })
    expect(ends).toMatchObject({ low: { bound: 'shorter-than' }, high: { bound: 'longer-than' } })
    const within = readBendLifeRange(theBend(makeOneBend()))
    expect([within?.low.bound, within?.high.bound]).toEqual([undefined, undefined])
  })

  test('uses up less than is counted for it', () => {
    const results = evaluate(makeOneBend({ insideRadiusMm: 400, bends: [{}, { insideRadiusMm: 500 }] }))
    const [damage] = results.damage
    if (damage === undefined) throw new Error('no damage')
    expect(formatComputedReading(readDamage(damage), 'damageFraction')).toMatch(/^less than /)
    expect(listOutcomes(results, 'damage-sum')[0]?.summary).toContain('less than')
  })
})

describe('a life that nobody can tell', () => {
  test.each([
    ['below the least radius', TOO_TIGHT],
    ['by tensile strength alone', UNPROVEN],
  ])('%s: no exit shows a number for it', (_, design) => {
    const results = evaluate(design)
    const [bend] = results.bends
    if (bend === undefined) throw new Error('no bend')
    expect(listOutcomes(results, 'fatigue-life')[0]?.kind).toBe('cannot-tell')
    expect(say(bend)).toBe(CANNOT_TELL)
    expect(readBendLife(bend, 'median')).toBe(CANNOT_TELL)
    expect(readBendLifeRange(bend)).toBe(null)
    for (const each of bend.conductors) expect(readConductorLife(each, bend)).toBe(CANNOT_TELL)
    const headline = results.headlineQuantities.find(({ label }) => label.startsWith('Shortest life'))
    expect(headline).toMatchObject({ quantity: null, because: 'cannot tell for Bend 0' })
    const [number, median] = [bend.survivalLifeCycles, bend.medianLifeCycles].map((cycles) =>
      asComputed(cycles, 'lifeCycles'),
    )
    const report = listReportTexts(design)
    expect(report).not.toContain(`survive ${number}`)
    expect(report).not.toContain(`median ${median}`)
    expect(report).toContain('median cannot tell')
    expect(formatReport(design, results)).toMatch(/median life +cannot tell/)
  })

  test('is told where it falls short even by tensile strength', () => {
    const design = makeOneBend({ foilId: 'copper-ed', insideRadiusMm: 2, requiredCycles: 1e6 })
    expect(listOutcomes(evaluate(design), 'fatigue-life')[0]).toMatchObject({ verdict: 'fails' })
    expect(say(theBend(design))).toMatch(/^\d/)
  })

  test('of one bend leaves the shortest life of the part untold, whatever the others reach', () => {
    const design = makeOneBend({ bends: [{}, { name: 'Tight', insideRadiusMm: 0.23 }] })
    const headlines = evaluate(design).headlineQuantities.slice(-2)
    expect(headlines.map(({ quantity, because }) => [quantity, because])).toEqual([
      [null, 'cannot tell for Tight'],
      [null, 'cannot tell for Tight'],
    ])
  })
})
