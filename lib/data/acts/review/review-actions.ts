import 'server-only'
import type {
  ChangeActionInput,
  CloseActionInput,
  DropActionInput,
  ReopenActionInput,
  ReportActionInput,
  TakeOnActionInput,
} from '@/lib/inputs'
import { type Action, type ActionSubjects, describeCondition, isOpenStage } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { requireOwner, storeNewAction } from '../../consequences/taken-on-actions'
import { type WriteContext, write } from '../../consequences/write'
import type { ReviewAction } from '../../generated/sqlite/client'
import {
  type Actor,
  getMembership,
  makeReviewActionSubject,
  maySeeReviewAction,
  type RevisionScope,
  readStage,
  requireAtStage,
  requireRevision,
  requireRevisionInView,
} from '../../records/authorization'
import { readDone } from '../../records/declaration-record'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { NotFoundError, refuseClash, refuseField, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'
import { findAudience } from './threads'

/** The team takes on something that somebody is to do. Before the release that is part of what a signature covers. */
export function takeOnAction(
  actor: Actor,
  input: TakeOnActionInput,
): Promise<ActResult<{ actionId: string; number: number }>> {
  return write(actor, 'take-on-action', input, async (context) => {
    const scope = await requireRevision(context.tx, context.rights, input.revisionId, 'review-action:take-on')
    const loaded = await loadRevision(context.tx, scope.revision.id)
    const origin = findOrigin(loaded, input.origin)
    const audienceCompanyId = origin.audienceCompanyId ?? findAudience(scope, input.companyId)
    const { value } = await changeContent(context, loaded, null, () =>
      storeNewAction(context, scope, {
        origin: { ...input.origin, label: origin.label },
        audienceCompanyId,
        text: input.text,
        ownerId: input.ownerId,
        due: input.due,
        dueOn: input.dueOn === '' ? null : input.dueOn,
      }),
    )
    return { actionId: value.id, number: value.number }
  })
}

/** The origin's name as it is now: it may be reworded later. A thread that one fabricator sees makes an action that it sees. */
function findOrigin(
  { record, template }: LoadedRevision,
  origin: TakeOnActionInput['origin'],
): { readonly label: string; readonly audienceCompanyId: string | null } {
  const question = (itemId: string | undefined) => template.items.find(({ id }) => id === itemId)?.question
  const thread = record.threads.find(({ id }) => id === origin.id)
  const waived = record.waivers.find(({ id }) => id === origin.id)?.itemId
  const label = {
    revision: () => 'the revision',
    thread: () => thread?.title,
    item: () => question(origin.id),
    waiver: () => (waived === undefined ? undefined : `waiver: ${question(waived) ?? waived}`),
  }[origin.kind]()
  if (label === undefined) refuseField('origin', 'unknown', `names a ${origin.kind} that this revision does not have`)
  return { label, audienceCompanyId: origin.kind === 'thread' ? (thread?.audienceCompanyId ?? null) : null }
}

/** Another owner or another day, with the reason. Its owner does not: that would lift what the action blocks. */
export function changeAction(actor: Actor, input: ChangeActionInput): Promise<ActResult<null>> {
  return changeRow(actor, 'change-action', input, 'review-action:change', async (context, scope, row) => {
    requireUnsettled(row)
    const dueOn = input.dueOn === '' ? null : input.dueOn
    if (row.ownerId === input.ownerId && row.due === input.due && row.dueOn === dueOn) {
      refuseClash('Nothing would change: owner and due date are already these.')
    }
    const { projectId } = scope.revision
    const before = await context.tx.user.findUniqueOrThrow({ where: { id: row.ownerId }, select: { name: true } })
    const owner =
      row.ownerId === input.ownerId
        ? { companyId: row.ownerCompanyId, name: before.name }
        : await requireOwner(context.tx, projectId, row.audienceCompanyId, input.ownerId)
    return {
      data: { ownerId: input.ownerId, ownerCompanyId: owner.companyId, due: input.due, dueOn },
      note: {
        action: 'action-changed',
        details: {
          owner: owner.name,
          due: input.due,
          dueOn,
          before: { owner: before.name, due: row.due, dueOn: row.dueOn },
          reason: input.reason,
        },
      },
    }
  })
}

/** Its owner or somebody of the team reports it done, with evidence. Another person checks that and closes it. */
export function reportAction(actor: Actor, input: ReportActionInput): Promise<ActResult<null>> {
  return changeRow(actor, 'report-action', input, 'review-action:report', async ({ rights, at }, _scope, row) => {
    requireUnsettled(row)
    return {
      data: { state: 'reported', evidence: input.evidence, reportedById: rights.userId, reportedAt: at },
      note: { action: 'action-reported', details: { evidence: input.evidence } },
    }
  })
}

export function closeAction(actor: Actor, input: CloseActionInput): Promise<ActResult<null>> {
  return changeRow(actor, 'close-action', input, 'review-action:close', async ({ rights, at }, _scope, row) => {
    requireUnsettled(row)
    if (row.state !== 'reported') refuseClash('Nobody has reported this action done yet: its owner does that first.')
    return {
      data: { state: 'closed', closedById: rights.userId, closedAt: at, closeNote: input.reason },
      note: { action: 'action-closed', details: { reason: input.reason } },
    }
  })
}

/** No longer to be done, with the reason. A fabricator's condition that was made this action is thereby declined. */
export function dropAction(actor: Actor, input: DropActionInput): Promise<ActResult<null>> {
  return changeRow(actor, 'drop-action', input, 'review-action:drop', async (context, scope, row) => {
    requireUnsettled(row)
    const { rights, at } = context
    const loaded = await loadRevision(context.tx, scope.revision.id)
    requireNothingClosedOn(loaded, row)
    return {
      data: { state: 'dropped', closedById: rights.userId, closedAt: at, closeNote: input.reason },
      note: { action: 'action-dropped', details: { reason: input.reason } },
      also: () => declineConditionOf(context, loaded, row, input.reason),
    }
  })
}

/** What was reported does not show it, or it was closed too early. The evidence of before stays in the trail. */
export function reopenAction(actor: Actor, input: ReopenActionInput): Promise<ActResult<null>> {
  return changeRow(actor, 'reopen-action', input, 'review-action:reopen', async (_context, _scope, row) => {
    if (row.state === 'open') refuseClash('The action is already open.')
    return {
      data: { state: 'open', reportedById: null, reportedAt: null, closedById: null, closedAt: null, closeNote: '' },
      note: { action: 'action-reopened', details: { was: row.state, reason: input.reason } },
    }
  })
}

type RuleOnAction = { [A in Action]: ActionSubjects[A] extends { kind: 'review-action' } ? A : never }[Action]

/** Who does it, where a rule asks for another person than the one who tries. */
const WHO: { readonly [A in RuleOnAction]?: string } = {
  'review-action:change': 'Someone of the team other than its owner can do this.',
  'review-action:close': 'Someone other than its owner and the person who reported it must close it.',
  'review-action:drop': 'A lead other than its owner can do this.',
}

type WordOnAction =
  | {
      readonly action: 'action-changed'
      readonly details: {
        owner: string
        due: string
        dueOn: string | null
        before: { owner: string; due: string; dueOn: string | null }
        reason: string
      }
    }
  | { readonly action: 'action-reported'; readonly details: { evidence: string } }
  | { readonly action: 'action-closed' | 'action-dropped'; readonly details: { reason: string } }
  | { readonly action: 'action-reopened'; readonly details: { was: string; reason: string } }

interface RowChange {
  readonly data: Partial<Omit<ReviewAction, 'id' | 'revisionId' | 'number' | 'version'>>
  readonly note: WordOnAction
  /** What the change brings beside the action itself, in the same transaction. */
  readonly also?: () => Promise<void>
}

function changeRow<I extends { actionId: string; seenVersion: number; requestKey?: string | undefined }>(
  actor: Actor,
  name: string,
  input: I,
  rule: RuleOnAction,
  decide: (context: WriteContext, scope: RevisionScope, row: ReviewAction) => Promise<RowChange>,
): Promise<ActResult<null>> {
  return write(actor, name, input, async (context) => {
    const { tx, rights, record } = context
    const row = await tx.reviewAction.findUnique({ where: { id: input.actionId } })
    if (row === null) throw new NotFoundError('action')
    const scope = await requireRevisionInView(tx, rights, row.revisionId, 'action')
    if (!maySeeReviewAction(rights, scope.subject, row)) throw new NotFoundError('action')
    requireAtStage(rights, scope.subject, rule, (subject) => makeReviewActionSubject(subject, row), WHO[rule])
    if (row.version !== input.seenVersion) refuseStale(input.seenVersion, row.version, [], 'the action')
    const change = await decide(context, scope, row)
    const { projectId, id: revisionId } = scope.revision
    await changeContent(context, await loadRevision(tx, revisionId), null, async () => {
      await tx.reviewAction.update({ where: { id: row.id }, data: { ...change.data, version: { increment: 1 } } })
      const details = { number: row.number, text: row.text, ...change.note.details }
      await record({
        action: change.note.action,
        subject: { kind: 'action', id: row.id },
        projectId,
        revisionId,
        companyId: row.audienceCompanyId ?? getMembership(rights, projectId)?.companyId ?? null,
        details,
      } as Parameters<typeof record>[0])
      await change.also?.()
    })
    return null
  })
}

function requireUnsettled({ state }: ReviewAction): void {
  if (state === 'closed' || state === 'dropped') refuseClash(`The action was ${state} already. Reopen it to go on.`)
}

/** A must-change or a query that was closed by pointing to an action is open again before the action may go. */
function requireNothingClosedOn({ record }: LoadedRevision, { id }: ReviewAction): void {
  const thread = record.threads.find(({ state, doneJson }) => {
    const done = state === 'closed' ? readDone(doneJson) : null
    return done?.kind === 'action' && done.id === id
  })
  if (thread === undefined) return
  refuseClash(
    `"${thread.title}" was closed because of this action: reopen the thread first, or report the action done.`,
  )
}

/**
 * A condition that became an action is settled by doing it. Dropped, it is declined: the fabricator declares again, or is taken off the
 * release. What was released on it is no longer the lead's to drop.
 */
async function declineConditionOf(
  { tx, rights, at, record }: WriteContext,
  loaded: LoadedRevision,
  row: ReviewAction,
  reason: string,
): Promise<void> {
  const { id: revisionId, projectId, stage, declarations } = loaded.record
  const rows = declarations.flatMap((declaration) =>
    declaration.conditions.map((condition) => ({ declaration, condition })),
  )
  const found = rows.find(({ condition }) => condition.actionId === row.id && condition.state === 'action')
  if (found === undefined) return
  const { declaration, condition } = found
  if (stage === 'released') {
    refuseClash(`The release rests on this condition of ${declaration.company.name}: report the action done instead.`)
  }
  if (!isOpenStage(readStage(stage))) return
  await tx.declarationCondition.update({
    where: { id: condition.id },
    data: {
      state: 'declined',
      decidedById: rights.userId,
      decidedAt: at,
      decisionNote: reason,
      version: { increment: 1 },
    },
  })
  await record({
    action: 'condition-declined',
    subject: { kind: 'condition', id: condition.id },
    projectId,
    revisionId,
    companyId: declaration.companyId,
    details: { company: declaration.company.name, condition: describeCondition(condition), reason },
  })
}
