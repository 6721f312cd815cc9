import { describe, expect, test } from 'vitest'
import {
  type BlockerCode,
  findBlockers,
  hashPresentSubstance,
  hashSignedContent,
  type ReviewSnapshot,
  type ReviewThread,
  type Signature,
  USUAL_SIGN_OFF_POLICY,
} from '@/lib/review'
import { BRACKENFOLD, makeDesign, makeEvaluation, makeResult, makeSnapshot, OSTREL } from './snapshot-factory'

const codes = (snapshot: ReviewSnapshot): BlockerCode[] => findBlockers(snapshot).map(({ code }) => code)

const sign = (snapshot: ReviewSnapshot, userId = 'lead'): Signature => ({
  id: `signature-${userId}`,
  userId,
  name: userId,
  capacity: 'lead engineer',
  statement: 'I have reviewed this revision.',
  signedAt: '2027-03-03T09:00:00.000Z',
  contentHash: hashSignedContent(snapshot),
  substanceHash: hashPresentSubstance(snapshot),
  voided: null,
})

const thread = (change: Partial<ReviewThread>): ReviewThread => ({
  id: 'thread-1',
  kind: 'engineering-query',
  state: 'open',
  title: 'Which face carries the stiffener?',
  anchor: { kind: 'revision', id: 'revision-b', label: 'revision' },
  audienceCompanyId: BRACKENFOLD,
  openedBy: 'fabricator',
  openedByName: 'Joss Pell',
  openedAt: '2027-03-01T10:00:00.000Z',
  openedByCompanyId: BRACKENFOLD,
  openedByCompanyName: 'Brackenfold Circuits',
  comments: [],
  closed: null,
  ...change,
})

function withVerdict(verdict: Parameters<typeof makeResult>[1], change: Partial<ReviewSnapshot> = {}): ReviewSnapshot {
  const base = makeSnapshot(change)
  const results = makeEvaluation([
    makeResult('bend-strain', verdict, 0.7),
    makeResult('inside-corners', 'meets'),
    makeResult('packing-notes', 'needs-judgment'),
  ])
  return { ...base, evaluation: base.evaluation === null ? null : { ...base.evaluation, results } }
}

