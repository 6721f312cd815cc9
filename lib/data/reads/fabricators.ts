import 'server-only'
import { NOTHING_SHARED } from '@/lib/review'
import { type Actor, getFabricatorCompanyId, requireProject } from '../records/authorization'
import { toCompanyView } from '../records/part-views'
import { readParticipationState } from '../records/participation-record'
import { readSharing } from '../records/sharing-columns'
import type { TransactionClient } from '../store/client'
import { NotAllowedError } from '../store/errors'
import type { ProjectFabricatorView } from '../views'
import { read } from './read'

/** Fabricators of the project, asked ones included. For the team: a fabricator does not learn of another. */
export function listFabricators(actor: Actor, projectId: string): Promise<readonly ProjectFabricatorView[]> {
  return read(actor, async ({ tx, rights }) => {
    const project = await requireProject(tx, rights, projectId)
    if (getFabricatorCompanyId(rights, project.id) !== null) throw new NotAllowedError('see who else is invited')
    return findFabricators(tx, project.id)
  })
}

/** In the order of their names. One that declined, or left, is listed while a revision is still shared with it. */
export async function findFabricators(tx: TransactionClient, projectId: string): Promise<ProjectFabricatorView[]> {
  const rows = await tx.participation.findMany({
    where: { projectId, company: { kind: 'fabricator' } },
    include: { company: true },
    orderBy: [{ company: { nameKey: 'asc' } }, { companyId: 'asc' }],
  })
  return rows.map(({ company, state, ...row }) => {
    const isOfProjectAlone = company.projectId !== null
    return {
      ...toCompanyView(company),
      state: readParticipationState(state),
      isOfProjectAlone,
      // A company of the project alone consists of the people whom the lead invites: it needs nobody's consent but theirs, by joining.
      maySeeRevisions: state === 'takes-part' || (isOfProjectAlone && state === 'asked'),
      sharing: state === 'takes-part' ? readSharing(row) : NOTHING_SHARED,
    }
  })
}
