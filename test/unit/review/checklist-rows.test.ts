import { expect, it } from 'vitest'
import { makeChecklistRows } from '@/app/_components/review/checklist-rows'

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
