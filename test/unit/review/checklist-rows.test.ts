import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { makeChecklistRows, makeFigureRows } from '@/app/_components/review/checklist-rows'
import { evaluate } from '@/lib/engine'
import { parseDesignText } from '@/lib/engine/design'

type Rows = Parameters<typeof makeChecklistRows>

it('an item is a row with its result, what a person said of it, and its waivers', () => {
  const item = (itemId: string, more: object) => ({
    itemId,
    result: { verdict: 'fails', basis: 'computed', headline: 'The bend is too tight.' },
    follows: [],
    state: 'open',
    answer: null,
    waivers: [],
    ...more,
  })
  const answer = {
    reason: 'Agreed with the supplier.',
    by: { name: 'Perrin Ashgrove' },
    at: '2026-11-03T10:00:00.000Z',
  }
  const items = [
    item('one', { state: 'concern', answer, waivers: [{ state: 'approved', reason: 'One build.' }] }),
    item('two', { follows: ['one'] }),
    item('unknown to the catalogue', {}),
  ] as unknown as Rows[0]
  const text = (question: string) => ({ section: 'geometry', severity: 'blocking', question })
  const texts = { one: text('Does it bend?'), two: text('Does it last?') } as unknown as Rows[1]
  const [head, first, second, ...rest] = makeChecklistRows(items, texts)
  expect(rest).toEqual([])
  expect(head).toHaveLength(first?.length ?? 0)
  expect(first?.slice(1)).toEqual([
    ...['one', 'Does it bend?', 'blocking', 'fails', 'calculated', 'The bend is too tight.', 'concern'],
    ...['Agreed with the supplier.', 'Perrin Ashgrove', '2026-11-03T10:00:00.000Z', 'approved: One build.'],
  ])
  expect(second?.slice(4, 5)).toEqual(['follows'])
})

describe('the figures behind the items', () => {
  const parsed = parseDesignText(readFileSync('seed/designs/skua-rev-a.json', 'utf8'))
  if (!parsed.ok) throw new Error('the demo design cannot be read')
  const { items: results } = evaluate(parsed.value)
  const items = results.map((result) => ({ itemId: result.itemId, result })) as unknown as Rows[0]
  const texts = Object.fromEntries(results.map(({ itemId }) => [itemId, {}])) as unknown as Rows[1]
  const firstKey = results.flatMap(({ outcomes }) => outcomes).find((each) => each.kind === 'decided')?.sourceKey ?? ''
  const [head = [], ...rows] = makeFigureRows(items, texts, { [firstKey]: 'as cited' })
  const at = (name: string) => head.indexOf(name)

  it('are a row for each place of each item, with numbers as numbers', () => {
    const outcomes = results.flatMap(({ itemId, outcomes: all }) => all.map((outcome) => ({ itemId, outcome })))
    expect(rows).toHaveLength(outcomes.length)
    for (const [index, { itemId, outcome }] of outcomes.entries()) {
      const row = rows[index] ?? []
      expect(row).toHaveLength(head.length)
      expect(row[at('Item')]).toBe(itemId)
      expect(row[at('What was found')]).toBe(outcome.summary)
      if (outcome.kind !== 'decided') continue
      const { value, margin, limit } = outcome
      if (value.bound === undefined) expect(row[at('Value')]).toBeCloseTo(value.value, 3)
      else expect(row[at('Value')]).toMatch(/^[<>≤≥]/)
      expect(Math.sign(Number(row[at('Margin')]))).toBe(Math.sign(margin))
      expect(row[at('Limit')]).toBeCloseTo(limit.value, 3)
    }
    expect(rows.some((row) => row[at('Result')] === 'fails' && typeof row[at('Margin')] === 'number')).toBe(true)
    expect(rows.some((row) => String(row[at('Source')]).includes('as cited'))).toBe(true)
  })

  it('say nothing of a limit that its owner keeps', () => {
    const outcome = {
      kind: 'withheld',
      places: [],
      summary: 'Well inside.',
      verdict: 'meets',
      band: 'well-inside',
      value: { value: 80, unit: 'um' },
      owner: { kind: 'fabricator', name: 'Brackenfold' },
    }
    const kept = [{ itemId: 'one', result: { outcomes: [outcome] } }] as unknown as Rows[0]
    const [, row = []] = makeFigureRows(kept, { one: {} } as unknown as Rows[1], {})
    expect(row.filter((cell) => cell !== null)).toEqual([
      ...['one', 'Design', 'meets', 80, 'µm', 'Brackenfold (fabricator)', 'Well inside.'],
    ])
  })
})
