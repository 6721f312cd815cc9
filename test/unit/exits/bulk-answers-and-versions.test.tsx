import { describe, expect, it } from 'vitest'
import { VersionChanges } from '@/app/_components/fabrication/version-changes'
import { BulkAnswer } from '@/app/_components/review/bulk-answer'
import type { RevisionView, SheetVersionView } from '@/lib/data'
import { renderScreen } from '@/test/factories/render-screen'

type Item = RevisionView['items'][number]

const wordsOf = (markup: string) =>
  markup
    .replaceAll(/<!-- -->/g, '')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
const stay = () => {}

const item = (itemId: string, verdict: Item['result']['verdict'], basis: Item['result']['basis']): Item =>
  ({
    itemId,
    answerVersion: 0,
    legalStates: verdict === 'fails' ? ['open', 'concern'] : ['open', 'meets', 'concern'],
    result: { verdict, basis },
  }) as unknown as Item

const show = (chosen: readonly Item[]) =>
  wordsOf(renderScreen(<BulkAnswer revisionId="b" chosen={chosen} open={chosen} onChoose={stay} onLeave={stay} />))

describe('one answer to several items', () => {
  it('asks to choose, and offers no answer, before an item is chosen', () => {
    const text = show([])
    expect(text).toContain('Choose items by the box in front of each question.')
    expect(text).not.toContain('These items are')
  })

  it('offers what all of them can be given, and says how many rule "meets" out', () => {
    const both = show([item('computed', 'meets', 'computed'), item('failed', 'fails', 'computed')])
    expect(both).toContain('2 items chosen.')
    expect(both).toContain('open: not answered yet')
    expect(both).toContain('1 item cannot be answered “meets” together with others')
    expect(both).toContain('Record the answer to 2 items')
    const one = show([item('computed', 'meets', 'computed')])
    expect(one).not.toContain('cannot be answered')
  })

  it('rules "meets" out where a person has to say where they looked', () => {
    expect(show([item('seen', 'meets', 'stated')])).toContain('1 item cannot be answered')
  })
})

const VERSION = {
  version: 1,
  issuedOn: '2026-10-01',
  note: '',
  setBy: { id: 'l', name: 'Linnea' },
  setAt: '2026-10-01',
}

const view = (comparison: SheetVersionView['comparison']): SheetVersionView => ({
  company: { id: 'brackenfold', kind: 'fabricator', name: 'Brackenfold Circuits' },
  mayRestore: true,
  version: VERSION,
  sheet: { kind: 'shelf', content: { buildTimeDays: 20, rows: [] } },
  newestVersion: 3,
  others: [
    { ...VERSION, version: 3 },
    { ...VERSION, version: 2 },
  ],
  comparison,
})
const NOTHING = { columns: ['Parameter'], added: [], changed: [], removed: [], unchangedCount: 4 }

describe('two versions of a sheet', () => {
  it('say what differs from the earlier to the later, rows and build time', () => {
    const changed = [{ before: ['Width', '0.1'], after: ['Width', '0.075'] }]
    const rows = { ...NOTHING, columns: ['Parameter', 'Comfortable'], changed, unchangedCount: 3 }
    const markup = renderScreen(
      <VersionChanges view={view({ from: 1, to: 3, rows, buildTimeDays: { before: 20, after: null } })} />,
    )
    const text = wordsOf(markup)
    expect(text).toContain('From version 1 to version 3')
    expect(text).toContain('0 added, 1 changed, 0 removed, 3 the same.')
    expect(text).toContain('Build time: 20 days to not stated.')
    expect(text).toContain('Width: Comfortable 0.1 to 0.075')
    expect(markup).toContain('href="/companies/brackenfold/versions/shelf/1?against=2"')
  })

  it('are said to hold the same only where build time is the same too', () => {
    const same = renderScreen(<VersionChanges view={view({ from: 1, to: 3, rows: NOTHING, buildTimeDays: null })} />)
    expect(wordsOf(same)).toContain('Both hold the same 4 rows.')
    const other = view({ from: 1, to: 3, rows: NOTHING, buildTimeDays: { before: 20, after: 25 } })
    expect(wordsOf(renderScreen(<VersionChanges view={other} />))).not.toContain('Both hold the same')
  })
})
