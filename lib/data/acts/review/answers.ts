import 'server-only'
import type { AnswerItemInput } from '@/lib/inputs'
import { checkAnswer, type ItemState, listItemStates, type ReviewSnapshot } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { write } from '../../consequences/write'
import { makeAnswerBasis } from '../../records/answer-basis'
import { type Actor, requireAnswerer, requireRevisionInView } from '../../records/authorization'
import { keepDesignState } from '../../records/design-states'
import { loadRevision } from '../../records/loaded-revision'
import { listViewableFiles, toViewedColumns } from '../../records/looked-at'
import { makeSnapshot } from '../../records/snapshot'
import { NotFoundError, refuseInvalid, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

/** The item as it stands for this person. @throws NotFoundError for an id that the catalogue lacks */
export function getItemStateOf(snapshot: ReviewSnapshot, itemId: string): ItemState {
  const itemState = listItemStates(snapshot).find(({ item }) => item.id === itemId)
  if (itemState === undefined) throw new NotFoundError('item')
  return itemState
}

/**
 * Records a person's answer to an item. A failed calculation cannot be overruled by it. `seenVersion` is the version of
 * the answer that the person saw, 0 for none.
 */
export function answerItem(
  actor: Actor,
  input: AnswerItemInput,
): Promise<ActResult<{ answerVersion: number; version: number }>> {
  return write(actor, 'answer-item', input, async (context) => {
    const { tx, rights, at, record } = context
    const scope = await requireRevisionInView(tx, rights, input.revisionId)
    const { revision, fabricatorCompanyId } = scope
    const loaded = await loadRevision(tx, revision.id)
    const { snapshot } = makeSnapshot(loaded, fabricatorCompanyId)
    const { item, result } = getItemStateOf(snapshot, input.itemId)
    requireAnswerer(rights, scope.subject, item.answeredBy)
    const stored = loaded.record.answers.find(({ itemId }) => itemId === item.id)
    requireAnswerSeen(stored, input.seenVersion, snapshot)
    const checked = checkAnswer(result, input, listViewableFiles(loaded.record, item.id, fabricatorCompanyId))
    if (!checked.ok) refuseInvalid(checked.issues, 'The item cannot be answered this way.')
    const { state, reason, lookedAt } = checked.value
    const answerVersion = (stored?.version ?? 0) + 1
    const answer = { state, reason, version: answerVersion }
    const change = { part: 'answer' as const, summary: [`${item.question}: ${state.replaceAll('-', ' ')}`] }
    const { version } = await changeContent(context, loaded, change, async () => {
      await keepDesignState(tx, { hash: loaded.record.designHash, designJson: loaded.record.designJson }, at)
      const fields = {
        ...answer,
        answeredById: rights.userId,
        companyId: fabricatorCompanyId,
        answeredAt: at,
        ...makeAnswerBasis(loaded.record),
        ...toViewedColumns(lookedAt),
        carriedFromId: null,
      }
      const { id: answerId } = await tx.answer.upsert({
        where: { revisionId_itemId: { revisionId: revision.id, itemId: item.id } },
        create: { revisionId: revision.id, itemId: item.id, ...fields },
        update: fields,
      })
      await tx.answerHistory.create({
        data: {
          answerId,
          ...answer,
          userId: rights.userId,
          companyId: fabricatorCompanyId,
          at,
          ...toViewedColumns(lookedAt),
        },
      })
      await record({
        action: 'item-answered',
        subject: { kind: 'item', id: item.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        companyId: fabricatorCompanyId,
        details: {
          question: item.question,
          state,
          reason,
          verdict: result?.verdict,
          ...(lookedAt === null ? {} : { lookedAt: { ...lookedAt } }),
          // Readers of this record must not learn what another fabricator had answered.
          ...(stored !== undefined && [null, fabricatorCompanyId].includes(stored.companyId)
            ? { before: { state: stored.state, reason: stored.reason } }
            : {}),
        },
      })
    })
    return { answerVersion, version }
  })
}

interface StoredAnswer {
  readonly version: number
  readonly state: string
  readonly itemId: string
  readonly answeredAt: Date
}

function requireAnswerSeen(stored: StoredAnswer | undefined, seenVersion: number, snapshot: ReviewSnapshot): void {
  const version = stored?.version ?? 0
  if (version === seenVersion) return
  const answer = snapshot.answers.find(({ itemId }) => itemId === stored?.itemId)
  const changes =
    stored === undefined || answer === undefined
      ? []
      : [{ by: answer.answeredByName, at: answer.answeredAt, what: [`answered ${stored.state.replaceAll('-', ' ')}`] }]
  refuseStale(seenVersion, version, changes, 'the answer')
}
