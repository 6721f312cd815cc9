import { describe, expect, test } from 'vitest'
import {
  ACTIONS,
  type Action,
  type ActionSubjects,
  getSubjectKind,
  isAllowed,
  NOTHING_SHARED,
  PROJECT_ROLES,
  type ProjectRole,
  type Rights,
  type Sharing,
  STAGES,
} from '@/lib/review'
import {
  ADMIN,
  AUDITOR,
  BRACKENFOLD,
  COMPANY_MEMBER,
  FABRICATOR,
  IMPOSTOR,
  LEAD,
  MEMBER,
  OBSERVER,
  OSTREL,
  OTHER_FABRICATOR,
  OUTSIDER,
  PROJECT,
  QUALITY,
  SECOND_LEAD,
  SHEET_WRITER,
  TEAM,
} from './snapshot-factory'

const ACTORS = {
  LEAD,
  MEMBER,
  FABRICATOR,
  SHEET_WRITER,
  COMPANY_MEMBER,
  IMPOSTOR,
  OTHER_FABRICATOR,
  OBSERVER,
  QUALITY,
  AUDITOR,
  ADMIN,
  OUTSIDER,
} satisfies Record<string, Rights>
type ActorName = keyof typeof ACTORS

const revision = {
  projectId: PROJECT,
  stage: 'awaiting-signature',
  sharedWithCompanyIds: [BRACKENFOLD],
  hasLiveSignature: false,
  hasCapacity: true,
} as const
const thread = { ...revision, openedBy: 'fabricator', openedByCompanyId: BRACKENFOLD, audienceCompanyId: BRACKENFOLD }

/** One subject of each kind: a shared revision that awaits signature, a thread that its fabricator opened. */
const SUBJECTS: { [K in ActionSubjects[Action]['kind']]: Extract<ActionSubjects[Action], { kind: K }> } = {
  workspace: { kind: 'workspace' },
  account: { kind: 'account', userId: 'member' },
  company: {
    kind: 'company',
    companyId: BRACKENFOLD,
    takesPartIn: [{ projectId: PROJECT, sharing: { matrix: 'shown', shelf: 'shown', rates: 'shown' } }],
  },
  project: { kind: 'project', projectId: PROJECT },
  revision: { kind: 'revision', ...revision },
  signature: { kind: 'signature', ...revision, signerId: 'lead' },
  item: { kind: 'item', ...revision, answeredBy: ['member', 'lead'] },
  waiver: { kind: 'waiver', ...revision, isIndependent: true },
  thread: { kind: 'thread', ...thread },
  comment: { kind: 'comment', ...thread, authorId: 'member' },
  'review-action': {
    kind: 'review-action',
    ...revision,
    ownerId: 'lead',
    ownerCompanyId: TEAM,
    reportedById: 'lead',
    audienceCompanyId: BRACKENFOLD,
  },
  proposal: { kind: 'proposal', ...revision, proposedBy: 'fabricator', audienceCompanyId: BRACKENFOLD },
}

/** Brackenfold's own people; the impostor is in the project under its name. */
const OWN: readonly ActorName[] = ['FABRICATOR', 'SHEET_WRITER', 'COMPANY_MEMBER']

/** Everybody of the project's own company. */
const READERS: readonly ActorName[] = ['LEAD', 'MEMBER', 'QUALITY', 'OBSERVER', 'AUDITOR']

