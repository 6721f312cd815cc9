import 'server-only'
import {
  type Action,
  type ActionSubjects,
  COMPANY_ROLES,
  type CompanyMembership,
  type CompanyRole,
  type CompanySubject,
  describeAct,
  explainNoAnswer,
  findMemberships,
  isAllowed,
  isOpenStage,
  isStage,
  PROJECT_ROLES,
  type ProjectRole,
  type RevisionSubject,
  type Rights,
  STAGE_LABELS,
  STAGES,
  type Stage,
} from '@/lib/review'
import type { TransactionClient } from '../store/client'
import { NotAllowedError, NotFoundError, refuseClash } from '../store/errors'
import { readTogether } from '../store/read-together'
import { readSharing } from './sharing-columns'

/**
 * The one place where a right is asked for. Each function takes the person's rights, the record that was loaded
 * with its own parents, and the action; ids that a request carries are only a wish. The rules themselves are the
 * policy's, in `lib/review`.
 */

/** Who is acting, as a session knows it. */
export interface Actor {
  readonly userId: string
  readonly name: string
  readonly email: string
  readonly isAdmin: boolean
  readonly memberships: readonly { readonly projectId: string; readonly role: string; readonly companyId: string }[]
  /** Fabricators whose own people they are. */
  readonly companies: readonly { readonly companyId: string; readonly role: string }[]
  /** Null for a program that acts without a session. */
  readonly sessionId: string | null
}

/** The person's rights as the database has them now, in this transaction. */
export interface PersonRights extends Rights {
  readonly name: string
}

/** @throws NotAllowedError when the account is gone or disabled since the session began */
export async function loadRights(tx: TransactionClient, userId: string): Promise<PersonRights> {
  const { users, memberships, companies } = await readTogether(tx, {
    users: { model: 'User', only: ['id', 'name', 'isAdmin', 'disabledAt'], among: { id: [userId] } },
    memberships: { model: 'Membership', only: ['projectId', 'role', 'companyId'], among: { userId: [userId] } },
    companies: { model: 'CompanyPerson', only: ['companyId', 'role'], among: { userId: [userId] } },
  } as const)
  const [user] = users
  if (user === undefined || user.disabledAt !== null) throw new NotAllowedError('act with an account that is disabled')
  return toRights({ ...user, memberships, companies })
}

interface RightsRow {
  readonly id: string
  readonly name: string
  readonly isAdmin: boolean
  readonly memberships: readonly { readonly projectId: string; readonly role: string; readonly companyId: string }[]
  readonly companies: readonly { readonly companyId: string; readonly role: string }[]
}

/** Rights out of a person's row, where many are read at once. */
export function toRights(user: RightsRow): PersonRights {
  return {
    userId: user.id,
    name: user.name,
    isAdmin: user.isAdmin,
    // A role that this version does not know gives no right at all.
    memberships: user.memberships.flatMap(({ projectId, role, companyId }) =>
      isProjectRole(role) ? [{ projectId, role, companyId }] : [],
    ),
    companies: readCompanyRoles(user.companies),
  }
}

export function readCompanyRoles(
  rows: readonly { readonly companyId: string; readonly role: string }[],
): readonly CompanyMembership[] {
  return rows.flatMap(({ companyId, role }) => (isCompanyRole(role) ? [{ companyId, role }] : []))
}

export function isCompanyRole(role: string): role is CompanyRole {
  return (COMPANY_ROLES as readonly string[]).includes(role)
}

export function isProjectRole(role: string): role is ProjectRole {
  return (PROJECT_ROLES as readonly string[]).includes(role)
}

export function getMembership(rights: PersonRights, projectId: string) {
  return findMemberships(rights, projectId)[0] ?? null
}

/** The company as whose people the person sees a project's revisions; null for the team and its observers. */
export function getFabricatorCompanyId(rights: PersonRights, projectId: string): string | null {
  const membership = getMembership(rights, projectId)
  return membership?.role === 'fabricator' ? membership.companyId : null
}

const WORKSPACE = { kind: 'workspace' } as const

type WorkspaceAction = { [A in Action]: ActionSubjects[A] extends { kind: 'workspace' } ? A : never }[Action]

export function mayInWorkspace(rights: PersonRights, action: WorkspaceAction): boolean {
  return isAllowed(rights, action, WORKSPACE as ActionSubjects[WorkspaceAction])
}

export function requireInWorkspace(rights: PersonRights, action: WorkspaceAction): void {
  if (!mayInWorkspace(rights, action)) throw new NotAllowedError(describeAct(action))
}

type ProjectAction = { [A in Action]: ActionSubjects[A] extends { kind: 'project' } ? A : never }[Action]

export function mayInProject(rights: PersonRights, action: ProjectAction, projectId: string): boolean {
  return isAllowed(rights, action, { kind: 'project', projectId } as ActionSubjects[ProjectAction])
}

