import 'server-only'
import type { AcceptNeedInput, DropNeedInput, ReportNeedInput, StateNeedInput } from '@/lib/inputs'
import type { NoteOn } from '@/lib/review'
import { type WriteContext, write } from '../../consequences/write'
import type { Need } from '../../generated/sqlite/client'
import { type Actor, getMembership, requireRevision, requireRevisionInView } from '../../records/authorization'
import { loadRevision } from '../../records/loaded-revision'
import { NotFoundError, refuseClash, refuseField, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

/** Something that the part must do, with how and when it is shown, and which items speak of it. */
export function stateNeed(actor: Actor, input: StateNeedInput): Promise<ActResult<{ needId: string; number: number }>> {
  return write(actor, 'state-need', input, async (context) => {
    const { tx, rights, at, record } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'need:state')
    const { template } = await loadRevision(tx, revision.id)
    const itemIds = [...new Set(input.itemIds)]
    const items = itemIds.map((itemId) => template.items.find(({ id }) => id === itemId)?.question)
    if (items.includes(undefined)) refuseField('itemIds', 'unknown', 'names an item that this review does not have')
    const last = await tx.need.findFirst({ where: { revisionId: revision.id }, orderBy: { number: 'desc' } })
    const plannedOn = input.plannedOn === '' ? null : input.plannedOn
    const row = await tx.need.create({
      data: {
        revisionId: revision.id,
        number: (last?.number ?? 0) + 1,
        text: input.text,
        itemIdsJson: JSON.stringify(itemIds),
        method: input.method,
        plannedOn,
        statedById: rights.userId,
        statedAt: at,
      },
    })
    await record({
      action: 'need-stated',
      subject: { kind: 'need', id: row.id },
      projectId: revision.projectId,
      revisionId: revision.id,
      companyId: getMembership(rights, revision.projectId)?.companyId ?? null,
      details: {
        number: row.number,
        text: row.text,
        method: input.method,
        plannedOn,
        items: items.filter((question) => question !== undefined),
      },
    })
    return { needId: row.id, number: row.number }
  })
}

/** What came of it. A later word takes the place of an earlier one until somebody accepts it; both stay in the trail. */
export function reportNeed(actor: Actor, input: ReportNeedInput): Promise<ActResult<null>> {
  return changeNeed(actor, 'report-need', input, 'need:report', async ({ tx, rights, at }, row) => {
    const files = await tx.attachment.findMany({ where: { needId: row.id, removedAt: null } })
    return {
      data: { result: input.result, reportedById: rights.userId, reportedAt: at },
      note: {
        action: 'need-reported',
        details: { result: input.result, files: files.map(({ originalName, sha256 }) => `${originalName} ${sha256}`) },
      },
    }
  })
}

/** Somebody other than the person who reported it looks at the result and accepts it. */
export function acceptNeed(actor: Actor, input: AcceptNeedInput): Promise<ActResult<null>> {
  return changeNeed(actor, 'accept-need', input, 'need:accept', async ({ rights, at }, row) => {
    if (row.reportedAt === null) refuseClash('Nobody has reported a result yet.')
    if (row.reportedById === rights.userId) refuseClash('You reported it: another person accepts the result.')
    return {
      data: { acceptedById: rights.userId, acceptedAt: at, acceptNote: input.reason },
      note: { action: 'need-accepted', details: { reason: input.reason } },
    }
  })
}

/** It is no need any more, with the reason. It stays readable. */
export function dropNeed(actor: Actor, input: DropNeedInput): Promise<ActResult<null>> {
  return changeNeed(actor, 'drop-need', input, 'need:state', async () => ({
    data: { droppedReason: input.reason },
    note: { action: 'need-dropped', details: { reason: input.reason } },
  }))
}

type Cited = 'number' | 'text'
type NoteOnNeed = {
  [W in 'need-reported' | 'need-accepted' | 'need-dropped']: {
    readonly action: W
    readonly details: Omit<NoteOn<W>['details'], Cited>
  }
}['need-reported' | 'need-accepted' | 'need-dropped']

interface NeedChange {
  readonly data: Partial<Omit<Need, 'id' | 'revisionId' | 'number' | 'version'>>
  readonly note: NoteOnNeed
}

function changeNeed<I extends { needId: string; seenVersion: number; requestKey?: string | undefined }>(
  actor: Actor,
  name: string,
  input: I,
  rule: 'need:report' | 'need:accept' | 'need:state',
  decide: (context: WriteContext, row: Need) => Promise<NeedChange>,
): Promise<ActResult<null>> {
  return write(actor, name, input, async (context) => {
    const { tx, rights, record } = context
    const row = await tx.need.findUnique({ where: { id: input.needId } })
    if (row === null) throw new NotFoundError('need')
    const { fabricatorCompanyId } = await requireRevisionInView(tx, rights, row.revisionId, 'need')
    if (fabricatorCompanyId !== null) throw new NotFoundError('need')
    const { revision } = await requireRevision(tx, rights, row.revisionId, rule)
    if (row.version !== input.seenVersion) refuseStale(input.seenVersion, row.version, [], 'the need')
    if (row.droppedReason !== null) refuseClash('The need was already dropped.')
    if (row.acceptedAt !== null) refuseClash('Its result was already accepted.')
    const { data, note } = await decide(context, row)
    await tx.need.update({ where: { id: row.id }, data: { ...data, version: { increment: 1 } } })
    await record({
      action: note.action,
      subject: { kind: 'need', id: row.id },
      projectId: revision.projectId,
      revisionId: revision.id,
      companyId: getMembership(rights, revision.projectId)?.companyId ?? null,
      details: { number: row.number, text: row.text, ...note.details },
    } as Parameters<typeof record>[0])
    return null
  })
}
