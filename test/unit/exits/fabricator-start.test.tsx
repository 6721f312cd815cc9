import { describe, expect, it } from 'vitest'
import { FabricatorStart } from '@/app/projects/[projectId]/_components/fabricator-start'
import type { FabricatorStartView } from '@/lib/data'
import { renderScreen } from '@/test/factories/render-screen'

const START: FabricatorStartView = {
  company: { id: 'brackenfold', kind: 'fabricator', name: 'Brackenfold Circuits' },
  askedBy: { id: 'lead', name: 'Ines Calder' },
  askedAt: '2026-11-02T09:00:00.000Z',
  sheets: [
    { kind: 'matrix', state: 'stated', version: 3, issuedOn: '2026-10-01' },
    { kind: 'shelf', state: 'empty', version: 1, issuedOn: '2026-10-01' },
    { kind: 'panel-formats', state: 'not-stated', version: null, issuedOn: null },
    { kind: 'process-rates', state: 'not-stated', version: null, issuedOn: null },
  ],
  sharing: { matrix: 'checked', shelf: 'shown', rates: 'not-shared' },
  revisions: [
    {
      id: 'b',
      label: 'B',
      stage: 'fabricator-review',
      manufacturingReviewOn: '2026-12-01',
      layoutFreezeOn: null,
      neededOn: '2027-02-15',
    },
  ],
  may: { editSheets: true, share: true },
}

const textOf = (start: FabricatorStartView) =>
  renderScreen(<FabricatorStart projectId="skua" start={start} waits={[]} />)
    .replaceAll(/<!-- -->/g, '')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')

describe('the first steps of a fabricator', () => {
  it('name who invites, by when, and each sheet with its state and what the team sees of it', () => {
    const text = textOf(START)
    expect(text).toContain('Ines Calder invited Brackenfold Circuits')
    for (const day of ['2026-12-01', '2027-02-15', 'not stated']) expect(text).toContain(day)
    expect(text).toMatch(/Capability matrix .*stated, version 3 of 2026-10-01 .*checked, not shown/)
    expect(text).toMatch(/Shelf .*empty, version 1 .*shown/)
    expect(text).toMatch(/Panel formats .*not stated .*not shared/)
    expect(text).toMatch(/Process rates .*not stated .*not shared/)
    expect(text).toContain('Choose what the team sees')
  })

  it('do not say that the team sees what was not stated', () => {
    const shown = { matrix: 'shown', shelf: 'shown', rates: 'shown' } as const
    const text = textOf({ ...START, sharing: shown })
    expect(text).toMatch(/Panel formats .*not stated shown once stated/)
    expect(text).toMatch(/Capability matrix .*2026-10-01 shown Shelf/)
  })

  it('link to the page of each sheet', () => {
    const markup = renderScreen(<FabricatorStart projectId="skua" start={START} waits={[]} />)
    for (const page of ['matrix', 'shelf', 'panels', 'rates']) {
      expect(markup).toContain(`href="/companies/brackenfold/${page}"`)
    }
    expect(markup).toContain('href="/projects/skua/revisions/b"')
  })

  it('send those who may not state anything to those who may', () => {
    const text = textOf({ ...START, askedBy: null, revisions: [], may: { editSheets: false, share: false } })
    expect(text).toContain('An administrator or sheet writer of your company states these.')
    expect(text).not.toContain('Choose what the team sees')
    expect(text).toContain('No open revision is shared with you yet.')
    expect(text).toContain('Brackenfold Circuits takes part in this project.')
  })
})
