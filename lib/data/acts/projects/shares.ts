import 'server-only'
import type { ShareRevisionInput } from '@/lib/inputs'
import { changeContent } from '../../consequences/changed-content'
import { noteFlipsOfShare } from '../../consequences/probing'
import { write } from '../../consequences/write'
import { findFabricators } from '../../reads/fabricators'
import { type Actor, requireRevision } from '../../records/authorization'
import { loadRevision } from '../../records/loaded-revision'
import { refuseField } from '../../store/errors'
import type { ActResult } from '../../views'

/** Makes the revision visible to a fabricator of the project. The fabricator's limits count from here on. */
export function shareRevision(actor: Actor, input: ShareRevisionInput): Promise<ActResult<null>> {
  return write(actor, 'share-revision', input, async (context) => {
    const { tx, rights, at, record } = context
    const { revision, subject } = await requireRevision(tx, rights, input.revisionId, 'revision:share')
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
        data: { revisionId: revision.id, companyId: company.id, sharedById: rights.userId, createdAt: at },
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
export function unshareRevision(actor: Actor, input: ShareRevisionInput): Promise<ActResult<null>> {
  return write(actor, 'unshare-revision', input, async (context) => {
    const { tx, rights, record } = context
    const { revision, subject } = await requireRevision(tx, rights, input.revisionId, 'revision:share')
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
