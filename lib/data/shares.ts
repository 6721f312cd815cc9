import 'server-only'
import type { ShareRevisionInput } from '@/lib/inputs'
import { NOTHING_SHARED } from '@/lib/review'
import { type Actor, getFabricatorCompanyId, requireProject, requireRevision } from './authorization'
import type { TransactionClient } from './client'
import { changeContent } from './content'
import { NotAllowedError, refuseField } from './errors'
import { loadRevision } from './loaded-revision'
import { toCompanyView } from './part-views'
import { readParticipationState } from './participation-record'
import { noteFlipsOfShare } from './probing'
import { read } from './read'
import { readSharing } from './sharing-columns'
import type { Outcome, ProjectFabricatorView } from './views'
import { write } from './write'

/** Makes the revision visible to a fabricator of the project. The fabricator's limits count from here on. */
export function shareRevision(actor: Actor, input: ShareRevisionInput): Promise<Outcome<null>> {
  return write(actor, 'share-revision', input, async (context) => {
    const { tx, standing, at, record } = context
    const { revision, subject } = await requireRevision(tx, standing, input.revisionId, 'revision:share')
    const fabricators = await findFabricators(tx, revision.projectId)
    const company = fabricators.find(({ id }) => id === input.companyId)
    if (company === undefined) {
      refuseField('companyId', 'not-invited', 'is not a fabricator of this project; invite somebody of theirs first')
    }
    if (!company.maySeeRevisions) {
      refuseField('companyId', 'no-consent', `${company.name} has not agreed to take part in this project yet`)
    }
    if (subject.sharedWithCompanyIds.includes(company.id)) return null
    await changeContent(context, await loadRevision(tx, revision.id), null, async () => {
      await tx.revisionShare.create({
        data: { revisionId: revision.id, companyId: company.id, sharedById: standing.userId, createdAt: at },
      })
      await record({
        action: 'revision-shared',
        subject: { kind: 'company', id: company.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        companyId: company.id,
        details: { company: company.name },
      })
    })
    await noteFlipsOfShare(context, revision.id, company.id)
    return null
  })
}

/** Hides the revision from a fabricator again. Their threads and declarations stay with it. */
export function unshareRevision(actor: Actor, input: ShareRevisionInput): Promise<Outcome<null>> {
  return write(actor, 'unshare-revision', input, async (context) => {
    const { tx, standing, record } = context
    const { revision, subject } = await requireRevision(tx, standing, input.revisionId, 'revision:share')
    if (!subject.sharedWithCompanyIds.includes(input.companyId)) {
      refuseField('companyId', 'not-shared', 'does not see this revision')
    }
    await changeContent(context, await loadRevision(tx, revision.id), null, async () => {
      await tx.revisionShare.delete({
        where: { revisionId_companyId: { revisionId: revision.id, companyId: input.companyId } },
      })
      await record({
        action: 'revision-unshared',
        subject: { kind: 'company', id: input.companyId },
        projectId: revision.projectId,
        revisionId: revision.id,
        companyId: input.companyId,
      })
    })
    return null
  })
}

/** Fabricators of the project, asked ones included. For the team: a fabricator does not learn of another. */
export function listFabricators(actor: Actor, projectId: string): Promise<readonly ProjectFabricatorView[]> {
  return read(actor, async ({ tx, standing }) => {
    const project = await requireProject(tx, standing, projectId)
    if (getFabricatorCompanyId(standing, project.id) !== null) throw new NotAllowedError('see who else is invited')
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
      // A company of the project alone is whoever the lead invites: it needs nobody's consent but theirs, by joining.
      maySeeRevisions: state === 'takes-part' || (isOfProjectAlone && state === 'asked'),
      sharing: state === 'takes-part' ? readSharing(row) : NOTHING_SHARED,
    }
  })
}