/** Loads a project for a person who may see it and do the action to it. */
export async function requireProject(
  tx: TransactionClient,
  rights: PersonRights,
  projectId: string,
  action: ProjectAction = 'project:view',
) {
  const project = await tx.project.findUnique({ where: { id: projectId } })
  if (project === null || !mayInProject(rights, 'project:view', project.id)) throw new NotFoundError('project')
  if (!mayInProject(rights, action, project.id)) throw new NotAllowedError(describeAct(action))
  return project
}

type RevisionAction = { [A in Action]: ActionSubjects[A] extends { kind: 'revision' } ? A : never }[Action]

/** What the policy asks about a revision, from the record's own rows. */
export interface RevisionScope {
  readonly subject: RevisionSubject
  readonly revision: {
    readonly id: string
    readonly projectId: string
    readonly label: string
    readonly version: number
    readonly designVersion: number
    readonly stage: Stage
  }
  /** Null for the team and its observers. */
  readonly fabricatorCompanyId: string | null
}

export function readStage(stage: string): Stage {
  if (!isStage(stage)) throw new Error(`a revision has the unknown stage "${stage}"`)
  return stage
}

export function mayOnRevision(rights: PersonRights, action: RevisionAction, subject: RevisionSubject): boolean {
  return isAllowed(rights, action, subject as ActionSubjects[RevisionAction])
}

/** Loads what authorisation needs of a revision, for a person who may see it. */
export async function requireRevisionInView(
  tx: TransactionClient,
  rights: PersonRights,
  revisionId: string,
  subjectName = 'revision',
): Promise<RevisionScope> {
  const found = await readTogether(tx, {
    revisions: {
      model: 'Revision',
      only: ['id', 'projectId', 'label', 'stage', 'version', 'designVersion'],
      among: { id: [revisionId] },
    },
    shares: { model: 'RevisionShare', only: ['companyId'], among: { revisionId: [revisionId] } },
    signatures: { model: 'Signature', only: ['id'], among: { revisionId: [revisionId] }, isNull: ['voidedAt'] },
  } as const)
  const [row] = found.revisions
  const scope =
    row === undefined ? null : findRevisionScope(rights, { ...row, shares: found.shares }, found.signatures.length > 0)
  if (scope === null) throw new NotFoundError(subjectName)
  return scope
}

interface ScopeRow {
  readonly id: string
  readonly projectId: string
  readonly label: string
  readonly stage: string
  readonly version: number
  readonly designVersion: number
  readonly shares: readonly { readonly companyId: string }[]
}

/** The columns of a revision that `findRevisionScope` asks for, with the name of the project for a list. */
export const SCOPE_COLUMNS = {
  id: true,
  projectId: true,
  label: true,
  stage: true,
  version: true,
  designVersion: true,
  shares: { select: { companyId: true } },
  project: { select: { name: true } },
} as const

/** What the policy asks about a revision whose rows are at hand; null for a person who may not see it. */
export function findRevisionScope(
  rights: PersonRights,
  { id, projectId, label, version, designVersion, ...row }: ScopeRow,
  hasLiveSignature: boolean,
): RevisionScope | null {
  const stage = readStage(row.stage)
  const subject: RevisionSubject = {
    kind: 'revision',
    projectId,
    stage,
    sharedWithCompanyIds: row.shares.map((share) => share.companyId),
    hasLiveSignature,
  }
  return mayOnRevision(rights, 'revision:view', subject)
    ? {
        subject,
        revision: { id, projectId, label, version, designVersion, stage },
        fabricatorCompanyId: getFabricatorCompanyId(rights, projectId),
      }
    : null
}

/** Loads a revision for a person who may see it and do the action to it at its present stage. */
export async function requireRevision(
  tx: TransactionClient,
  rights: PersonRights,
  revisionId: string,
  action: RevisionAction,
): Promise<RevisionScope> {
  const scope = await requireRevisionInView(tx, rights, revisionId)
  requireOnRevision(rights, scope, action)
  return scope
}

/**
 * Somebody who could do it at another stage is told that the stage stands in the way; anybody else, that it is not
 * theirs to do.
 */
export function requireOnRevision(rights: PersonRights, scope: RevisionScope, action: RevisionAction): void {
  requireAtStage(rights, scope.subject, action, (subject) => subject as ActionSubjects[RevisionAction])
}

/**
 * As `requireOnRevision`, for things that lie in a revision.
 *
 * @param who  who may, as a sentence: for somebody whose turn it never is
 */
export function requireAtStage<A extends Action>(
  rights: PersonRights,
  revision: RevisionSubject,
  action: A,
  makeSubject: (revision: RevisionSubject) => ActionSubjects[A],
  who = '',
): void {
  if (isAllowed(rights, action, makeSubject(revision))) return
  const elsewhere = STAGES.some((stage) =>
    isAllowed(rights, action, makeSubject({ ...revision, stage, hasLiveSignature: revision.hasLiveSignature })),
  )
  if (elsewhere) {
    refuseClash(
      isOpenStage(revision.stage)
        ? `At the stage "${STAGE_LABELS[revision.stage]}" nobody can ${describeAct(action)}.`
        : `The revision is ${STAGE_LABELS[revision.stage]}: nobody can ${describeAct(action)} any more. A copy can be changed.`,
    )
  }
  const unsigned = { ...revision, hasLiveSignature: false }
  if (revision.hasLiveSignature && isAllowed(rights, action, makeSubject(unsigned))) {
    refuseClash(`The revision is signed. Only a lead can ${describeAct(action)} now, and that voids the signature.`)
  }
  throw new NotAllowedError(describeAct(action), who)
}