/** Who may, for every action there is. Everybody else may not. */
const MAY: Record<Action, readonly ActorName[]> = {
  'workspace:view': ['ADMIN'],
  'settings:edit': ['ADMIN'],
  'limits:edit-workspace': ['ADMIN'],
  'catalogue:edit': ['ADMIN'],
  'account:manage': ['ADMIN'],
  'backup:make': ['ADMIN'],
  'signing-key:rotate': ['ADMIN'],
  'trail:check': ['ADMIN'],
  'mail:view': ['ADMIN'],
  'project:create': ['ADMIN', 'LEAD', 'MEMBER', 'QUALITY', 'OUTSIDER'],
  'library:view': ['ADMIN', 'LEAD', 'MEMBER', 'QUALITY', 'OUTSIDER'],
  'library:edit': ['ADMIN', 'LEAD', 'MEMBER', 'OUTSIDER'],
  'company:confirm': ['ADMIN'],
  'account:edit-own': ['MEMBER'],
  'company:view': ['LEAD', 'MEMBER', ...OWN],
  'company:view-inside': OWN,
  'company:view-access': ['FABRICATOR'],
  'company:view-matrix': ['LEAD', 'MEMBER', ...OWN],
  'company:view-shelf': ['LEAD', 'MEMBER', ...OWN],
  'company:view-rates': ['LEAD', 'MEMBER', ...OWN],
  'company:view-versions': [...OWN],
  'company:admit': ['FABRICATOR', 'ADMIN'],
  'company:take-part': ['FABRICATOR'],
  'company:share': ['FABRICATOR'],
  'limits:edit-fabricator': ['FABRICATOR', 'SHEET_WRITER'],
  'sheet:edit': ['FABRICATOR', 'SHEET_WRITER'],
  'project:view': [...READERS, ...OWN, 'OTHER_FABRICATOR'],
  'project:view-access': ['LEAD'],
  'project:edit': ['LEAD'],
  'project:invite': ['LEAD'],
  'project:remove-person': ['LEAD'],
  'policy:edit': ['LEAD'],
  'capacity:grant': ['LEAD', 'ADMIN'],
  'revision:create': ['LEAD', 'MEMBER'],
  'revision:view': [...READERS, ...OWN],
  'revision:view-trail': READERS,
  'revision:edit': ['LEAD', 'MEMBER'],
  'revision:copy-elsewhere': ['LEAD', 'MEMBER'],
  'construction:keep': ['LEAD'],
  'revision:share': ['LEAD'],
  'revision:comment': ['LEAD', 'MEMBER', 'QUALITY', ...OWN],
  'revision:raise-query': [...OWN],
  'revision:sign': ['LEAD', 'MEMBER', 'QUALITY'],
  'signature:withdraw': ['LEAD'],
  'revision:release': ['LEAD'],
  'revision:withdraw': ['LEAD'],
  'stage:move': ['LEAD'],
  'policy:follow': ['LEAD'],
  'review:declare': ['LEAD', 'MEMBER', 'QUALITY'],
  'declaration:make': [...OWN],
  'condition:decide': ['LEAD'],
  'difference:let-stand': ['LEAD', 'QUALITY'],
  'minutes:view': ['LEAD', 'MEMBER', 'QUALITY', 'OBSERVER', 'AUDITOR'],
  'meeting:record': ['LEAD', 'MEMBER', 'QUALITY'],
  'need:state': ['LEAD', 'MEMBER', 'QUALITY'],
  'need:report': ['LEAD', 'MEMBER', 'QUALITY'],
  'need:accept': ['LEAD', 'QUALITY'],
  'release:choose-fabricators': ['LEAD'],
  'proposal:make': ['LEAD', 'MEMBER', ...OWN],
  'proposal:decide': ['LEAD', 'MEMBER'],
  'proposal:view': [...READERS, ...OWN],
  'proposal:withdraw': ['FABRICATOR'],
  'package:download': [],
  'item:answer': ['LEAD', 'MEMBER'],
  'waiver:propose': ['LEAD', 'MEMBER'],
  'waiver:approve': ['LEAD', 'QUALITY'],
  'waiver:decline': ['LEAD', 'QUALITY'],
  'thread:view': [...READERS, ...OWN],
  'thread:reply': ['LEAD', 'MEMBER', 'QUALITY', ...OWN],
  'thread:answer': ['LEAD', 'MEMBER', 'QUALITY'],
  'thread:assign': ['LEAD', 'MEMBER', 'QUALITY', ...OWN],
  'thread:close': ['LEAD', ...OWN],
  'comment:edit': ['MEMBER'],
  'review-action:take-on': ['LEAD', 'MEMBER', 'QUALITY'],
  'review-action:view': [...READERS, ...OWN],
  'review-action:change': ['MEMBER', 'QUALITY'],
  'review-action:report': ['LEAD', 'MEMBER', 'QUALITY'],
  'review-action:close': ['MEMBER', 'QUALITY', ...OWN],
  'review-action:drop': [],
  'review-action:reopen': ['LEAD', 'MEMBER', 'QUALITY', ...OWN],
}

function ask(actor: Rights, action: Action, change: object = {}): boolean {
  const subject = { ...SUBJECTS[getSubjectKind(action)], ...change }
  return isAllowed(actor, action, subject as ActionSubjects[typeof action])
}

describe('every role and every action', () => {
  const cells = ACTIONS.flatMap((action) =>
    (Object.keys(ACTORS) as ActorName[]).map((name) => [action, name, MAY[action].includes(name)] as const),
  )
  test.each(cells)('%s by %s: %s', (action, name, expected) => {
    expect(ask(ACTORS[name], action)).toBe(expected)
  })

  test('the table names every action', () => {
    expect(Object.keys(MAY).sort()).toEqual([...ACTIONS].sort())
    expect(ACTIONS.filter((action) => !(getSubjectKind(action) in SUBJECTS))).toEqual([])
  })
})

