import 'server-only'
import {
  type Actor,
  isProjectRole,
  mayOnRevision,
  type PersonRights,
  readCompanyRoles,
  requireRevisionInView,
} from '../records/authorization'
import { read } from './read'

/** Somebody whom a comment can mention. */
export interface ThreadReader {
  readonly id: string
  readonly name: string
  /** The fabricator whose threads alone they see; null for the team and its observers, who see all. */
  readonly fabricatorCompanyId: string | null
}

/** Who sees threads of the revision, in the person's own view: a fabricator is told of the team and of colleagues. */
export function listThreadReaders(actor: Actor, revisionId: string): Promise<readonly ThreadReader[]> {
  return read(actor, async ({ tx, rights }) => {
    const { subject, fabricatorCompanyId } = await requireRevisionInView(tx, rights, revisionId)
    const members = await tx.membership.findMany({
      where: { projectId: subject.projectId, user: { disabledAt: null } },
      include: { user: { select: { id: true, name: true, companies: true } } },
    })
    return members
      .flatMap(({ user, role, companyId, projectId }) => {
        if (!isProjectRole(role)) return []
        const rights: PersonRights = {
          userId: user.id,
          name: user.name,
          isAdmin: false,
          memberships: [{ projectId, role, companyId }],
          companies: readCompanyRoles(user.companies),
        }
        if (!mayOnRevision(rights, 'revision:view', subject)) return []
        return [{ id: user.id, name: user.name, fabricatorCompanyId: role === 'fabricator' ? companyId : null }]
      })
      .filter(
        (reader) =>
          fabricatorCompanyId === null ||
          reader.fabricatorCompanyId === null ||
          reader.fabricatorCompanyId === fabricatorCompanyId,
      )
      .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
  })
}
