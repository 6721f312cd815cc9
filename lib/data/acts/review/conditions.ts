import 'server-only'
import type { DecideConditionInput } from '@/lib/inputs'
import { type Done, describeCondition, describeDone, describeDue, readConditionField } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { storeNewAction } from '../../consequences/taken-on-actions'
import { type WriteContext, write } from '../../consequences/write'
import { type Actor, requireOnRevision, requireRevisionInView } from '../../records/authorization'
import { listDoneOptions, loadDoneBases, requireDone } from '../../records/done-since'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { getPersonName } from '../../records/revision-record'
import { NotFoundError, refuseClash, refuseField, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

type DeclarationRow = LoadedRevision['record']['declarations'][number]
type ConditionRow = DeclarationRow['conditions'][number]

/** The lead takes a fabricator's condition over, as a change that was made; declines it with a reason; or makes it an action. */
export function decideCondition(actor: Actor, input: DecideConditionInput): Promise<ActResult<null>> {
  return write(actor, 'decide-condition', input, async (context) => {
    const { tx, rights, at, record } = context
    const row = await tx.declarationCondition.findUnique({
      where: { id: input.conditionId },
      select: { declaration: { select: { revisionId: true, companyId: true } } },
    })
    if (row === null) throw new NotFoundError('condition')
    const scope = await requireRevisionInView(tx, rights, row.declaration.revisionId, 'condition')
    const { revision, fabricatorCompanyId } = scope
    if (fabricatorCompanyId !== null && fabricatorCompanyId !== row.declaration.companyId) {
      throw new NotFoundError('condition')
    }
    requireOnRevision(rights, scope, 'condition:decide')
    const loaded = await loadRevision(tx, revision.id)
    const { declaration, condition } = requireCondition(loaded, input)
    const done =
      input.decision === 'take-over' ? await requireTakenOver(context, loaded, declaration, condition, input) : null
    await changeContent(context, loaded, null, async () => {
      await tx.declarationCondition.update({
        where: { id: condition.id },
        data: {
          state: STATES[input.decision],
          decidedById: rights.userId,
          decidedAt: at,
          decisionNote: input.reason,
          doneJson: done === null ? null : JSON.stringify(done),
          version: { increment: 1 },
        },
      })
      const place = {
        subject: { kind: 'condition' as const, id: condition.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        companyId: declaration.companyId,
      }
      const details = {
        company: declaration.company.name,
        condition: describeCondition(condition),
        reason: input.reason,
      }
      if (done !== null) {
        await record({ action: 'condition-taken-over', ...place, details: { ...details, done: describeDone(done) } })
      } else if (input.action === undefined) {
        await record({ action: 'condition-declined', ...place, details })
      } else {
        const { text, ownerId, due } = input.action
        const dueOn = input.action.dueOn === '' ? null : input.action.dueOn
        const action = await storeNewAction(context, scope, {
          origin: { kind: 'condition', id: condition.id, label: details.condition },
          audienceCompanyId: declaration.companyId,
          text,
          ownerId,
          due,
          dueOn,
        })
        await tx.declarationCondition.update({ where: { id: condition.id }, data: { actionId: action.id } })
        const owner = getPersonName(loaded.record, ownerId)
        await record({
          action: 'condition-made-action',
          ...place,
          details: { ...details, action: text, owner, due: describeDue({ due, dueOn }) },
        })
      }
    })
    return null
  })
}

const STATES = { 'take-over': 'taken-over', decline: 'declined', action: 'action' } as const

/** Only what the company said last is to be decided: a later word of its own replaced the rest. */
function requireCondition({ record }: LoadedRevision, input: DecideConditionInput) {
  for (const declaration of record.declarations) {
    const condition = declaration.conditions.find(({ id }) => id === input.conditionId)
    if (condition === undefined) continue
    const last = record.declarations.findLast(({ companyId }) => companyId === declaration.companyId)
    if (last?.id !== declaration.id) refuseClash(`${declaration.company.name} has declared again since.`)
    if (condition.state !== 'open') refuseClash(`The condition was already decided.`)
    if (condition.version !== input.seenVersion) {
      refuseStale(input.seenVersion, condition.version, [], 'the condition')
    }
    return { declaration, condition }
  }
  throw new NotFoundError('condition')
}

/** Taken over means changed: something of the design, in the field that the condition names, to the value that it names. */
async function requireTakenOver(
  { tx }: WriteContext,
  loaded: LoadedRevision,
  declaration: DeclarationRow,
  condition: ConditionRow,
  { done: pointer }: DecideConditionInput,
): Promise<Done> {
  if (pointer === undefined) refuseField('done', 'missing', 'is missing: state what was changed')
  const base = { at: declaration.madeAt, designHash: declaration.designHash }
  const options = listDoneOptions(loaded, await loadDoneBases(tx, loaded.record), base, null)
  const done = requireDone(options, pointer)
  if (condition.field === '') return done
  const isChanged = options.changes.some(
    ({ place }) => place === condition.field || place.startsWith(`${condition.field}.`),
  )
  if (!isChanged) {
    refuseField('done', 'unchanged', `does not hold: ${condition.fieldLabel} has not changed since the declaration`)
  }
  const present = readConditionField(loaded.design, condition.field)
  const asked = Number(condition.value.replace(',', '.'))
  if (condition.value !== '' && Number.isFinite(asked) && typeof present === 'number' && present !== asked) {
    refuseField(
      'done',
      'other-value',
      `does not hold: the condition asks for ${condition.value}, and ${condition.fieldLabel} is ${present}`,
    )
  }
  return done
}
