import { isOpenStage, type Stage } from './stages'

/** What a person is in one project. Being admin of the workspace is no role in any project. */
export const PROJECT_ROLES = ['lead', 'member', 'quality', 'fabricator', 'observer', 'auditor'] as const
export type ProjectRole = (typeof PROJECT_ROLES)[number]

/** Roles of the project's own company, in the order in which they are offered. Whoever has one reads the whole project. */
export const OWN_ROLES = ['member', 'lead', 'quality', 'observer', 'auditor'] as const satisfies readonly ProjectRole[]
export type OwnRole = (typeof OWN_ROLES)[number]

export interface Membership {
  readonly projectId: string
  readonly role: ProjectRole
  readonly companyId: string
}

/**
 * What a person is in a fabricator. Administrators admit people, decide in which projects the company takes part and what
 * each project's team sees; sheet writers keep its sheets and limits.
 */
export const COMPANY_ROLES = ['administrator', 'sheet-writer', 'member'] as const
export type CompanyRole = (typeof COMPANY_ROLES)[number]

export interface CompanyMembership {
  readonly companyId: string
  readonly role: CompanyRole
}

/**
 * What a project's team gets of a fabricator's matrix and limits: nothing; verdicts and bands, never the limit; or all
 * of it.
 */
export const MATRIX_SHARINGS = ['not-shared', 'checked', 'shown'] as const
export type MatrixSharing = (typeof MATRIX_SHARINGS)[number]

export const SHEET_SHARINGS = ['not-shared', 'shown'] as const
export type SheetSharing = (typeof SHEET_SHARINGS)[number]

/** What a fabricator chose to let one project's team have. */
export interface Sharing {
  /** Of the capability matrix and the limits. */
  readonly matrix: MatrixSharing
  readonly shelf: SheetSharing
  /** Of the process rates and the panel formats. */
  readonly rates: SheetSharing
}

export const NOTHING_SHARED: Sharing = { matrix: 'not-shared', shelf: 'not-shared', rates: 'not-shared' }

/** What a person may rests on: their places in projects and companies. Rights come from here and from nowhere else. */
export interface Rights {
  readonly userId: string
  readonly isAdmin: boolean
  readonly memberships: readonly Membership[]
  readonly companies: readonly CompanyMembership[]
}

export interface WorkspaceSubject {
  readonly kind: 'workspace'
}

export interface AccountSubject {
  readonly kind: 'account'
  readonly userId: string
}

export interface ProjectSubject {
  readonly kind: 'project'
  readonly projectId: string
}

export interface CompanySubject {
  readonly kind: 'company'
  readonly companyId: string
  /** Projects in which the company agreed to take part, with what it lets each have. */
  readonly takesPartIn: readonly { readonly projectId: string; readonly sharing: Sharing }[]
}

export interface RevisionSubject {
  readonly kind: 'revision'
  readonly projectId: string
  readonly stage: Stage
  /** Fabricators with whom it is shared. */
  readonly sharedWithCompanyIds: readonly string[]
  /** A signature stands on the present content. */
  readonly hasLiveSignature: boolean
  /** The person who asks was granted a capacity in which to sign; absent where it does not matter. */
  readonly hasCapacity?: boolean
}

export interface SignatureSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'signature'
  readonly signerId: string
}

export interface ItemSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'item'
  readonly answeredBy: readonly ProjectRole[]
}

export interface WaiverSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'waiver'
  /** The policy of the project lets the person who asks approve it: `explainNoApproval` says nothing. */
  readonly isIndependent: boolean
}

export interface ThreadSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'thread'
  readonly openedBy: string
  readonly openedByCompanyId: string
  /** The fabricator that takes part, and whose people alone see it beside the team; null is the team alone. */
  readonly audienceCompanyId: string | null
}

export interface ProposalSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'proposal'
  readonly proposedBy: string
  /** The fabricator that takes part, as for a thread. */
  readonly audienceCompanyId: string | null
}

export interface ReviewActionSubject extends Omit<RevisionSubject, 'kind'> {
  readonly kind: 'review-action'
  readonly ownerId: string
  readonly ownerCompanyId: string
  /** Who reported it done; null while nobody has. */
  readonly reportedById: string | null
  /** The fabricator that sees it beside the team; null is the team alone. */
  readonly audienceCompanyId: string | null
}

