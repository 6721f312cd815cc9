import 'server-only'
import { ENGINE_VERSION } from '@/lib/engine'
import type { UpdateTemplateInput } from '@/lib/inputs'
import { compareTemplates, listVerdictMoves } from '@/lib/review'
import { type Actor, mayOnRevision, requireRevision, requireRevisionInView } from './authorization'
import { changeContent } from './content'
import { refuseClash } from './errors'
import { evaluateFor } from './evaluation'
import { type LoadedRevision, loadRevision } from './loaded-revision'
import { read } from './read'
import { requireRevisionSeen } from './stage-moves'
import { loadTemplate, type TemplateRecord } from './template-record'
import type { Outcome, TemplateUpdateView } from './views'
import { type WriteContext, write } from './write'

/** What bringing the review up to the newest version of the catalogue would do; null when it goes by that one. */
export function getTemplateUpdate(actor: Actor, revisionId: string): Promise<TemplateUpdateView | null> {
  return read(actor, async ({ tx, standing }) => {
    // Of the team's business alone: the effects show every fabricator's limits.
    const { subject } = await requireRevision(tx, standing, revisionId, 'revision:view-trail')
    const loaded = await loadRevision(tx, revisionId)
    const { record, template, latestTemplateVersion } = loaded
    if (template.version === latestTemplateVersion) return null
    const next = await loadTemplate(tx, latestTemplateVersion)
    const changes = compareTemplates(template.content, next.content)
    const questions = new Map([...template.items, ...next.items].map(({ id, question }) => [id, question]))
    return {
      fromVersion: template.version,
      toVersion: next.version,
      changes: changes.map(({ sentence }) => sentence),
      verdictMoves: listMoves(loaded, next).map(({ itemId, before, after }) => ({
        itemId,
        question: questions.get(itemId) ?? itemId,
        before: before ?? 'not asked',
        after: after ?? 'not asked',
      })),
      reopened: listReopened(loaded, next).map(({ itemId }) => questions.get(itemId) ?? itemId),
      // The version is part of what was signed.
      voidedSignatures: record.signatures.filter(({ voidedAt }) => voidedAt === null).length,
      mayUpdate: mayOnRevision(standing, 'revision:edit', subject),
    }
  })
}

function listMoves(loaded: LoadedRevision, next: TemplateRecord) {
  const [recorded] = loaded.record.evaluations
  if (recorded === undefined) return []
  const evaluateBy = (template: TemplateRecord) => {
    const sheets = { ...loaded.sheets, workspace: template.content.limits }
    return evaluateFor({ ...loaded, template, sheets }, { fabricatorCompanyId: null, evaluatedOn: recorded.createdAt })
  }
  return listVerdictMoves(evaluateBy(loaded.template), evaluateBy(next))
}

/** Answers that were given to another question than the one that is asked now. */
function listReopened(loaded: LoadedRevision, next: TemplateRecord) {
  const reopening = new Set(
    compareTemplates(loaded.template.content, next.content).flatMap(({ itemId, reopensAnswer }) =>
      reopensAnswer && itemId !== null ? [itemId] : [],
    ),
  )
  return loaded.record.answers.filter(({ itemId, state }) => reopening.has(itemId) && state !== 'open')
}

/**
 * Brings a review up to the newest version of the catalogue: evaluates by it, opens again the answers to questions that
 * were reworded, and voids signatures, since the version is part of what was signed.
 */
export function updateTemplate(actor: Actor, input: UpdateTemplateInput): Promise<Outcome<{ version: number }>> {
  return write(actor, 'update-template', input, async (context) => {
    const { tx, standing, record } = context
    const { fabricatorCompanyId } = await requireRevisionInView(tx, standing, input.revisionId)
    const { revision } = await requireRevision(tx, standing, input.revisionId, 'revision:edit')
    const loaded = await loadRevision(tx, revision.id)
    const { template, latestTemplateVersion } = loaded
    requireRevisionSeen(loaded, input.seenVersion, fabricatorCompanyId)
    if (input.toVersion !== latestTemplateVersion) {
      refuseClash(
        `The catalogue was changed again: it is now version ${latestTemplateVersion}. Look at what would change and try again.`,
      )
    }
    if (template.version === latestTemplateVersion) return { version: revision.version }
    const next = await loadTemplate(tx, latestTemplateVersion)
    const changes = compareTemplates(template.content, next.content).map(({ sentence }) => sentence)
    const summary = [`catalogue version ${template.version} to ${next.version}`, ...changes]
    const { version } = await changeContent(context, loaded, { part: 'template', summary }, async () => {
      await tx.revision.update({ where: { id: revision.id }, data: { templateVersion: next.version } })
      const reopened = await reopenAnswers(context, loaded, next)
      await record({
        action: 'catalogue-updated',
        subject: { kind: 'revision', id: revision.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        details: { from: template.version, to: next.version, changes, reopened, engineVersion: ENGINE_VERSION },
      })
    })
    return { version }
  })
}

async function reopenAnswers(
  { tx, standing, at }: WriteContext,
  loaded: LoadedRevision,
  next: TemplateRecord,
): Promise<string[]> {
  const reopened = listReopened(loaded, next)
  for (const { id: answerId, version, companyId } of reopened) {
    const fields = {
      state: 'open',
      reason: `The item was reworded in version ${next.version} of the catalogue: the answer is asked for again.`,
      version: version + 1,
    }
    await tx.answer.update({
      where: { id: answerId },
      data: { ...fields, answeredById: standing.userId, answeredAt: at },
    })
    await tx.answerHistory.create({ data: { answerId, ...fields, userId: standing.userId, companyId, at } })
  }
  return reopened.map(({ itemId }) => itemId)
}
