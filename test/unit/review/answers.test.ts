import { describe, expect, test } from 'vitest'
import {
  checkAnswer,
  checkWaiverDecision,
  checkWaiverProposal,
  getItemState,
  hashWaiverBasis,
  type Waiver,
} from '@/lib/review'
import { ITEMS, makeResult } from './snapshot-factory'

const [strainItem, , packingItem] = ITEMS
if (strainItem === undefined || packingItem === undefined) throw new Error('no items')

const answer = (state: 'meets' | 'concern' | 'not-applicable', reason = '') => ({
  itemId: 'bend-strain',
  state,
  reason,
  answeredBy: 'member',
  answeredByName: 'Mara Tolland',
  answeredAt: '2027-03-01T10:00:00.000Z',
  evidence: [],
})

const waiverOn = (verdict: 'fails' | 'not-computed', valuePct: number, change: Partial<Waiver> = {}): Waiver => ({
  id: 'waiver-1',
  itemId: 'bend-strain',
  state: 'approved',
  reason: 'Life test passed on coupons',
  proposedBy: 'member',
  proposedByName: 'Mara Tolland',
  proposedAt: '2027-03-01T10:00:00.000Z',
  decidedBy: 'lead',
  decidedByName: 'Ines Calder',
  decidedAt: '2027-03-01T11:00:00.000Z',
  decisionNote: '',
  basisHash: hashWaiverBasis(makeResult('bend-strain', verdict, valuePct)),
  ...change,
})

describe('legal answers', () => {
  test.each([
    ['fails', 'meets', false],
    ['fails', 'not-applicable', false],
    ['fails', 'concern', true],
    ['fails', 'waived', false],
    ['thin-margin', 'meets', false],
    ['thin-margin', 'concern', true],
    ['meets', 'meets', true],
    ['meets', 'concern', true],
    ['meets', 'not-applicable', false],
    ['not-computed', 'meets', false],
    ['not-computed', 'concern', true],
    ['not-computed', 'not-applicable', true],
    ['cannot-tell', 'not-applicable', false],
    ['cannot-tell', 'concern', true],
    ['not-applicable', 'meets', false],
    ['not-applicable', 'concern', true],
    ['needs-judgment', 'meets', true],
    ['needs-judgment', 'not-applicable', true],
    ['needs-judgment', 'waived', false],
  ] as const)('calculation says %s, person says %s: %s', (verdict, state, isLegal) => {
    expect(checkAnswer(makeResult('bend-strain', verdict), { state, reason: 'a reason' }).ok).toBe(isLegal)
  })

  test('every verdict lets a person take an answer back', () => {
    for (const verdict of [
      'meets',
      'thin-margin',
      'fails',
      'not-computed',
      'not-applicable',
      'needs-judgment',
    ] as const) {
      expect(checkAnswer(makeResult('bend-strain', verdict), { state: 'open', reason: '' }).ok).toBe(true)
    }
  })

  test('a reason is asked for where the answer stands on words alone', () => {
    const refused = checkAnswer(makeResult('x', 'needs-judgment'), { state: 'not-applicable', reason: '  ' })
    expect(refused).toMatchObject({ ok: false, issues: [{ code: 'reason-missing', path: ['reason'] }] })
    expect(checkAnswer(makeResult('x', 'not-computed'), { state: 'not-applicable', reason: '' }).ok).toBe(false)
    expect(checkAnswer(makeResult('x', 'cannot-tell'), { state: 'meets', reason: '' }).ok).toBe(false)
    expect(checkAnswer(makeResult('x', 'needs-judgment'), { state: 'meets', reason: '' }).ok).toBe(true)
  })

  test('what is missing is filled in, and nobody answers in its place', () => {
    const refused = checkAnswer(makeResult('x', 'not-computed'), { state: 'meets', reason: 'it will hold' })
    expect(refused).toMatchObject({ ok: false, issues: [{ code: 'overrules-calculation', path: ['state'] }] })
    expect(refused.ok ? '' : refused.issues[0]?.message).toMatch(/fill it in/)
  })

  test('what no calculation covers meets by what somebody looked at, and says so', () => {
    const result = makeResult('x', 'cannot-tell')
    const file = { fileName: 'flex-test.pdf', sha256: 'f'.repeat(64) }
    const input = { state: 'meets' as const, reason: 'flexed 20 000 times on coupons' }
    const look = { sheet: 'Report 12', layer: 'Table 3', sha256: file.sha256 }
    expect(checkAnswer(result, input, [file])).toMatchObject({ ok: false, issues: [{ code: 'sheet-missing' }] })
    expect(checkAnswer(result, { ...input, lookedAt: look }, [])).toMatchObject({
      ok: false,
      issues: [{ code: 'file-missing' }],
    })
    expect(checkAnswer(result, { ...input, lookedAt: look }, [file])).toMatchObject({
      ok: true,
      value: { lookedAt: { sheet: 'Report 12', layer: 'Table 3', fileName: 'flex-test.pdf' } },
    })
    const said = { ...answer('meets', input.reason), itemId: 'x', lookedAt: { ...look, fileName: file.fileName } }
    expect(getItemState(strainItem, result, said, [])).toMatchObject({
      state: 'meets',
      decidedBy: 'person',
      basis: 'stated',
    })
    // With the file gone, or without one from the start, it is open again.
    expect(getItemState(strainItem, result, { ...said, isFileGone: true }, []).state).toBe('open')
    expect(getItemState(strainItem, result, answer('meets', input.reason), [])).toMatchObject({
      state: 'open',
      setAside: expect.stringContaining('does not say where somebody looked'),
    })
  })

  test('nothing is answered before the design was evaluated', () => {
    expect(checkAnswer(null, { state: 'meets', reason: '' })).toMatchObject({ ok: false })
  })
})