export interface CommentSubject extends Omit<ThreadSubject, 'kind'> {
  readonly kind: 'comment'
  readonly authorId: string
}

/** Every action there is, with the kind of thing that it is done to. */
export interface ActionSubjects {
  'workspace:view': WorkspaceSubject
  'settings:edit': WorkspaceSubject
  'limits:edit-workspace': WorkspaceSubject
  'catalogue:edit': WorkspaceSubject
  'account:manage': WorkspaceSubject
  'backup:make': WorkspaceSubject
  'trail:check': WorkspaceSubject
  'mail:view': WorkspaceSubject
  'project:create': WorkspaceSubject
  'company:confirm': WorkspaceSubject
  'account:edit-own': AccountSubject
  'company:view': CompanySubject
  'company:view-inside': CompanySubject
  'company:view-matrix': CompanySubject
  'company:view-shelf': CompanySubject
  'company:view-rates': CompanySubject
  'company:admit': CompanySubject
  'company:take-part': CompanySubject
  'company:share': CompanySubject
  'limits:edit-fabricator': CompanySubject
  'sheet:edit': CompanySubject
  'project:view': ProjectSubject
  'project:edit': ProjectSubject
  'project:invite': ProjectSubject
  'project:remove-person': ProjectSubject
  'policy:edit': ProjectSubject
  'capacity:grant': ProjectSubject
  'revision:create': ProjectSubject
  'revision:view': RevisionSubject
  'revision:view-trail': RevisionSubject
  'revision:edit': RevisionSubject
  'revision:share': RevisionSubject
  'revision:comment': RevisionSubject
  'revision:raise-query': RevisionSubject
  'revision:sign': RevisionSubject
  'signature:withdraw': SignatureSubject
  'revision:release': RevisionSubject
  'revision:withdraw': RevisionSubject
  'stage:move': RevisionSubject
  'policy:follow': RevisionSubject
  'review:declare': RevisionSubject
  'declaration:make': RevisionSubject
  'condition:decide': RevisionSubject
  'release:choose-fabricators': RevisionSubject
  'proposal:make': RevisionSubject
  'proposal:decide': RevisionSubject
  'proposal:view': ProposalSubject
  'proposal:withdraw': ProposalSubject
  'package:download': RevisionSubject
  'item:answer': ItemSubject
  'waiver:propose': RevisionSubject
  'waiver:approve': WaiverSubject
  'waiver:decline': WaiverSubject
  'thread:view': ThreadSubject
  'thread:reply': ThreadSubject
  'thread:answer': ThreadSubject
  'thread:close': ThreadSubject
  'comment:edit': CommentSubject
  'review-action:take-on': RevisionSubject
  'review-action:view': ReviewActionSubject
  'review-action:change': ReviewActionSubject
  'review-action:report': ReviewActionSubject
  'review-action:close': ReviewActionSubject
  'review-action:drop': ReviewActionSubject
  'review-action:reopen': ReviewActionSubject
}

export type Action = keyof ActionSubjects

type Rule<S> = (rights: Rights, subject: S) => boolean

/** One entry per action, and the compiler refuses a missing one: what it is done to, who may, and how a refusal says it. */
type Rules = {
  readonly [A in Action]: {
    readonly subject: ActionSubjects[A]['kind']
    /** As a refusal says it after `You may not`. Null where nobody is told: what they may not do is not there for them. */
    readonly mayNot: string | null
    readonly rule: Rule<ActionSubjects[A]>
  }
}

function hasRole(rights: Rights, projectId: string, roles: readonly ProjectRole[]): boolean {
  return rights.memberships.some((membership) => membership.projectId === projectId && roles.includes(membership.role))
}

function isOfCompany(rights: Rights, companyId: string, roles: readonly CompanyRole[] = COMPANY_ROLES): boolean {
  return rights.companies.some((own) => own.companyId === companyId && roles.includes(own.role))
}

/**
 * A fabricator of a company with whom the revision is shared, in the revision's own project. A place in the project is
 * not enough: the company itself must have admitted the person.
 */
function isFabricatorOf(rights: Rights, subject: Omit<RevisionSubject, 'kind'>): boolean {
  return rights.memberships.some(
    (membership) =>
      membership.role === 'fabricator' &&
      membership.projectId === subject.projectId &&
      subject.sharedWithCompanyIds.includes(membership.companyId) &&
      isOfCompany(rights, membership.companyId),
  )
}

