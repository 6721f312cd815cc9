import 'server-only'
import type { PutBackOnReleaseInput, TakeOffReleaseInput } from '@/lib/inputs'
import { changeContent } from '../../consequences/changed-content'
import { write } from '../../consequences/write'
import { type Actor, requireRevision } from '../../records/authorization'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { getCompanyName } from '../../records/revision-record'
import { refuseClash, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'
import { requireRevisionSeen } from './stage-moves'

/** Takes a fabricator off this release, by name and with a reason: its word stands in the way no longer, and it gets no package. */
export function takeOffRelease(actor: Actor, input: TakeOffReleaseInput): Promise<ActResult<null>> {
  return write(actor, 'take-off-release', input, async (context) => {
    const { tx, rights, at, record } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'release:choose-fabricators')
    const loaded = await loadRevision(tx, revision.id)
    const company = requireFabricator(loaded, input.companyId)
    requireRevisionSeen(loaded, input.seenVersion, null)
    if (findExclusion(loaded, company.id) !== undefined) refuseClash(`${company.name} is already off this release.`)
    await changeContent(context, loaded, null, async () => {
      await tx.releaseExclusion.create({
        data: {
          revisionId: revision.id,
          companyId: company.id,
          reason: input.reason,
          takenOffById: rights.userId,
          takenOffAt: at,
        },
      })
      await record({
        action: 'taken-off-release',
        subject: { kind: 'company', id: company.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        companyId: company.id,
        details: { company: company.name, reason: input.reason },
      })
    })
    return null
  })
}

/** The fabricator takes part in this release again, and its word counts again. */
export function putBackOnRelease(actor: Actor, input: PutBackOnReleaseInput): Promise<ActResult<null>> {
  return write(actor, 'put-back-on-release', input, async (context) => {
    const { tx, rights, at, record } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'release:choose-fabricators')
    const loaded = await loadRevision(tx, revision.id)
    const exclusion = findExclusion(loaded, input.companyId)
    if (exclusion === undefined) refuseField('companyId', 'not-off', 'is not off this release')
    await changeContent(context, loaded, null, async () => {
      await tx.releaseExclusion.update({
        where: { id: exclusion.id },
        data: { putBackById: rights.userId, putBackAt: at },
      })
      await record({
        action: 'put-back-on-release',
        subject: { kind: 'company', id: exclusion.companyId },
        projectId: revision.projectId,
        revisionId: revision.id,
        companyId: exclusion.companyId,
        details: { company: getCompanyName(loaded.record, exclusion.companyId), reason: exclusion.reason },
      })
    })
    return null
  })
}

function findExclusion({ record }: LoadedRevision, companyId: string) {
  return record.exclusions.find((row) => row.companyId === companyId && row.putBackAt === null)
}

/** One that sees the revision, or that has declared on it before the share ended. */
function requireFabricator({ record }: LoadedRevision, companyId: string) {
  const company = [...record.shares, ...record.declarations].find((row) => row.companyId === companyId)?.company
  if (company === undefined) refuseField('companyId', 'unknown', 'is not a fabricator of this revision')
  return company
}