describe('what blocks', () => {
  test('a complete revision waits for its signature only, and for nothing once signed', () => {
    const unsigned = makeSnapshot()
    expect(codes(unsigned)).toEqual(['signature-missing'])
    expect(codes({ ...unsigned, signatures: [sign(unsigned)] })).toEqual([])
  })

  test('preparing: an empty construction', () => {
    const design = makeDesign((d) => {
      d.construction.layers = []
      d.construction.zones = []
      d.bends = []
    })
    expect(codes(makeSnapshot({ design, stage: 'preparing' }))).toEqual(['construction-empty'])
    expect(codes(makeSnapshot({ stage: 'preparing' }))).toEqual([])
  })

  test('early review: gaps in the brief and in the bends, each with a link to its field', () => {
    const design = makeDesign((d) => {
      d.brief.surfaceFinish = null
      d.brief.purpose = ' '
      const [bend] = d.bends
      if (bend !== undefined) Object.assign(bend, { name: 'Hinge', use: 'dynamic', requiredCycles: null })
    })
    const blockers = findBlockers(makeSnapshot({ design, stage: 'early-review' }))
    expect(blockers.map(({ target }) => `${target.tab} ${target.id}`)).toEqual([
      'brief purpose',
      'brief surfaceFinish',
      `bends ${design.bends[0]?.id}`,
    ])
    expect(blockers[2]?.sentence).toBe('Bend Hinge is dynamic and does not state its required cycles')
  })

  test('early review: an early item without an answer, with what is missing; later items may wait', () => {
    const [blocker, ...rest] = findBlockers(withVerdict('not-computed', { stage: 'early-review', answers: [] }))
    expect(rest).toEqual([])
    expect(blocker).toMatchObject({ code: 'item-unanswered', target: { tab: 'checklist', id: 'bend-strain' } })
    expect(blocker?.sentence).toContain('Missing: use of bend Hinge')
  })

  test('an item that the results lack is unanswered, not forgotten', () => {
    const base = makeSnapshot({ stage: 'early-review' })
    if (base.evaluation === null) throw new Error('no evaluation')
    const without = { ...base, evaluation: { ...base.evaluation, results: makeEvaluation([]) } }
    expect(codes(without)).toEqual(['item-unanswered', 'item-unanswered'])
  })

  test('fabricator review: open engineering queries and must-changes; other kinds and states do not block', () => {
    const blocked = (change: Partial<ReviewThread>) =>
      codes(makeSnapshot({ stage: 'fabricator-review', threads: [thread(change)] })).includes('thread-open')
    expect(blocked({})).toBe(true)
    expect(blocked({ kind: 'must-change' })).toBe(true)
    expect(blocked({ state: 'answered' })).toBe(false)
    expect(blocked({ kind: 'must-change', state: 'closed' })).toBe(false)
    // An answer says something; only closing it says what was done.
    expect(blocked({ kind: 'must-change', state: 'answered' })).toBe(true)
    expect(blocked({ kind: 'should-change' })).toBe(false)
    expect(blocked({ kind: 'note' })).toBe(false)
  })

  test("fabricator review: the declaration must stand on the present content, and a company's last word counts", () => {
    const stage = 'fabricator-review' as const
    const [declaration] = makeSnapshot().declarations
    if (declaration === undefined) throw new Error('no declaration')
    expect(codes(makeSnapshot({ stage }))).toEqual([])
    expect(codes(makeSnapshot({ stage, sharedWith: [], declarations: [] }))).toEqual(['not-shared'])
    expect(codes(makeSnapshot({ stage, declarations: [] }))).toEqual(['declaration-missing'])
    expect(codes(makeSnapshot({ stage, declarations: [{ ...declaration, contentHash: 'f'.repeat(64) }] }))).toEqual([
      'declaration-outdated',
    ])
    const later = { ...declaration, id: 'd2', verdict: 'not-buildable' as const, madeAt: '2027-03-04T09:00:00.000Z' }
    expect(codes(makeSnapshot({ stage, declarations: [declaration, later] }))).toEqual(['declared-not-buildable'])
    // A company with whom the revision is no longer shared does not speak for it.
    const foreign = [{ ...declaration, companyId: OSTREL }]
    expect(codes(makeSnapshot({ stage, declarations: foreign }))).toEqual(['declaration-missing'])
  })

  test('awaiting signature: a failure needs a waiver, a thin margin does not', () => {
    expect(codes(withVerdict('fails'))).toContain('failure-unwaived')
    expect(codes(withVerdict('thin-margin'))).not.toContain('failure-unwaived')
  })

  test('awaiting signature: results older than design, limits or engine', () => {
    const base = makeSnapshot()
    if (base.evaluation === null) throw new Error('no evaluation')
    const stale = (change: object) =>
      findBlockers({ ...base, evaluation: { ...base.evaluation, ...change } } as ReviewSnapshot)
    expect(stale({ designHash: 'x' })[0]?.sentence).toContain('a change of the design')
    expect(stale({ limitsHash: 'x' })[0]?.sentence).toContain('a limit')
    expect(stale({ engineVersion: '0.9.0' })[0]?.sentence).toContain('the engine (0.9.0, now 1.0.0)')
    expect(codes({ ...base, evaluation: null })).toContain('not-evaluated')
  })

  test('awaiting signature: artwork that a workspace asks for', () => {
    const settings = { ...makeSnapshot().settings, artworkRequired: true }
    expect(codes(makeSnapshot({ settings, artwork: [] }))).toContain('artwork-missing')
  })

  test('several signatures are by several people, and one on other content does not count', () => {
    const base = makeSnapshot()
    const rules = { ...USUAL_SIGN_OFF_POLICY, requiredSignatures: 2 }
    const two = { ...base, signOffPolicy: { version: 1, rules } }
    const again = { ...sign(two), id: 'again' }
    expect(codes({ ...two, signatures: [sign(two), again] })).toEqual(['signature-missing'])
    expect(codes({ ...two, signatures: [sign(two), sign(two, 'second-lead')] })).toEqual([])
    const other = { ...sign(two, 'second-lead'), substanceHash: 'f'.repeat(64) }
    expect(codes({ ...two, signatures: [sign(two), other] })).toEqual(['signature-missing'])
  })

  test('a later stage keeps the causes of the earlier ones', () => {
    const design = makeDesign((d) => {
      d.brief.circuitType = null
    })
    expect(codes(makeSnapshot({ design }))).toEqual(expect.arrayContaining(['brief-incomplete', 'signature-missing']))
  })

  test('stages off the path have no blockers', () => {
    for (const stage of ['released', 'superseded', 'withdrawn'] as const)
      expect(codes(withVerdict('fails', { stage }))).toEqual([])
  })
})