const isAdmin: Rule<WorkspaceSubject> = (rights) => rights.isAdmin

const inProject =
  (...roles: ProjectRole[]): Rule<ProjectSubject> =>
  (rights, subject) =>
    hasRole(rights, subject.projectId, roles)

const isTeam = (rights: Rights, subject: { projectId: string }) =>
  hasRole(rights, subject.projectId, ['lead', 'member'])
const isLead = (rights: Rights, subject: { projectId: string }) => hasRole(rights, subject.projectId, ['lead'])
/** Quality reviews and approves, and changes no content: whoever does not make it can judge it. */
const isLeadOrQuality = (rights: Rights, subject: { projectId: string }) =>
  hasRole(rights, subject.projectId, ['lead', 'quality'])
const isTeamOrQuality = (rights: Rights, subject: { projectId: string }) =>
  hasRole(rights, subject.projectId, ['lead', 'member', 'quality'])
const readsProject = (rights: Rights, subject: { projectId: string }) => hasRole(rights, subject.projectId, OWN_ROLES)

/** Content may change until release; once signed only a lead may change it, which voids the signature. */
const canChangeContent = (rights: Rights, subject: Omit<RevisionSubject, 'kind'>) =>
  isOpenStage(subject.stage) && (isLead(rights, subject) || (isTeam(rights, subject) && !subject.hasLiveSignature))

const canComment = (rights: Rights, subject: Omit<RevisionSubject, 'kind'>) =>
  (isOpenStage(subject.stage) || subject.stage === 'released') &&
  (isTeamOrQuality(rights, subject) || isFabricatorOf(rights, subject))

/** A fabricator sees the threads in which its own company takes part, never another fabricator's or the team's own. */
const canSeeThread = (
  rights: Rights,
  subject: Omit<RevisionSubject, 'kind'> & { readonly audienceCompanyId: string | null },
) =>
  readsProject(rights, subject) ||
  (isFabricatorOf(rights, subject) &&
    subject.audienceCompanyId !== null &&
    isOwnCompanyIn(rights, subject.projectId, subject.audienceCompanyId))

const isOpenedByFabricator = (subject: Omit<ThreadSubject, 'kind'>) =>
  subject.audienceCompanyId !== null && subject.openedByCompanyId === subject.audienceCompanyId

function isOwnCompanyIn(rights: Rights, projectId: string, companyId: string): boolean {
  return rights.memberships.some(
    (membership) =>
      membership.role === 'fabricator' &&
      membership.projectId === projectId &&
      membership.companyId === companyId &&
      isOfCompany(rights, companyId),
  )
}

/** Actions live on with a revision that was released, and with one that a later release replaced. */
const areActionsLive = ({ stage }: { readonly stage: Stage }) =>
  isOpenStage(stage) || stage === 'released' || stage === 'superseded'

const mayActOn = (rights: Rights, subject: Omit<ReviewActionSubject, 'kind'>) =>
  areActionsLive(subject) &&
  canSeeThread(rights, subject) &&
  (isTeamOrQuality(rights, subject) || isFabricatorOf(rights, subject))

/** Neither who was to do it nor who says that it was done. */
const isSecondPerson = (rights: Rights, { ownerId, reportedById }: Omit<ReviewActionSubject, 'kind'>) =>
  rights.userId !== ownerId && rights.userId !== reportedById

interface CompanyRule {
  /** The company's own people, by their role in it. */
  readonly own: readonly CompanyRole[]
  /** Leads and members of a project in which it takes part, by what it lets that project have. */
  readonly team?: (sharing: Sharing) => boolean
  /** An admin of the workspace, outside of every project. */
  readonly admin?: boolean
}

const ofCompany =
  ({ own, team, admin = false }: CompanyRule): Rule<CompanySubject> =>
  (rights, { companyId, takesPartIn }) =>
    isOfCompany(rights, companyId, own) ||
    (admin && rights.isAdmin) ||
    (team !== undefined &&
      takesPartIn.some(({ projectId, sharing }) => team(sharing) && hasRole(rights, projectId, ['lead', 'member'])))

