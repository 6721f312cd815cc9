import 'server-only'
import { ENGINE_VERSION } from '@/lib/engine'
import type { UpdateTemplateInput } from '@/lib/inputs'
import { compareTemplates } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { type WriteContext, write } from '../../consequences/write'
import { listReopened } from '../../reads/template-updates'
import { type Actor, requireRevision, requireRevisionInView } from '../../records/authorization'
import { areSameProfiles, isBehindCatalogue, type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { NOWHERE_LOOKED } from '../../records/looked-at'
import { loadTemplate, readProfileIds, type TemplateRecord, writeProfileIds } from '../../records/template-record'
import { refuseClash } from '../../store/errors'
import type { ActResult } from '../../views'
import { requireRevisionSeen } from './stage-moves'

/**
 * Brings a review up to the newest version of the catalogue and the profiles that its project follows: evaluates by it, opens again the answers to questions that
 * were reworded, and voids signatures, since the version is part of what was signed.
 */
export function updateTemplate(actor: Actor, input: UpdateTemplateInput): Promise<ActResult<{ version: number }>> {
  return write(actor, 'update-template', input, async (context) => {
    const { tx, rights, record } = context
    const { fabricatorCompanyId } = await requireRevisionInView(tx, rights, input.revisionId)
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'revision:edit')
    const loaded = await loadRevision(tx, revision.id)
    const { template, latestTemplateVersion, projectProfileIds } = loaded
    requireRevisionSeen(loaded, input.seenVersion, fabricatorCompanyId)
    if (input.toVersion !== latestTemplateVersion) {
      refuseClash(
        `The catalogue was changed again: it is now version ${latestTemplateVersion}. Look at what would change and try again.`,
      )
    }
    if (!areSameProfiles(readProfileIds(writeProfileIds(input.toProfileIds)), projectProfileIds)) {
      refuseClash('The profiles of the project have changed. Look at what would change and try again.')
    }
    if (!isBehindCatalogue(loaded)) return { version: revision.version }
    const next = await loadTemplate(tx, latestTemplateVersion, projectProfileIds)
    const changes = compareTemplates(template.content, next.content).map(({ sentence }) => sentence)
    const summary = [
      ...(template.version === next.version ? [] : [`catalogue version ${template.version} to ${next.version}`]),
      ...changes,
    ]
    const { version } = await changeContent(context, loaded, { part: 'template', summary }, async () => {
      await tx.revision.update({
        where: { id: revision.id },
        data: { templateVersion: next.version, profilesJson: writeProfileIds(next.profileIds) },
      })
      const reopened = await reopenAnswers(context, loaded, next)
      await record({
        action: 'catalogue-updated',
        subject: { kind: 'revision', id: revision.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        details: {
          from: template.version,
          to: next.version,
          changes,
          reopened,
          engineVersion: ENGINE_VERSION,
          ...(next.profileIds.length === 0 ? {} : { profiles: [...next.profileIds] }),
        },
      })
    })
    return { version }
  })
}

async function reopenAnswers(
  { tx, rights, at }: WriteContext,
  loaded: LoadedRevision,
  next: TemplateRecord,
): Promise<string[]> {
  const reopened = listReopened(loaded, next)
  for (const { id: answerId, version, companyId } of reopened) {
    const fields = {
      state: 'open',
      reason: `The item was reworded in version ${next.version} of the catalogue: it must be answered again.`,
      version: version + 1,
    }
    await tx.answer.update({
      where: { id: answerId },
      data: { ...fields, ...NOWHERE_LOOKED, answeredById: rights.userId, answeredAt: at },
    })
    await tx.answerHistory.create({ data: { answerId, ...fields, userId: rights.userId, companyId, at } })
  }
  return reopened.map(({ itemId }) => itemId)
}
