import 'server-only'
import { countOf } from '@/lib/engine/units'
import type { AnswerItemInput, AnswerItemsInput } from '@/lib/inputs'
import { checkAnswer, type ItemState, listItemStates, type ReviewSnapshot } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { type WriteContext, write } from '../../consequences/write'
import { makeAnswerBasis } from '../../records/answer-basis'
import { type Actor, requireAnswerer, requireRevisionInView } from '../../records/authorization'
import { keepDesignState } from '../../records/design-states'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { listViewableFiles, toViewedColumns } from '../../records/looked-at'
import { makeSnapshot } from '../../records/snapshot'
import { NotFoundError, refuseInvalid, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

/** The item as it stands for this person. @throws NotFoundError for an id that the catalogue lacks */
export function getItemStateOf(snapshot: ReviewSnapshot, itemId: string): ItemState {
  return pickItemState(listItemStates(snapshot), itemId)
}

function pickItemState(states: readonly ItemState[], itemId: string): ItemState {
  const itemState = states.find(({ item }) => item.id === itemId)
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
    const scene = await loadScene(context, input.revisionId)
    const found = findAnswerable(context, scene, input)
    if (!found.checked.ok) refuseInvalid(found.checked.issues, 'The item cannot be answered this way.')
    const answer = { ...found, ...found.checked.value }
    const { version } = await storeAnswers(context, scene, [answer])
    return { answerVersion: answer.answerVersion, version }
  })
}

/** Records one answer to several items, to all of them or to none. Each keeps a record of its own. */
export function answerItems(
  actor: Actor,
  input: AnswerItemsInput,
): Promise<ActResult<{ answered: number; version: number }>> {
  return write(actor, 'answer-items', input, async (context) => {
    const scene = await loadScene(context, input.revisionId)
    const { state, reason } = input
    const found = input.items.map((item) => findAnswerable(context, scene, { ...item, state, reason }))
    refuseUnanswerable(found)
    const answers = found.flatMap((one) => (one.checked.ok ? [{ ...one, ...one.checked.value }] : []))
    const { version } = await storeAnswers(context, scene, answers)
    return { answered: answers.length, version }
  })
}

/** @throws RefusalError that names each item which cannot be answered this way */
function refuseUnanswerable(found: readonly Answerable[]): void {
  const issues = found.flatMap(({ item, checked }, at) =>
    checked.ok
      ? []
      : checked.issues.map((issue) => ({
          ...issue,
          path: ['items', at, ...issue.path],
          message: `“${item.question}”: ${issue.message}`,
        })),
  )
  if (issues.length === 0) return
  refuseInvalid(
    issues,
    `${issues.length} of ${countOf(found.length, 'item')} cannot be answered this way: none was answered.`,
  )
}

async function loadScene({ tx, rights }: WriteContext, revisionId: string) {
  const scope = await requireRevisionInView(tx, rights, revisionId)
  const loaded = await loadRevision(tx, scope.revision.id)
  const { snapshot } = makeSnapshot(loaded, scope.fabricatorCompanyId)
  return { scope, loaded, snapshot, itemStates: listItemStates(snapshot) }
}
type Scene = Awaited<ReturnType<typeof loadScene>>

/** An item that the person may answer and whose answer they saw, with the answer as it was checked. */
function findAnswerable(
  { rights }: WriteContext,
  { scope, loaded, snapshot, itemStates }: Scene,
  input: Pick<AnswerItemInput, 'itemId' | 'seenVersion' | 'state' | 'reason' | 'lookedAt'>,
) {
  const { item, result } = pickItemState(itemStates, input.itemId)
  requireAnswerer(rights, scope.subject, item.answeredBy)
  const stored = loaded.record.answers.find(({ itemId }) => itemId === item.id)
  requireAnswerSeen(stored, input.seenVersion, snapshot)
  const files = listViewableFiles(loaded.record, item.id, scope.fabricatorCompanyId)
  return { item, result, stored, answerVersion: (stored?.version ?? 0) + 1, checked: checkAnswer(result, input, files) }
}
type Answerable = ReturnType<typeof findAnswerable>
type CheckedAnswer = Answerable & Extract<Answerable['checked'], { readonly ok: true }>['value']

function storeAnswers(context: WriteContext, { scope, loaded }: Scene, answers: readonly CheckedAnswer[]) {
  const { tx, at } = context
  const change = {
    part: 'answer' as const,
    summary: answers.map(({ item, state }) => `${item.question}: ${state.replaceAll('-', ' ')}`),
  }
  return changeContent(context, loaded, change, async () => {
    await keepDesignState(tx, { hash: loaded.record.designHash, designJson: loaded.record.designJson }, at)
    for (const answer of answers) await storeAnswer(context, scope, loaded, answer)
  })
}

async function storeAnswer(
  { tx, rights, at, record }: WriteContext,
  { revision, fabricatorCompanyId }: Scene['scope'],
  loaded: LoadedRevision,
  { item, result, stored, answerVersion, state, reason, lookedAt }: CheckedAnswer,
): Promise<void> {
  const answer = { state, reason, version: answerVersion }
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