const RULES: Rules = {
  'workspace:view': { subject: 'workspace', mayNot: 'see the workspace', rule: isAdmin },
  'settings:edit': { subject: 'workspace', mayNot: 'change the settings of the workspace', rule: isAdmin },
  'limits:edit-workspace': { subject: 'workspace', mayNot: 'change the limits of the workspace', rule: isAdmin },
  'catalogue:edit': { subject: 'workspace', mayNot: 'change the catalogue of the workspace', rule: isAdmin },
  'account:manage': { subject: 'workspace', mayNot: 'manage accounts', rule: isAdmin },
  'backup:make': { subject: 'workspace', mayNot: 'make a backup', rule: isAdmin },
  'trail:check': { subject: 'workspace', mayNot: 'check the whole trail', rule: isAdmin },
  'mail:view': { subject: 'workspace', mayNot: null, rule: isAdmin },
  // A first project is an admin's to create; afterwards everybody on a team may, and becomes its lead.
  'project:create': {
    subject: 'workspace',
    mayNot: 'create a project',
    rule: (rights) =>
      rights.isAdmin || rights.memberships.some(({ role }) => ['lead', 'member', 'quality'].includes(role)),
  },
  'account:edit-own': {
    subject: 'account',
    mayNot: null,
    rule: (rights, subject) => rights.userId === subject.userId,
  },
  // Admits nobody by itself: it says which company a typed name stands for.
  'company:confirm': { subject: 'workspace', mayNot: 'say which company a name stands for', rule: isAdmin },
  'company:view': { subject: 'company', mayNot: null, rule: ofCompany({ own: COMPANY_ROLES, team: () => true }) },
  'company:view-inside': {
    subject: 'company',
    mayNot: "see this company's people and projects",
    rule: ofCompany({ own: COMPANY_ROLES }),
  },
  'company:view-matrix': {
    subject: 'company',
    mayNot: "see this fabricator's matrix and limits",
    rule: ofCompany({ own: COMPANY_ROLES, team: ({ matrix }) => matrix === 'shown' }),
  },
  'company:view-shelf': {
    subject: 'company',
    mayNot: "see this fabricator's shelf",
    rule: ofCompany({ own: COMPANY_ROLES, team: ({ shelf }) => shelf === 'shown' }),
  },
  'company:view-rates': {
    subject: 'company',
    mayNot: "see this fabricator's rates and panel formats",
    rule: ofCompany({ own: COMPANY_ROLES, team: ({ rates }) => rates === 'shown' }),
  },
  // Somebody has to name the first administrator; each admission is in the trail.
  'company:admit': {
    subject: 'company',
    mayNot: 'admit people to this company',
    rule: ofCompany({ own: ['administrator'], admin: true }),
  },
  'company:take-part': {
    subject: 'company',
    mayNot: 'decide in which projects this company takes part',
    rule: ofCompany({ own: ['administrator'] }),
  },
  'company:share': {
    subject: 'company',
    mayNot: 'choose what this company shows',
    rule: ofCompany({ own: ['administrator'] }),
  },
  // What a fabricator can build, holds and charges is for those of its people to say who have that right.
  'limits:edit-fabricator': {
    subject: 'company',
    mayNot: "change this fabricator's limits",
    rule: ofCompany({ own: ['administrator', 'sheet-writer'] }),
  },
  'sheet:edit': {
    subject: 'company',
    mayNot: "change this fabricator's sheets",
    rule: ofCompany({ own: ['administrator', 'sheet-writer'] }),
  },

  'project:view': {
    subject: 'project',
    mayNot: null,
    rule: (rights, { projectId }) =>
      readsProject(rights, { projectId }) ||
      rights.memberships.some((own) => own.projectId === projectId && isOwnCompanyIn(rights, projectId, own.companyId)),
  },
  'project:edit': { subject: 'project', mayNot: 'change this project', rule: inProject('lead') },
  'project:invite': { subject: 'project', mayNot: 'invite people to this project', rule: inProject('lead') },
  'project:remove-person': { subject: 'project', mayNot: 'change who is in this project', rule: inProject('lead') },
  'policy:edit': { subject: 'project', mayNot: 'change the sign-off policy', rule: inProject('lead') },
  // An admin as well: where a project has one lead, somebody else must say in what capacity the lead signs.
  'capacity:grant': {
    subject: 'project',
    mayNot: 'grant capacities in this project',
    rule: (rights, { projectId }) => rights.isAdmin || hasRole(rights, projectId, ['lead']),
  },
  'revision:create': {
    subject: 'project',
    mayNot: 'create a revision in this project',
    rule: inProject('lead', 'member'),
  },

  'revision:view': {
    subject: 'revision',
    mayNot: null,
    rule: (rights, subject) => readsProject(rights, subject) || isFabricatorOf(rights, subject),
  },
  'revision:view-trail': {
    subject: 'revision',
    mayNot: 'read the trail of this revision',
    rule: readsProject,
  },
  'revision:edit': { subject: 'revision', mayNot: 'change this revision', rule: canChangeContent },
  'revision:share': {
    subject: 'revision',
    mayNot: 'share this revision',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  'revision:comment': { subject: 'revision', mayNot: 'comment on this revision', rule: canComment },
  'revision:raise-query': {
    subject: 'revision',
    mayNot: 'raise an engineering query on this revision',
    rule: (rights, subject) => isOpenStage(subject.stage) && isFabricatorOf(rights, subject),
  },
  'revision:sign': {
    subject: 'revision',
    mayNot: 'sign this revision',
    rule: (rights, subject) =>
      subject.stage === 'awaiting-signature' && subject.hasCapacity === true && isTeamOrQuality(rights, subject),
  },
  // A signature is its signer's: nobody else takes it back, they send the revision back instead.
  'signature:withdraw': {
    subject: 'signature',
    mayNot: 'take this signature back',
    rule: (rights, subject) =>
      subject.stage === 'awaiting-signature' && subject.signerId === rights.userId && isTeamOrQuality(rights, subject),
  },
  'revision:release': {
    subject: 'revision',
    mayNot: 'release this revision',
    rule: (rights, subject) => subject.stage === 'awaiting-signature' && isLead(rights, subject),
  },
  'revision:withdraw': {
    subject: 'revision',
    mayNot: 'withdraw this revision',
    rule: (rights, subject) => (isOpenStage(subject.stage) || subject.stage === 'released') && isLead(rights, subject),
  },
  'stage:move': {
    subject: 'revision',
    mayNot: 'move this revision between stages',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  'policy:follow': {
    subject: 'revision',
    mayNot: 'put this revision under another sign-off policy',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  // Whether the person is an author of the content is asked beside this: it is the content's question, not the role's.
  'review:declare': {
    subject: 'revision',
    mayNot: 'declare this revision reviewed',
    rule: (rights, subject) =>
      isOpenStage(subject.stage) && subject.stage !== 'preparing' && isTeamOrQuality(rights, subject),
  },
  // Also while signature is awaited: a late edit leaves the declaration on other content, and it must be made again.
  'declaration:make': {
    subject: 'revision',
    mayNot: 'declare on this revision',
    rule: (rights, subject) =>
      (subject.stage === 'fabricator-review' || subject.stage === 'awaiting-signature') &&
      isFabricatorOf(rights, subject),
  },
  'condition:decide': {
    subject: 'revision',
    mayNot: "decide on a fabricator's condition",
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  'release:choose-fabricators': {
    subject: 'revision',
    mayNot: 'choose the fabricators of this release',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLead(rights, subject),
  },
  'proposal:make': {
    subject: 'revision',
    mayNot: 'propose a change of this revision',
    rule: (rights, subject) =>
      isOpenStage(subject.stage) && (isTeam(rights, subject) || isFabricatorOf(rights, subject)),
  },
  'proposal:decide': { subject: 'revision', mayNot: 'decide on a proposal for this revision', rule: canChangeContent },
  'proposal:view': { subject: 'proposal', mayNot: null, rule: canSeeThread },
  'proposal:withdraw': {
    subject: 'proposal',
    mayNot: 'withdraw this proposal',
    rule: (rights, subject) =>
      isOpenStage(subject.stage) && canSeeThread(rights, subject) && subject.proposedBy === rights.userId,
  },
  'package:download': {
    subject: 'revision',
    mayNot: 'download the package of this revision',
    rule: (rights, subject) =>
      (readsProject(rights, subject) && ['released', 'superseded', 'withdrawn'].includes(subject.stage)) ||
      (isFabricatorOf(rights, subject) && ['released', 'superseded'].includes(subject.stage)),
  },

  'item:answer': {
    subject: 'item',
    mayNot: 'answer this item',
    rule: (rights, subject) =>
      (subject.answeredBy.some((role) => role === 'lead' || role === 'member') && canChangeContent(rights, subject)) ||
      (subject.answeredBy.includes('fabricator') &&
        isOpenStage(subject.stage) &&
        !subject.hasLiveSignature &&
        isFabricatorOf(rights, subject)),
  },
  'waiver:propose': { subject: 'revision', mayNot: 'propose a waiver on this revision', rule: canChangeContent },
  'waiver:approve': {
    subject: 'waiver',
    mayNot: 'approve this waiver',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLeadOrQuality(rights, subject) && subject.isIndependent,
  },
  'waiver:decline': {
    subject: 'waiver',
    mayNot: 'decline this waiver',
    rule: (rights, subject) => isOpenStage(subject.stage) && isLeadOrQuality(rights, subject),
  },

  'thread:view': { subject: 'thread', mayNot: null, rule: canSeeThread },
  'thread:reply': {
    subject: 'thread',
    mayNot: 'reply in this thread',
    rule: (rights, subject) => canComment(rights, subject) && canSeeThread(rights, subject),
  },
  // The other side answers: the team what a fabricator asked, and anybody who can comment what the team asked.
  'thread:answer': {
    subject: 'thread',
    mayNot: 'answer this thread',
    rule: (rights, subject) =>
      canComment(rights, subject) &&
      canSeeThread(rights, subject) &&
      (isTeamOrQuality(rights, subject) || !isOpenedByFabricator(subject)),
  },
  'thread:close': {
    subject: 'thread',
    mayNot: 'close this thread',
    rule: (rights, subject) =>
      canComment(rights, subject) &&
      canSeeThread(rights, subject) &&
      (isLead(rights, subject) ||
        subject.openedBy === rights.userId ||
        (isOpenedByFabricator(subject) && isOwnCompanyIn(rights, subject.projectId, subject.openedByCompanyId))),
  },
  'comment:edit': {
    subject: 'comment',
    mayNot: 'change this comment',
    rule: (rights, subject) =>
      canComment(rights, subject) && canSeeThread(rights, subject) && subject.authorId === rights.userId,
  },

  'review-action:take-on': {
    subject: 'revision',
    mayNot: 'take on an action on this revision',
    rule: (rights, subject) => areActionsLive(subject) && isTeamOrQuality(rights, subject),
  },
  'review-action:view': { subject: 'review-action', mayNot: null, rule: canSeeThread },
  // Who is to do it does not set its day: a move past the release would lift what blocks it.
  'review-action:change': {
    subject: 'review-action',
    mayNot: 'change owner or due date of this action',
    rule: (rights, subject) =>
      mayActOn(rights, subject) && isTeamOrQuality(rights, subject) && rights.userId !== subject.ownerId,
  },
  'review-action:report': {
    subject: 'review-action',
    mayNot: 'report this action done',
    rule: (rights, subject) =>
      mayActOn(rights, subject) && (rights.userId === subject.ownerId || isTeamOrQuality(rights, subject)),
  },
  'review-action:close': {
    subject: 'review-action',
    mayNot: 'close this action',
    rule: (rights, subject) =>
      mayActOn(rights, subject) &&
      isSecondPerson(rights, subject) &&
      // A fabricator does not accept the work of its own people.
      (isTeamOrQuality(rights, subject) || subject.ownerCompanyId !== subject.audienceCompanyId),
  },
  'review-action:drop': {
    subject: 'review-action',
    mayNot: 'drop this action',
    rule: (rights, subject) =>
      mayActOn(rights, subject) && isLead(rights, subject) && rights.userId !== subject.ownerId,
  },
  'review-action:reopen': {
    subject: 'review-action',
    mayNot: 'reopen this action',
    rule: mayActOn,
  },
}

export const ACTIONS = Object.keys(RULES) as readonly Action[]

/**
 * May this person do this to that? The one question of authorisation, asked by screens and by the data layer alike.
 * Whatever it does not know (an action, a role, a stage, a mismatched subject) is refused: a rank that is missing
 * must never compare as high enough.
 */
export function isAllowed<A extends Action>(rights: Rights, action: A, subject: ActionSubjects[A]): boolean {
  if (!Object.hasOwn(RULES, action) || subject.kind !== RULES[action].subject) return false
  return RULES[action].rule(rights, subject) === true
}

/** The kind of thing that an action is done to. */
export function getSubjectKind<A extends Action>(action: A): ActionSubjects[A]['kind'] {
  return RULES[action].subject
}

/** An action in the words of a mayNot: `change this revision`. */
export function describeAct(action: Action): string {
  return RULES[action].mayNot ?? 'do this'
}
