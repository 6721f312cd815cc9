import { describe, expect, test } from 'vitest'
import { formatReport } from '@/lib/cli/evaluation-report'
import { evaluate, readStoredResultsDocument, tallyVerdicts } from '@/lib/engine'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

const design = readDemoDesign('skua-rev-b')
const evaluation = evaluate(design)

describe('computed, stated and judged', () => {
  test('no list adds a typed yes to what was calculated', () => {
    const tally = tallyVerdicts(evaluation.items)
    const stated = evaluation.items.filter(({ basis }) => basis === 'stated')
    expect(stated.length).toBeGreaterThan(5)
    for (const { outcomes } of stated) {
      for (const outcome of outcomes) if (outcome.kind === 'decided') expect(outcome.isStated).toBe(true)
    }
    const sum = (counts: Readonly<Record<string, number>>) => Object.values(counts).reduce((a, b) => a + b, 0)
    expect(sum(tally.computed) + sum(tally.stated) + sum(tally.judgment)).toBe(evaluation.items.length)
    expect(sum(tally.stated)).toBe(stated.length)
  })

  test('the command line counts them in lines of their own and marks what was stated', () => {
    const report = formatReport(design, evaluation)
    const { computed, stated } = tallyVerdicts(evaluation.items)
    expect(report).toMatch(new RegExp(`^ {2}computed .*${computed.meets} meets`, 'm'))
    expect(report).toMatch(new RegExp(`^ {2}stated .*${stated.meets} meets`, 'm'))
    expect(report).toMatch(/meets +teardrop|meets +conductor-corners +Stated: /)
  })

  test('what an older engine recorded as computed is told apart when it is read', () => {
    const recorded = structuredClone(evaluation) as unknown as { items: { basis: string; outcomes: object[] }[] }
    for (const item of recorded.items) {
      if (item.basis === 'stated') item.basis = 'computed'
      for (const outcome of item.outcomes) Reflect.deleteProperty(outcome, 'isStated')
    }
    const lifted = readStoredResultsDocument(recorded)
    const observed = lifted.items.filter(({ basis }) => basis === 'stated').map(({ itemId }) => itemId)
    expect(observed).toContain('conductor-corners')
    expect(tallyVerdicts(lifted.items).computed.meets).toBeLessThan(
      lifted.items.filter(({ verdict }) => verdict === 'meets').length,
    )
  })
})
