import { isOpenStage, type Stage } from './stages'

/** What a person is in one project. Being admin of the workspace is no role in any project. */
export const PROJECT_ROLES = ['lead', 'member', 'fabricator', 'observer'] as const
export type ProjectRole = (typeof PROJECT_ROLES)[number]

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

/** Who acts: rights come from here and from nowhere else. */
export interface Actor {
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
  /** The workspace has members sign in a capacity of theirs; absent where it does not matter. */
  readonly membersMaySign?: boolean
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
  readonly proposedBy: string
  /** The workspace's setting. */
  readonly needsSecondPerson: boolean
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
  'declaration:make': RevisionSubject
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
}

export type Action = keyof ActionSubjects

type Rule<S> = (actor: Actor, subject: S) => boolean

/** A table with one rule per action: the compiler refuses a missing one. */
type Rules = { readonly [A in Action]: Rule<ActionSubjects[A]> }

function hasRole(actor: Actor, projectId: string, roles: readonly ProjectRole[]): boolean {
  return actor.memberships.some((membership) => membership.projectId === projectId && roles.includes(membership.role))
}

function isOfCompany(actor: Actor, companyId: string, roles: readonly CompanyRole[] = COMPANY_ROLES): boolean {
  return actor.companies.some((own) => own.companyId === companyId && roles.includes(own.role))
}

/**
 * A fabricator of a company with whom the revision is shared, in the revision's own project. A place in the project is
 * not enough: the company itself must have admitted the person.
 */
function isFabricatorOf(actor: Actor, subject: Omit<RevisionSubject, 'kind'>): boolean {
  return actor.memberships.some(
    (membership) =>
      membership.role === 'fabricator' &&
      membership.projectId === subject.projectId &&
      subject.sharedWithCompanyIds.includes(membership.companyId) &&
      isOfCompany(actor, membership.companyId),
  )
}

const isAdmin: Rule<WorkspaceSubject> = (actor) => actor.isAdmin

const inProject =
  (...roles: ProjectRole[]): Rule<ProjectSubject> =>
  (actor, subject) =>
    hasRole(actor, subject.projectId, roles)

const isTeam = (actor: Actor, subject: { projectId: string }) => hasRole(actor, subject.projectId, ['lead', 'member'])
const isLead = (actor: Actor, subject: { projectId: string }) => hasRole(actor, subject.projectId, ['lead'])

/** Content may change until release; once signed only a lead may change it, which voids the signature. */
const canChangeContent = (actor: Actor, subject: Omit<RevisionSubject, 'kind'>) =>
  isOpenStage(subject.stage) && (isLead(actor, subject) || (isTeam(actor, subject) && !subject.hasLiveSignature))

const canComment = (actor: Actor, subject: Omit<RevisionSubject, 'kind'>) =>
  (isOpenStage(subject.stage) || subject.stage === 'released') &&
  (isTeam(actor, subject) || isFabricatorOf(actor, subject))

/** A fabricator sees the threads in which the own company takes part, never another fabricator's or the team's own. */
const canSeeThread = (
  actor: Actor,
  subject: Omit<RevisionSubject, 'kind'> & { readonly audienceCompanyId: string | null },
) =>
  hasRole(actor, subject.projectId, ['lead', 'member', 'observer']) ||
  (isFabricatorOf(actor, subject) &&
    subject.audienceCompanyId !== null &&
    isOwnCompanyIn(actor, subject.projectId, subject.audienceCompanyId))

const isOpenedByFabricator = (subject: Omit<ThreadSubject, 'kind'>) =>
  subject.audienceCompanyId !== null && subject.openedByCompanyId === subject.audienceCompanyId

function isOwnCompanyIn(actor: Actor, projectId: string, companyId: string): boolean {
  return actor.memberships.some(
    (membership) =>
      membership.role === 'fabricator' &&
      membership.projectId === projectId &&
      membership.companyId === companyId &&
      isOfCompany(actor, companyId),
  )
}

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
  (actor, { companyId, takesPartIn }) =>
    isOfCompany(actor, companyId, own) ||
    (admin && actor.isAdmin) ||
    (team !== undefined &&
      takesPartIn.some(({ projectId, sharing }) => team(sharing) && hasRole(actor, projectId, ['lead', 'member'])))

