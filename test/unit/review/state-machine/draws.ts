import fc from 'fast-check'
import { type ActionDue, type Move, type SignOffPolicy, USUAL_SIGN_OFF_POLICY } from '@/lib/review'
import type { ActorName, CompanyName, Step } from './steps'

const reviewer = fc.constantFrom<ActorName>('lead', 'second', 'member', 'quality', 'auditor')

/** Weighted towards what leads to a release: plain draws would hardly ever get there. */
const actor = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom<ActorName>('lead', 'second') },
  { weight: 2, arbitrary: fc.constantFrom<ActorName>('member', 'fabricator', 'observer', 'admin', 'outsider') },
)
const company = fc.constantFrom<CompanyName>('brackenfold', 'ostrel')
export const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant('move' as const),
      move: fc.oneof(
        { weight: 12, arbitrary: fc.constant<Move>('advance') },
        { weight: 2, arbitrary: fc.constant<Move>('send-back') },
        { weight: 1, arbitrary: fc.constantFrom<Move>('withdraw', 'supersede') },
      ),
      actor,
      reason: fc.constantFrom('', 'wrong foil'),
    }),
  },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('sign' as const), actor }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('edit' as const), actor, radiusMm: fc.constantFrom(2, 4, 8) }),
  },
  { weight: 3, arbitrary: fc.constant<Step>({ kind: 'evaluate' }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('answer' as const),
      actor,
      state: fc.constantFrom('meets' as const, 'meets' as const, 'concern' as const, 'open' as const),
      reason: fc.constantFrom('', '', '', '', 'as in note 4 of the drawing'),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constant('declare' as const),
      company,
      verdict: fc.oneof(
        { weight: 5, arbitrary: fc.constant('buildable' as const) },
        { weight: 1, arbitrary: fc.constantFrom('with-conditions' as const, 'not-buildable' as const) },
      ),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('decide' as const),
      actor,
      state: fc.constantFrom('action' as const, 'taken-over' as const, 'declined' as const),
    }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('take-off' as const), actor, company }) },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('thread' as const),
      thread: fc.constantFrom('engineering-query' as const, 'must-change' as const, 'note' as const),
      state: fc.constantFrom('open' as const, 'answered' as const, 'closed' as const, 'closed' as const),
    }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('review' as const), actor: reviewer }) },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('take-on' as const),
      actor,
      owner: reviewer,
      due: fc.constantFrom<ActionDue>('before-release', 'before-series', 'before-series'),
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('settle-action' as const),
      actor: reviewer,
      to: fc.constantFrom(
        'reported' as const,
        'reported' as const,
        'closed' as const,
        'closed' as const,
        'dropped' as const,
      ),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.oneof(
      fc.record({ kind: fc.constant('take-back' as const), actor }),
      fc.constant<Step>({ kind: 'withdraw-review' }),
    ),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('let-stand' as const), actor: reviewer }) },
  {
    weight: 3,
    arbitrary: fc.record({ kind: fc.constant('waive' as const), proposer: reviewer, approver: reviewer }),
  },
)

/** The usual policy half of the time, any other otherwise. */
export const policy: fc.Arbitrary<SignOffPolicy> = fc.oneof(
  fc.constant(USUAL_SIGN_OFF_POLICY),
  fc.record({
    waiverBlocking: fc.constantFrom('quality', 'no-author', 'second-person', 'anyone'),
    waiverMajor: fc.constantFrom('quality', 'no-author', 'second-person', 'anyone'),
    waiverMinor: fc.constantFrom('quality', 'no-author', 'second-person', 'anyone'),
    review: fc.constantFrom('quality', 'no-author', 'none'),
    authorSigns: fc.constantFrom('no', 'beside', 'yes'),
    authorReleases: fc.constantFrom('no', 'yes'),
    differences: fc.constantFrom('none', 'acknowledged', 'listed'),
    requiredSignatures: fc.constantFrom(1, 1, 2),
    requiredCapacities: fc.constant([]),
  }),
)
