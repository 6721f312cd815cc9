import { describe, expect, test } from 'vitest'
import { buildSignedContent, hashWaiverBasis, summarizeSigning } from '@/lib/review'
import { makeEvaluation, makeResult, makeSnapshot } from './snapshot-factory'

const snapshot = makeSnapshot()
const withResults = (verdicts: Parameters<typeof makeResult>[]) => {
  const { evaluation } = snapshot
  if (evaluation === null) throw new Error('it has results')
  return { evaluation: { ...evaluation, results: makeEvaluation(verdicts.map((each) => makeResult(...each))) } }
}

describe('what a signer is shown', () => {
  test('nothing stands out where all is met, and that nobody signed before is said', () => {
    expect(summarizeSigning(snapshot, null)).toEqual({
      entries: [],
      quietCount: 3,
      metBy: { computed: 2, typed: 0, stated: 0, judgment: 1 },
      sinceLast: null,
    })
  })

  test('failures, thin margins, concerns and what is open, each with its numbers or words', () => {
    const mixed = makeSnapshot({
      ...withResults([
        ['bend-strain', 'fails', 0.5],
        ['inside-corners', 'thin-margin'],
        ['packing-notes', 'needs-judgment'],
      ]),
      answers: snapshot.answers.map((answer) => ({ ...answer, state: 'concern', reason: 'no tray is named' })),
    })
    expect(summarizeSigning(mixed, null).entries.map(({ group, itemId, text }) => [group, itemId, text])).toEqual([
      ['failed', 'bend-strain', 'bend-strain fails'],
      ['thin-margin', 'inside-corners', 'inside-corners thin-margin'],
      ['concern', 'packing-notes', 'Mara Tolland: no tray is named'],
    ])
    const open = makeSnapshot({ answers: [] })
    expect(summarizeSigning(open, null).entries).toMatchObject([{ group: 'not-decided', itemId: 'packing-notes' }])
  })

  test('a waiver names what it is about, who approved it and why', () => {
    const failed = makeResult('bend-strain', 'fails', 0.5)
    const waived = makeSnapshot({
      ...withResults([
        ['bend-strain', 'fails', 0.5],
        ['inside-corners', 'meets'],
        ['packing-notes', 'needs-judgment'],
      ]),
      waivers: [
        {
          id: 'waiver-1',
          itemId: 'bend-strain',
          state: 'approved',
          reason: 'first articles are tested',
          proposedBy: 'member',
          proposedByName: 'Mara Tolland',
          proposedAt: '2027-03-02T09:00:00.000Z',
          decidedBy: 'lead',
          decidedByName: 'Ines Calder',
          decidedAt: '2027-03-02T10:00:00.000Z',
          decisionNote: '',
          basisHash: hashWaiverBasis(failed),
        },
      ],
    })
    expect(summarizeSigning(waived, null).entries).toMatchObject([
      { group: 'waived', text: 'bend-strain fails Waived by Ines Calder: first articles are tested' },
    ])
  })

  test('what changed since the last signature, voided or not', () => {
    const last = { name: 'Ines Calder', signedAt: '2027-03-03T09:00:00.000Z', content: buildSignedContent(snapshot) }
    expect(summarizeSigning(snapshot, last).sinceLast?.changes).toEqual([])
    const changed = makeSnapshot({ answers: snapshot.answers.map((answer) => ({ ...answer, reason: 'in a tray' })) })
    expect(summarizeSigning(changed, last).sinceLast?.changes).toEqual([
      'reason changed: Are packing and handling stated?',
    ])
  })
})