describe('where an item stands', () => {
  const standing = (verdict: Parameters<typeof makeResult>[1], a: ReturnType<typeof answer> | null, w: Waiver[] = []) =>
    getItemState(strainItem, makeResult('bend-strain', verdict, 0.7), a, w)

  test('the calculation decides without a person', () => {
    expect(standing('meets', null)).toMatchObject({ state: 'meets', decidedBy: 'calculation', needsWaiver: false })
    expect(standing('thin-margin', null)).toMatchObject({ state: 'concern', needsWaiver: false })
    expect(standing('fails', null)).toMatchObject({ state: 'concern', decidedBy: 'calculation', needsWaiver: true })
    expect(standing('not-computed', null)).toMatchObject({ state: 'open', decidedBy: 'nobody' })
    expect(standing('needs-judgment', null)).toMatchObject({ state: 'open' })
  })

  test('an answer that the calculation overtook is set aside, and says so', () => {
    const overtaken = standing('fails', answer('meets', 'measured on samples'))
    expect(overtaken).toMatchObject({ state: 'concern', decidedBy: 'calculation', needsWaiver: true })
    expect(overtaken.setAside).toContain('before the calculation decided otherwise')
  })

  test("a person's concern must be waived at the severities that say so", () => {
    expect(standing('needs-judgment', answer('concern'))).toMatchObject({ state: 'concern', needsWaiver: true })
    expect(
      getItemState(packingItem, makeResult('packing-notes', 'needs-judgment'), answer('concern'), []),
    ).toMatchObject({
      state: 'concern',
      needsWaiver: false,
    })
  })

  test('an approved waiver stands on the numbers it was made on, and on no others', () => {
    expect(standing('fails', null, [waiverOn('fails', 0.7)])).toMatchObject({ state: 'waived', needsWaiver: false })
    const lapsed = standing('fails', null, [waiverOn('fails', 0.5)])
    expect(lapsed).toMatchObject({ state: 'concern', needsWaiver: true })
    expect(lapsed.setAside).toContain('other numbers')
    // The last digits differ between machines and do not make other numbers.
    expect(standing('fails', null, [waiverOn('fails', 0.7 + 1e-12)])).toMatchObject({ state: 'waived' })
  })

  test('a proposed or declined waiver does not count', () => {
    expect(standing('fails', null, [waiverOn('fails', 0.7, { state: 'proposed' })])).toMatchObject({
      needsWaiver: true,
    })
    expect(standing('fails', null, [waiverOn('fails', 0.7, { state: 'declined' })])).toMatchObject({
      needsWaiver: true,
    })
  })
})

describe('waivers', () => {
  test('are proposed against a failure or a concern, with a reason', () => {
    expect(checkWaiverProposal(makeResult('x', 'fails'), null, ' tested ')).toMatchObject({
      ok: true,
      value: { reason: 'tested' },
    })
    expect(checkWaiverProposal(makeResult('x', 'fails'), null, ' ')).toMatchObject({ ok: false })
    expect(checkWaiverProposal(makeResult('x', 'meets'), null, 'why')).toMatchObject({ ok: false })
    expect(checkWaiverProposal(makeResult('x', 'needs-judgment'), answer('concern'), 'why').ok).toBe(true)
  })

  const decide = (change: Partial<Waiver>, whyNot: string, valuePct = 0.7) =>
    checkWaiverDecision(
      waiverOn('fails', 0.7, { state: 'proposed', ...change }),
      makeResult('bend-strain', 'fails', valuePct),
      { approve: true, whyNot },
    )

  test('are approved once, by somebody whom the policy lets approve, on unchanged numbers', () => {
    expect(decide({}, '').ok).toBe(true)
    expect(decide({}, 'the proposer of a waiver cannot approve it')).toMatchObject({
      ok: false,
      issues: [{ code: 'not-independent' }],
    })
    expect(decide({ state: 'approved' }, '')).toMatchObject({ ok: false, issues: [{ code: 'clash' }] })
    expect(decide({}, '', 0.9)).toMatchObject({ ok: false, issues: [{ code: 'stale' }] })
  })
})