const RULES: Rules = {
  'workspace:view': isAdmin,
  'settings:edit': isAdmin,
  'limits:edit-workspace': isAdmin,
  'catalogue:edit': isAdmin,
  'account:manage': isAdmin,
  'backup:make': isAdmin,
  'trail:check': isAdmin,
  'mail:view': isAdmin,
  // A first project is an admin's to create; afterwards everybody on a team may, and becomes its lead.
  'project:create': (actor) =>
    actor.isAdmin || actor.memberships.some(({ role }) => role === 'lead' || role === 'member'),
  'account:edit-own': (actor, subject) => actor.userId === subject.userId,
  // Admits nobody by itself: it says which company a typed name stands for.
  'company:confirm': isAdmin,
  'company:view': ofCompany({ own: COMPANY_ROLES, team: () => true }),
  'company:view-inside': ofCompany({ own: COMPANY_ROLES }),
  'company:view-matrix': ofCompany({ own: COMPANY_ROLES, team: ({ matrix }) => matrix === 'shown' }),
  'company:view-shelf': ofCompany({ own: COMPANY_ROLES, team: ({ shelf }) => shelf === 'shown' }),
  'company:view-rates': ofCompany({ own: COMPANY_ROLES, team: ({ rates }) => rates === 'shown' }),
  // Somebody has to name the first administrator; each admission is in the trail.
  'company:admit': ofCompany({ own: ['administrator'], admin: true }),
  'company:take-part': ofCompany({ own: ['administrator'] }),
  'company:share': ofCompany({ own: ['administrator'] }),
  // What a fabricator can build, holds and charges is for those of its people to say who have that right.
  'limits:edit-fabricator': ofCompany({ own: ['administrator', 'sheet-writer'] }),
  'sheet:edit': ofCompany({ own: ['administrator', 'sheet-writer'] }),

  'project:view': (actor, { projectId }) =>
    hasRole(actor, projectId, ['lead', 'member', 'observer']) ||
    actor.memberships.some((own) => own.projectId === projectId && isOwnCompanyIn(actor, projectId, own.companyId)),
  'project:edit': inProject('lead'),
  'project:invite': inProject('lead'),
  'project:remove-person': inProject('lead'),
  'revision:create': inProject('lead', 'member'),

  'revision:view': (actor, subject) =>
    hasRole(actor, subject.projectId, ['lead', 'member', 'observer']) || isFabricatorOf(actor, subject),
  'revision:view-trail': (actor, subject) => hasRole(actor, subject.projectId, ['lead', 'member', 'observer']),
  'revision:edit': canChangeContent,
  'revision:share': (actor, subject) => isOpenStage(subject.stage) && isLead(actor, subject),
  'revision:comment': canComment,
  'revision:raise-query': (actor, subject) => isOpenStage(subject.stage) && isFabricatorOf(actor, subject),
  'revision:sign': (actor, subject) =>
    subject.stage === 'awaiting-signature' &&
    (isLead(actor, subject) || (subject.membersMaySign === true && isTeam(actor, subject))),
  // A signature is its signer's: nobody else takes it back, they send the revision back instead.
  'signature:withdraw': (actor, subject) =>
    subject.stage === 'awaiting-signature' && subject.signerId === actor.userId && isTeam(actor, subject),
  'revision:release': (actor, subject) => subject.stage === 'awaiting-signature' && isLead(actor, subject),
  'revision:withdraw': (actor, subject) =>
    (isOpenStage(subject.stage) || subject.stage === 'released') && isLead(actor, subject),
  'stage:move': (actor, subject) => isOpenStage(subject.stage) && isLead(actor, subject),
  // Also while signature is awaited: a late edit leaves the declaration on other content, and it must be made anew.
  'declaration:make': (actor, subject) =>
    (subject.stage === 'fabricator-review' || subject.stage === 'awaiting-signature') && isFabricatorOf(actor, subject),
  'proposal:make': (actor, subject) =>
    isOpenStage(subject.stage) && (isTeam(actor, subject) || isFabricatorOf(actor, subject)),
  'proposal:decide': canChangeContent,
  'proposal:view': canSeeThread,
  'proposal:withdraw': (actor, subject) =>
    isOpenStage(subject.stage) && canSeeThread(actor, subject) && subject.proposedBy === actor.userId,
  'package:download': (actor, subject) =>
    (hasRole(actor, subject.projectId, ['lead', 'member', 'observer']) &&
      ['released', 'superseded', 'withdrawn'].includes(subject.stage)) ||
    (isFabricatorOf(actor, subject) && ['released', 'superseded'].includes(subject.stage)),

  'item:answer': (actor, subject) =>
    (subject.answeredBy.some((role) => role === 'lead' || role === 'member') && canChangeContent(actor, subject)) ||
    (subject.answeredBy.includes('fabricator') &&
      isOpenStage(subject.stage) &&
      !subject.hasLiveSignature &&
      isFabricatorOf(actor, subject)),
  'waiver:propose': canChangeContent,
  'waiver:approve': (actor, subject) =>
    isOpenStage(subject.stage) &&
    isLead(actor, subject) &&
    (!subject.needsSecondPerson || subject.proposedBy !== actor.userId),
  'waiver:decline': (actor, subject) => isOpenStage(subject.stage) && isLead(actor, subject),

  'thread:view': canSeeThread,
  'thread:reply': (actor, subject) => canComment(actor, subject) && canSeeThread(actor, subject),
  // The other side answers: the team what a fabricator asked, and anybody who can comment what the team asked.
  'thread:answer': (actor, subject) =>
    canComment(actor, subject) &&
    canSeeThread(actor, subject) &&
    (isTeam(actor, subject) || !isOpenedByFabricator(subject)),
  'thread:close': (actor, subject) =>
    canComment(actor, subject) &&
    canSeeThread(actor, subject) &&
    (isLead(actor, subject) ||
      subject.openedBy === actor.userId ||
      (isOpenedByFabricator(subject) && isOwnCompanyIn(actor, subject.projectId, subject.openedByCompanyId))),
  'comment:edit': (actor, subject) =>
    canComment(actor, subject) && canSeeThread(actor, subject) && subject.authorId === actor.userId,
}

