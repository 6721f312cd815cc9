import 'server-only'
import type { DeclarationInput } from '@/lib/inputs'
import { ACT_MEANINGS, hashDeclaredContent } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { type Actor, requireRevision } from '../../records/authorization'
import { listChangesSince } from '../../records/changes-since'
import { loadRevision } from '../../records/loaded-revision'
import { makeSnapshot } from '../../records/snapshot'
import { refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'
import { writeConfirmed } from '../access/confirmed-write'

/**
 * A fabricator's word on the present design and artwork: buildable as it stands, or not. It stands until either changes;
 * a later one of the same company replaces it.
 */
export function declareBuildable(actor: Actor, input: DeclarationInput): Promise<ActResult<{ declarationId: string }>> {
  const door = { act: 'declare', action: 'declare-buildable' } as const
  return writeConfirmed(actor, door, input, async (context, confirmedBy) => {
    const { tx, rights, at, record } = context
    const { revision, fabricatorCompanyId } = await requireRevision(tx, rights, input.revisionId, 'declaration:make')
    if (fabricatorCompanyId === null) throw new Error('the policy let somebody declare who is no fabricator')
    const loaded = await loadRevision(tx, revision.id)
    if (revision.version !== input.seenVersion) {
      refuseStale(
        input.seenVersion,
        revision.version,
        listChangesSince(loaded, input.seenVersion, fabricatorCompanyId),
        'the revision',
      )
    }
    const contentHash = hashDeclaredContent(makeSnapshot(loaded, fabricatorCompanyId).snapshot)
    const company = loaded.sheets.fabricators.find(({ companyId }) => companyId === fabricatorCompanyId)?.name ?? ''
    const { value: declarationId } = await changeContent(context, loaded, null, async () => {
      const declaration = await tx.declaration.create({
        data: {
          revisionId: revision.id,
          companyId: fabricatorCompanyId,
          isBuildable: input.isBuildable,
          note: input.note,
          contentHash,
          madeById: rights.userId,
          madeAt: at,
        },
      })
      await record({
        action: input.isBuildable ? 'declared-buildable' : 'declared-not-buildable',
        subject: { kind: 'declaration', id: declaration.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        companyId: fabricatorCompanyId,
        details: { company, note: input.note, contentHash, meaning: ACT_MEANINGS.declare, confirmedBy },
      })
      return declaration.id
    })
    return { declarationId }
  })
}
