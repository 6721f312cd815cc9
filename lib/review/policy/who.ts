import { isOpenStage, type Stage } from '../stages'
import type { Rule } from './actions'
import {
  COMPANY_ROLES,
  type CompanyRole,
  type Membership,
  OWN_ROLES,
  type ProjectRole,
  type Rights,
  type Sharing,
} from './rights'
import type {
  CompanySubject,
  ProjectSubject,
  ReviewActionSubject,
  RevisionSubject,
  ThreadSubject,
  WorkspaceSubject,
} from './subjects'

/** Lists ask of thousands of revisions, for people who are in thousands of projects: what is the same for one list of places is sorted once. */
const sorted = new WeakMap<readonly Membership[], ReadonlyMap<string, readonly Membership[]>>()

/** What the person is in one project. */
export function findMemberships({ memberships }: Rights, projectId: string): readonly Membership[] {
  const known = sorted.get(memberships)
  if (known !== undefined) return known.get(projectId) ?? []
  const byProject = new Map<string, Membership[]>()
  for (const membership of memberships) {
    const own = byProject.get(membership.projectId)
    if (own === undefined) byProject.set(membership.projectId, [membership])
    else own.push(membership)
  }
  sorted.set(memberships, byProject)
  return byProject.get(projectId) ?? []
}

export function hasRole(rights: Rights, projectId: string, roles: readonly ProjectRole[]): boolean {
  return findMemberships(rights, projectId).some(({ role }) => roles.includes(role))
}

function isOfCompany(rights: Rights, companyId: string, roles: readonly CompanyRole[] = COMPANY_ROLES): boolean {
  return rights.companies.some((own) => own.companyId === companyId && roles.includes(own.role))
}

/**
 * A fabricator of a company with whom the revision is shared, in the revision's own project. A place in the project is
 * not enough: the company itself must have admitted the person.
 */
export function isFabricatorOf(rights: Rights, subject: Omit<RevisionSubject, 'kind'>): boolean {
  return findMemberships(rights, subject.projectId).some(
    (membership) =>
      membership.role === 'fabricator' &&
      subject.sharedWithCompanyIds.includes(membership.companyId) &&
      isOfCompany(rights, membership.companyId),
  )
}

export function isOnSomeTeam(rights: Rights, roles: readonly ProjectRole[]): boolean {
  return rights.memberships.some(({ role }) => roles.includes(role))
}

export const isAdmin: Rule<WorkspaceSubject> = (rights) => rights.isAdmin

export const inProject =
  (...roles: ProjectRole[]): Rule<ProjectSubject> =>
  (rights, subject) =>
    hasRole(rights, subject.projectId, roles)

export const isTeam = (rights: Rights, subject: { projectId: string }) =>
  hasRole(rights, subject.projectId, ['lead', 'member'])
export const isLead = (rights: Rights, subject: { projectId: string }) => hasRole(rights, subject.projectId, ['lead'])
/** Quality reviews and approves, and changes no content: people who do not make the content can judge it. */
export const isLeadOrQuality = (rights: Rights, subject: { projectId: string }) =>
  hasRole(rights, subject.projectId, ['lead', 'quality'])
export const isTeamOrQuality = (rights: Rights, subject: { projectId: string }) =>
  hasRole(rights, subject.projectId, ['lead', 'member', 'quality'])
export const readsProject = (rights: Rights, subject: { projectId: string }) =>
  hasRole(rights, subject.projectId, OWN_ROLES)

/** Content may change until release; once signed only a lead may change it, which voids the signature. */
export const canChangeContent = (rights: Rights, subject: Omit<RevisionSubject, 'kind'>) =>
  isOpenStage(subject.stage) && (isLead(rights, subject) || (isTeam(rights, subject) && !subject.hasLiveSignature))

export const canComment = (rights: Rights, subject: Omit<RevisionSubject, 'kind'>) =>
  (isOpenStage(subject.stage) || subject.stage === 'released') &&
  (isTeamOrQuality(rights, subject) || isFabricatorOf(rights, subject))

/** A fabricator sees the threads in which its own company takes part, never another fabricator's or the team's own. */
export const canSeeThread = (
  rights: Rights,
  subject: Omit<RevisionSubject, 'kind'> & { readonly audienceCompanyId: string | null },
) =>
  readsProject(rights, subject) ||
  (isFabricatorOf(rights, subject) &&
    subject.audienceCompanyId !== null &&
    isOwnCompanyIn(rights, subject.projectId, subject.audienceCompanyId))

export const isOpenedByFabricator = (subject: Omit<ThreadSubject, 'kind'>) =>
  subject.audienceCompanyId !== null && subject.openedByCompanyId === subject.audienceCompanyId

export function isOwnCompanyIn(rights: Rights, projectId: string, companyId: string): boolean {
  return findMemberships(rights, projectId).some(
    (membership) =>
      membership.role === 'fabricator' && membership.companyId === companyId && isOfCompany(rights, companyId),
  )
}

/** Actions live on with a revision that was released, and with one that a later release replaced. */
export const areActionsLive = ({ stage }: { readonly stage: Stage }) =>
  isOpenStage(stage) || stage === 'released' || stage === 'superseded'

export const mayActOn = (rights: Rights, subject: Omit<ReviewActionSubject, 'kind'>) =>
  areActionsLive(subject) &&
  canSeeThread(rights, subject) &&
  (isTeamOrQuality(rights, subject) || isFabricatorOf(rights, subject))

/** Neither who was to do it nor who says that it was done. */
export const isSecondPerson = (rights: Rights, { ownerId, reportedById }: Omit<ReviewActionSubject, 'kind'>) =>
  rights.userId !== ownerId && rights.userId !== reportedById

interface CompanyRule {
  /** The company's own people, by their role in it. */
  readonly own: readonly CompanyRole[]
  /** Leads and members of a project in which it takes part, by what it lets that project have. */
  readonly team?: (sharing: Sharing) => boolean
  /** An admin of the workspace, outside of every project. */
  readonly admin?: boolean
}

export const ofCompany =
  ({ own, team, admin = false }: CompanyRule): Rule<CompanySubject> =>
  (rights, { companyId, takesPartIn }) =>
    isOfCompany(rights, companyId, own) ||
    (admin && rights.isAdmin) ||
    (team !== undefined &&
      takesPartIn.some(({ projectId, sharing }) => team(sharing) && hasRole(rights, projectId, ['lead', 'member'])))