describe('what is unknown is refused', () => {
  test('an unknown action', () => {
    for (const name of ['revision:destroy', 'toString', '__proto__', 'constructor', '']) {
      expect(isAllowed(LEAD, name as Action, SUBJECTS.revision)).toBe(false)
      expect(isAllowed(ADMIN, name as Action, SUBJECTS.revision)).toBe(false)
    }
  })

  test('an unknown role, for every action on a project', () => {
    for (const role of ['owner', 'LEAD', '', 'admin']) {
      const actor: Rights = {
        userId: 'x',
        isAdmin: false,
        memberships: [{ projectId: PROJECT, role: role as ProjectRole, companyId: BRACKENFOLD }],
        companies: [],
      }
      for (const action of ACTIONS) expect(ask(actor, action), `${role} ${action}`).toBe(false)
    }
  })

  test('an unknown stage opens nothing for change', () => {
    for (const action of ['revision:edit', 'revision:sign', 'stage:move', 'item:answer', 'declaration:make'] as const) {
      expect(ask(LEAD, action, { stage: 'draft' })).toBe(false)
      expect(ask(FABRICATOR, action, { stage: 'draft' })).toBe(false)
    }
  })

  test('a subject of another kind', () => {
    expect(isAllowed(LEAD, 'revision:sign', SUBJECTS.thread as never)).toBe(false)
  })

  test('a person without memberships may do nothing but look after their own account', () => {
    const nobody: Rights = { userId: 'nobody', isAdmin: false, memberships: [], companies: [] }
    for (const action of ACTIONS) expect(ask(nobody, action), action).toBe(false)
    expect(ask(nobody, 'account:edit-own', { userId: 'nobody' })).toBe(true)
  })
})

describe('what the stage and the content change', () => {
  test('nothing is edited once released, superseded or withdrawn', () => {
    for (const stage of ['released', 'superseded', 'withdrawn'] as const) {
      for (const action of [
        'revision:edit',
        'item:answer',
        'waiver:propose',
        'waiver:approve',
        'stage:move',
      ] as const) {
        for (const actor of Object.values(ACTORS))
          expect(ask(actor, action, { stage }), `${stage} ${action}`).toBe(false)
      }
    }
  })

  test('a signed revision is edited by a lead only', () => {
    expect(ask(MEMBER, 'revision:edit', { hasLiveSignature: true })).toBe(false)
    expect(ask(LEAD, 'revision:edit', { hasLiveSignature: true })).toBe(true)
    expect(ask(FABRICATOR, 'item:answer', { hasLiveSignature: true, answeredBy: ['fabricator'] })).toBe(false)
  })

  test('signing and release belong to one stage', () => {
    for (const stage of STAGES) {
      expect(ask(LEAD, 'revision:sign', { stage })).toBe(stage === 'awaiting-signature')
      expect(ask(LEAD, 'revision:release', { stage })).toBe(stage === 'awaiting-signature')
    }
  })

  test('a package is read after release; a withdrawn one by the team only', () => {
    const may = (stage: (typeof STAGES)[number]) =>
      (Object.keys(ACTORS) as ActorName[]).filter((name) => ask(ACTORS[name], 'package:download', { stage }))
    expect(may('released')).toEqual(['LEAD', 'MEMBER', ...OWN, 'OBSERVER', 'QUALITY', 'AUDITOR'])
    expect(may('superseded')).toEqual(['LEAD', 'MEMBER', ...OWN, 'OBSERVER', 'QUALITY', 'AUDITOR'])
    expect(may('withdrawn')).toEqual(['LEAD', 'MEMBER', 'OBSERVER', 'QUALITY', 'AUDITOR'])
    expect(may('fabricator-review')).toEqual([])
  })

  test('a fabricator answers what the catalogue asks of fabricators', () => {
    expect(ask(FABRICATOR, 'item:answer', { answeredBy: ['fabricator'] })).toBe(true)
    expect(ask(OTHER_FABRICATOR, 'item:answer', { answeredBy: ['fabricator'] })).toBe(false)
    expect(ask(MEMBER, 'item:answer', { answeredBy: ['fabricator'] })).toBe(false)
  })
})

