import 'server-only'
import { compareTemplates, listVerdictMoves } from '@/lib/review'
import { type Actor, mayOnRevision, requireRevision } from '../records/authorization'
import { evaluateFor } from '../records/evaluation'
import { isBehindCatalogue, type LoadedRevision, loadRevision } from '../records/loaded-revision'
import { loadTemplate, type TemplateRecord } from '../records/template-record'
import type { TemplateUpdateView } from '../views'
import { read } from './read'

/** What bringing the review up to the newest version of the catalogue would do; null when it goes by that one. */
export function getTemplateUpdate(actor: Actor, revisionId: string): Promise<TemplateUpdateView | null> {
  return read(actor, async ({ tx, rights }) => {
    // Of the team's business alone: the effects show every fabricator's limits.
    const { subject } = await requireRevision(tx, rights, revisionId, 'revision:view-trail')
    const loaded = await loadRevision(tx, revisionId)
    const { record, template, latestTemplateVersion, projectProfileIds } = loaded
    if (!isBehindCatalogue(loaded)) return null
    const next = await loadTemplate(tx, latestTemplateVersion, projectProfileIds)
    const changes = compareTemplates(template.content, next.content)
    const questions = new Map([...template.items, ...next.items].map(({ id, question }) => [id, question]))
    return {
      fromVersion: template.version,
      toVersion: next.version,
      toProfiles: next.review.profiles ?? [],
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
      mayUpdate: mayOnRevision(rights, 'revision:edit', subject),
    }
  })
}

function listMoves(loaded: LoadedRevision, next: TemplateRecord) {
  const [recorded] = loaded.record.evaluations
  if (recorded === undefined) return []
  const evaluateBy = (template: TemplateRecord) => {
    const { content, catalogue } = template
    const sheets = { ...loaded.sheets, workspace: content.limits, profiles: catalogue.profiles }
    return evaluateFor({ ...loaded, template, sheets }, { fabricatorCompanyId: null, evaluatedOn: recorded.createdAt })
  }
  return listVerdictMoves(evaluateBy(loaded.template), evaluateBy(next))
}

/** Answers that were given to another question than the one that is asked now. */
export function listReopened(loaded: LoadedRevision, next: TemplateRecord) {
  const reopening = new Set(
    compareTemplates(loaded.template.content, next.content).flatMap(({ itemId, reopensAnswer }) =>
      reopensAnswer && itemId !== null ? [itemId] : [],
    ),
  )
  return loaded.record.answers.filter(({ itemId, state }) => reopening.has(itemId) && state !== 'open')
}