/** Somebody who may not answer an item is told who may. */
export function requireAnswerer(
  rights: PersonRights,
  revision: RevisionSubject,
  answeredBy: readonly ProjectRole[],
): void {
  const makeSubject = (subject: RevisionSubject) => ({ ...subject, kind: 'item', answeredBy }) as const
  requireAtStage(rights, revision, 'item:answer', makeSubject, explainNoAnswer(rights, makeSubject(revision)))
}

/** What the policy asks about a thread. */
export interface ThreadScopeRow {
  /** The fabricator that takes part; null is the team alone. */
  readonly audienceCompanyId: string | null
  readonly openedById: string
  readonly openedByCompanyId: string
}

/** A fabricator sees the threads in which its own company takes part, and no other. */
export function maySeeThread(rights: PersonRights, revision: RevisionSubject, thread: ThreadScopeRow): boolean {
  return isAllowed(rights, 'thread:view', makeThreadSubject(revision, thread))
}

export function makeThreadSubject(revision: RevisionSubject, thread: ThreadScopeRow) {
  return {
    ...revision,
    kind: 'thread' as const,
    openedBy: thread.openedById,
    openedByCompanyId: thread.openedByCompanyId,
    audienceCompanyId: thread.audienceCompanyId,
  }
}

/** What the policy asks about an action. */
export interface ReviewActionScopeRow {
  readonly ownerId: string
  readonly ownerCompanyId: string
  readonly reportedById: string | null
  readonly audienceCompanyId: string | null
}

export function makeReviewActionSubject(revision: RevisionSubject, action: ReviewActionScopeRow) {
  const { ownerId, ownerCompanyId, reportedById, audienceCompanyId } = action
  return { ...revision, kind: 'review-action' as const, ownerId, ownerCompanyId, reportedById, audienceCompanyId }
}

/** A fabricator sees the actions in which its own company takes part, and no other. */
export function maySeeReviewAction(
  rights: PersonRights,
  revision: RevisionSubject,
  action: ReviewActionScopeRow,
): boolean {
  return isAllowed(rights, 'review-action:view', makeReviewActionSubject(revision, action))
}

/** What the policy asks about a proposal. */
export interface ProposalScopeRow {
  readonly audienceCompanyId: string | null
  readonly proposedById: string
}

export function makeProposalSubject(revision: RevisionSubject, proposal: ProposalScopeRow) {
  return {
    ...revision,
    kind: 'proposal' as const,
    proposedBy: proposal.proposedById,
    audienceCompanyId: proposal.audienceCompanyId,
  }
}

/** A fabricator sees the proposals in which its own company takes part, and no other. */
export function maySeeProposal(rights: PersonRights, revision: RevisionSubject, proposal: ProposalScopeRow): boolean {
  return isAllowed(rights, 'proposal:view', makeProposalSubject(revision, proposal))
}

export type CompanyAction = { [A in Action]: ActionSubjects[A] extends { kind: 'company' } ? A : never }[Action]

/** What the policy asks about companies: where each takes part, and what it lets those projects have. */
export async function loadCompanySubjects(
  tx: TransactionClient,
  companyIds: readonly string[],
): Promise<ReadonlyMap<string, CompanySubject>> {
  const rows = await tx.participation.findMany({
    where: { companyId: { in: [...companyIds] }, state: 'takes-part' },
    orderBy: { askedAt: 'asc' },
  })
  return new Map(
    companyIds.map((companyId) => [
      companyId,
      {
        kind: 'company',
        companyId,
        takesPartIn: rows
          .filter((row) => row.companyId === companyId)
          .map((row) => ({ projectId: row.projectId, sharing: readSharing(row) })),
      },
    ]),
  )
}

/** A company for a person who may see it. */
export async function requireCompany(
  tx: TransactionClient,
  rights: PersonRights,
  companyId: string,
  action: CompanyAction,
) {
  const company = await tx.company.findUnique({ where: { id: companyId } })
  if (company === null || company.kind !== 'fabricator') throw new NotFoundError('company')
  const subject = (await loadCompanySubjects(tx, [company.id])).get(company.id)
  if (subject === undefined) throw new NotFoundError('company')
  const may = (asked: CompanyAction) => isAllowed(rights, asked, subject)
  // An admin of the workspace may admit the first people of a company whose pages are not theirs to see.
  if (!may('company:view') && !may('company:admit')) throw new NotFoundError('company')
  if (!may(action)) throw new NotAllowedError(describeAct(action))
  return { company, subject, may, mayEdit: may('limits:edit-fabricator') }
}
