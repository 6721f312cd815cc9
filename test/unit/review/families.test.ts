import { describe, expect, test } from 'vitest'
import type { ItemResult } from '@/lib/engine'
import {
  checkWaiverProposal,
  describeFollows,
  findBlockers,
  hashWaiverBasis,
  listItemStates,
  summarizeSigning,
  type Waiver,
} from '@/lib/review'
import { makeEvaluation, makeResult, makeSnapshot } from './snapshot-factory'

/* One waiver covers a family, as long as it stands; nothing else is waived with it. */

const root = makeResult('bend-strain', 'fails', 0.5)
const follower: ItemResult = { ...makeResult('inside-corners', 'fails', 0.3), followsFrom: ['bend-strain'] }

const approve = (basisHash: string, itemId = 'bend-strain'): Waiver => ({
  id: 'waiver-1',
  itemId,
  state: 'approved',
  reason: 'first articles are tested',
  proposedBy: 'member',
  proposedByName: 'Mara Tolland',
  proposedAt: '2027-03-02T09:00:00.000Z',
  decidedBy: 'lead',
  decidedByName: 'Ines Calder',
  decidedAt: '2027-03-02T10:00:00.000Z',
  decisionNote: '',
  basisHash,
})

function snapshotOf(items: readonly ItemResult[], waivers: readonly Waiver[] = []) {
  const made = makeSnapshot()
  if (made.evaluation === null) throw new Error('it has results')
  return makeSnapshot({
    evaluation: {
      ...made.evaluation,
      results: makeEvaluation([...items, makeResult('packing-notes', 'needs-judgment')]),
    },
    waivers,
  })
}

const stateOf = (snapshot: ReturnType<typeof snapshotOf>, id: string) => {
  const found = listItemStates(snapshot).find(({ item }) => item.id === id)
  if (found === undefined) throw new Error(id)
  return found
}

const listUnwaived = (snapshot: ReturnType<typeof snapshotOf>) =>
  findBlockers(snapshot, 'awaiting-signature')
    .filter(({ code }) => code === 'failure-unwaived')
    .map(({ target }) => target.id)

describe('what follows', () => {
  test('does not block by itself while its root does, and says what it follows from', () => {
    const snapshot = snapshotOf([root, follower])
    expect(listUnwaived(snapshot)).toEqual(['bend-strain'])
    const { follows, state } = stateOf(snapshot, 'inside-corners')
    expect(state).toBe('concern')
    expect(describeFollows(follows)).toMatch(/^Follows from ".+"$/)
    expect(summarizeSigning(snapshot, null).entries.map(({ group, itemId }) => [group, itemId])).toEqual(
      expect.arrayContaining([
        ['failed', 'bend-strain'],
        ['follows', 'inside-corners'],
      ]),
    )
  })

  test('is waived with its root, and no waiver of its own is taken', () => {
    const snapshot = snapshotOf([root, follower], [approve(hashWaiverBasis(root, [follower]))])
    expect(stateOf(snapshot, 'inside-corners')).toMatchObject({ state: 'waived', waiver: { itemId: 'bend-strain' } })
    expect(listUnwaived(snapshot)).toEqual([])
    const own = stateOf(snapshot, 'inside-corners')
    expect(checkWaiverProposal(own.result, own.answer, 'why', own)).toMatchObject({
      ok: false,
      issues: [{ code: 'follows' }],
    })
  })

  test('stands by itself, not waived, once the root is mended', () => {
    const mended = snapshotOf(
      [makeResult('bend-strain', 'meets'), { ...makeResult('inside-corners', 'fails', 0.3) }],
      [approve(hashWaiverBasis(root, [follower]))],
    )
    expect(stateOf(mended, 'inside-corners')).toMatchObject({ state: 'concern', needsWaiver: true, follows: [] })
    expect(listUnwaived(mended)).toEqual(['inside-corners'])
  })

  test('stands by itself where results still say that it follows from a root that holds', () => {
    const stale = snapshotOf([makeResult('bend-strain', 'meets'), follower])
    expect(listUnwaived(stale)).toEqual(['inside-corners'])
  })

  test('is not waived by a waiver that was given before it followed', () => {
    const snapshot = snapshotOf([root, follower], [approve(hashWaiverBasis(root))])
    expect(stateOf(snapshot, 'bend-strain').state).toBe('waived')
    expect(listUnwaived(snapshot)).toEqual(['inside-corners'])
  })

  test('a waiver of a family covers no other failure', () => {
    const unrelated = makeResult('inside-corners', 'fails', 0.3)
    const snapshot = snapshotOf([root, unrelated], [approve(hashWaiverBasis(root))])
    expect(listUnwaived(snapshot)).toEqual(['inside-corners'])
  })

  test('a waiver lapses when another failure comes to follow from its item', () => {
    const withFollower = approve(hashWaiverBasis(root, [follower]))
    const other = { ...follower, verdict: 'thin-margin' as const }
    expect(stateOf(snapshotOf([root, other], [withFollower]), 'bend-strain').state).toBe('concern')
  })
})