export const ACTIONS = Object.keys(RULES) as readonly Action[]

/**
 * May this actor do this to that? The one question of authorisation, asked by screens and by the data layer alike.
 * Whatever it does not know (an action, a role, a stage, a mismatched subject) is refused: a rank that is missing
 * must never compare as high enough.
 */
export function isAllowed<A extends Action>(actor: Actor, action: A, subject: ActionSubjects[A]): boolean {
  if (!Object.hasOwn(RULES, action) || subject.kind !== SUBJECT_KINDS[action]) return false
  return RULES[action](actor, subject) === true
}

/** The kind of subject of each action, for the check at run time that the types promise at compile time. */
export const SUBJECT_KINDS: { readonly [A in Action]: ActionSubjects[A]['kind'] } = {
  'workspace:view': 'workspace',
  'settings:edit': 'workspace',
  'limits:edit-workspace': 'workspace',
  'catalogue:edit': 'workspace',
  'account:manage': 'workspace',
  'backup:make': 'workspace',
  'trail:check': 'workspace',
  'mail:view': 'workspace',
  'project:create': 'workspace',
  'company:confirm': 'workspace',
  'account:edit-own': 'account',
  'company:view': 'company',
  'company:view-inside': 'company',
  'company:view-matrix': 'company',
  'company:view-shelf': 'company',
  'company:view-rates': 'company',
  'company:admit': 'company',
  'company:take-part': 'company',
  'company:share': 'company',
  'limits:edit-fabricator': 'company',
  'sheet:edit': 'company',
  'project:view': 'project',
  'project:edit': 'project',
  'project:invite': 'project',
  'project:remove-person': 'project',
  'revision:create': 'project',
  'revision:view': 'revision',
  'revision:view-trail': 'revision',
  'revision:edit': 'revision',
  'revision:share': 'revision',
  'revision:comment': 'revision',
  'revision:raise-query': 'revision',
  'revision:sign': 'revision',
  'signature:withdraw': 'signature',
  'revision:release': 'revision',
  'revision:withdraw': 'revision',
  'stage:move': 'revision',
  'declaration:make': 'revision',
  'proposal:make': 'revision',
  'proposal:decide': 'revision',
  'proposal:view': 'proposal',
  'proposal:withdraw': 'proposal',
  'package:download': 'revision',
  'item:answer': 'item',
  'waiver:propose': 'revision',
  'waiver:approve': 'waiver',
  'waiver:decline': 'waiver',
  'thread:view': 'thread',
  'thread:reply': 'thread',
  'thread:answer': 'thread',
  'thread:close': 'thread',
  'comment:edit': 'comment',
}
