import { describe, expect, test } from 'vitest'
import { formatReport } from '@/lib/cli/evaluation-report'
import { evaluate, ITEM_BASES, readStoredResultsDocument, tallyVerdicts } from '@/lib/engine'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

const design = readDemoDesign('skua-rev-b')
const evaluation = evaluate(design)

describe('calculated, typed, stated and judged', () => {
  test('no list adds a typed number or a yes to what was calculated', () => {
    const tally = tallyVerdicts(evaluation.items)
    for (const { basis, outcomes } of evaluation.items) {
      if (basis !== 'computed') continue
      for (const outcome of outcomes) {
        expect(outcome.kind === 'said' || (outcome.kind === 'decided' && outcome.isTyped === true)).toBe(false)
      }
    }
    const sum = (counts: Readonly<Record<string, number>>) => Object.values(counts).reduce((a, b) => a + b, 0)
    const byBasis = ITEM_BASES.map((basis) => sum(tally[basis]))
    expect(byBasis.reduce((a, b) => a + b, 0)).toBe(evaluation.items.length)
    expect(Math.min(...byBasis)).toBeGreaterThan(5)
  })

  test('a recorded yes never meets by itself, a recorded no fails', () => {
    const stated = evaluation.items.filter(({ basis }) => basis === 'stated')
    expect(new Set(stated.map(({ verdict }) => verdict))).toEqual(new Set(['needs-judgment']))
    const denied = structuredClone(design)
    denied.features.routing.cornersCurved = false
    const corners = evaluate(denied).items.find(({ itemId }) => itemId === 'conductor-corners')
    expect(corners).toMatchObject({ verdict: 'fails', basis: 'stated' })
  })

  test('what was said has no figure and no limit', () => {
    const said = evaluation.items.flatMap(({ outcomes }) => outcomes.filter(({ kind }) => kind === 'said'))
    expect(said.length).toBeGreaterThan(10)
    for (const outcome of said) expect(JSON.stringify(outcome)).not.toMatch(/"limit"|"margin"|none allowed|deviation/)
  })

  test('the command line counts them in lines of their own and marks what was typed or stated', () => {
    const report = formatReport(design, evaluation)
    const { computed, typed } = tallyVerdicts(evaluation.items)
    expect(report).toMatch(new RegExp(`^ {2}calculated .*${computed.meets} meets`, 'm'))
    expect(report).toMatch(new RegExp(`^ {2}typed and compared .*${typed.meets} meets`, 'm'))
    expect(report).toMatch(/conductor-corners +Stated: /)
  })

  test('what an older engine recorded as computed is told apart when it is read', () => {
    const recorded = structuredClone(evaluation) as unknown as {
      items: { basis: string; verdict: string; outcomes: { kind: string; equation?: string }[] }[]
    }
    for (const item of recorded.items) {
      if (item.basis !== 'stated') continue
      item.basis = 'computed'
      item.verdict = 'meets'
      item.outcomes = item.outcomes.map((outcome) => ({
        ...outcome,
        kind: 'decided',
        equation: 'recorded observation',
      }))
    }
    const observed = readStoredResultsDocument(recorded).items.filter(({ basis }) => basis === 'stated')
    expect(observed.map(({ itemId }) => itemId)).toContain('conductor-corners')
  })
})