describe('two fabricators in one project', () => {
  test('neither sees a revision that is shared with the other alone', () => {
    expect(ask(OTHER_FABRICATOR, 'revision:view')).toBe(false)
    expect(ask(OTHER_FABRICATOR, 'revision:view', { sharedWithCompanyIds: [BRACKENFOLD, OSTREL] })).toBe(true)
  })

  test("neither sees the other's threads, nor the team's own, though the revision is shared with both", () => {
    const both = { sharedWithCompanyIds: [BRACKENFOLD, OSTREL] }
    for (const action of ['thread:view', 'thread:reply', 'thread:answer', 'thread:close'] as const) {
      expect(ask(OTHER_FABRICATOR, action, both), action).toBe(false)
    }
    expect(ask(FABRICATOR, 'thread:view', { ...both, audienceCompanyId: null })).toBe(false)
    const fromTeam = { ...both, openedByCompanyId: TEAM, openedBy: 'member' }
    expect(ask(FABRICATOR, 'thread:answer', fromTeam)).toBe(true)
    expect(ask(OTHER_FABRICATOR, 'thread:view', fromTeam)).toBe(false)
  })

  test("neither touches the other's company", () => {
    expect(ask(OTHER_FABRICATOR, 'company:view')).toBe(false)
    expect(ask(OTHER_FABRICATOR, 'limits:edit-fabricator')).toBe(false)
  })
})

describe("what a team sees of a fabricator is the fabricator's choice", () => {
  const share = (sharing: Partial<Sharing>, projectId = PROJECT) => ({
    takesPartIn: [{ projectId, sharing: { ...NOTHING_SHARED, ...sharing } }],
  })
  const VIEWS = ['company:view-matrix', 'company:view-shelf', 'company:view-rates'] as const

  test('nothing at first, and nothing at all without its consent', () => {
    for (const action of VIEWS) {
      expect(ask(LEAD, action, share({})), action).toBe(false)
      expect(ask(LEAD, action, { takesPartIn: [] }), action).toBe(false)
      expect(ask(FABRICATOR, action, { takesPartIn: [] }), action).toBe(true)
    }
    expect(ask(LEAD, 'company:view', share({}))).toBe(true)
    expect(ask(LEAD, 'company:view', { takesPartIn: [] })).toBe(false)
  })

  test('a matrix that is only checked against is not seen', () => {
    expect(ask(LEAD, 'company:view-matrix', share({ matrix: 'checked' }))).toBe(false)
    expect(ask(MEMBER, 'company:view-matrix', share({ matrix: 'shown' }))).toBe(true)
  })

  test('each sheet by itself, for the project that it was said for, and never for an observer', () => {
    expect(ask(LEAD, 'company:view-shelf', share({ shelf: 'shown' }))).toBe(true)
    expect(ask(LEAD, 'company:view-rates', share({ shelf: 'shown' }))).toBe(false)
    expect(ask(LEAD, 'company:view-shelf', share({ shelf: 'shown' }, 'project-third'))).toBe(false)
    for (const action of VIEWS) expect(ask(OBSERVER, action), action).toBe(false)
  })
})

test('a waiver is approved by somebody whom the policy of the project lets approve it', () => {
  expect(ask(LEAD, 'waiver:approve', { isIndependent: false })).toBe(false)
  expect(ask(SECOND_LEAD, 'waiver:approve')).toBe(true)
  // To decline takes nobody independent.
  expect(ask(QUALITY, 'waiver:decline', { isIndependent: false })).toBe(true)
})

test('an auditor reads and changes nothing; nobody signs without a capacity', () => {
  for (const action of ACTIONS.filter((name) => MAY[name].includes('AUDITOR'))) {
    expect(action).toMatch(/^[a-z-]+:(view|view-trail)$/)
  }
  for (const actor of [LEAD, MEMBER, QUALITY]) expect(ask(actor, 'revision:sign', { hasCapacity: false })).toBe(false)
})

test('being admin adds no right in a project, whatever the role', () => {
  for (const role of PROJECT_ROLES) {
    const actor: Rights = {
      userId: 'x',
      isAdmin: false,
      memberships: [{ projectId: PROJECT, role, companyId: BRACKENFOLD }],
      companies: [{ companyId: BRACKENFOLD, role: 'member' }],
    }
    for (const action of ACTIONS) {
      // Admitting a company's first people and saying who signs as what are an admin's, and no right in a project.
      if (getSubjectKind(action) === 'workspace' || action === 'company:admit' || action === 'capacity:grant') continue
      expect(ask({ ...actor, isAdmin: true }, action), `${role} ${action}`).toBe(ask(actor, action))
    }
  }
})
