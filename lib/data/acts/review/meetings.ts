import 'server-only'
import type { RecordMeetingInput } from '@/lib/inputs'
import { changeContent } from '../../consequences/changed-content'
import { storeNewAction } from '../../consequences/taken-on-actions'
import { type WriteContext, write } from '../../consequences/write'
import { type Actor, getMembership, type RevisionScope, requireRevision } from '../../records/authorization'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import type { TransactionClient } from '../../store/client'
import { refuseField } from '../../store/errors'
import type { ActResult } from '../../views'

type DecisionInput = RecordMeetingInput['decisions'][number]
interface Point {
  readonly kind: string
  readonly id: string
  readonly label: string
}

/**
 * Records a meeting with its minutes, which nobody changes afterwards: what was written wrong is put right by the next meeting. A decision becomes an
 * action, or points at the item or the thread that it settles.
 */
export function recordMeeting(
  actor: Actor,
  input: RecordMeetingInput,
): Promise<ActResult<{ meetingId: string; number: number }>> {
  return write(actor, 'record-meeting', input, async (context) => {
    const { tx, rights, at, record } = context
    const scope = await requireRevision(tx, rights, input.revisionId, 'meeting:record')
    const { id: revisionId, projectId } = scope.revision
    if (input.heldOn > at.toISOString().slice(0, 10)) refuseField('heldOn', 'to-come', 'is in the future')
    const names = await requirePeople(tx, projectId, input)
    const loaded = await loadRevision(tx, revisionId)
    const last = await tx.meeting.findFirst({ where: { revisionId }, orderBy: { number: 'desc' } })
    const number = (last?.number ?? 0) + 1
    const makesAction = input.decisions.some(({ points }) => points === 'action')
    const store = async () => {
      const meeting = await tx.meeting.create({
        data: {
          revisionId,
          number,
          title: input.title,
          heldOn: input.heldOn,
          agenda: input.agenda,
          recordedById: rights.userId,
          recordedAt: at,
        },
      })
      for (const { userId, attendance } of input.people) {
        const userName = names.get(userId) ?? ''
        await tx.meetingPerson.create({ data: { meetingId: meeting.id, userId, userName, attendance } })
      }
      for (const [index, decision] of input.decisions.entries()) {
        const origin = { kind: 'meeting' as const, id: meeting.id, label: `meeting ${number}: ${input.title}` }
        const { kind, id, label } = await makePoint(context, scope, loaded, { decision, index, origin })
        await tx.meetingDecision.create({
          data: {
            meetingId: meeting.id,
            ordinal: index + 1,
            text: decision.text,
            pointsKind: kind,
            pointsId: id,
            pointsLabel: label,
          },
        })
      }
      const listPeople = (wanted: string) =>
        input.people.filter(({ attendance }) => attendance === wanted).map(({ userId }) => names.get(userId) ?? '')
      await record({
        action: 'meeting-recorded',
        subject: { kind: 'meeting', id: meeting.id },
        projectId,
        revisionId,
        // Minutes name people of every company: the record is the team's own, and in no fabricator's extract.
        companyId: getMembership(rights, projectId)?.companyId ?? null,
        details: {
          number,
          title: input.title,
          heldOn: input.heldOn,
          present: listPeople('present'),
          excused: listPeople('excused'),
          decisions: input.decisions.map(({ text }) => text),
        },
      })
      return meeting.id
    }
    // What remains to be done is part of what a signature covers; the minutes themselves are not.
    const meetingId = makesAction ? (await changeContent(context, loaded, null, store)).value : await store()
    return { meetingId, number }
  })
}

/** People of the project, under their names of today. */
async function requirePeople(
  tx: TransactionClient,
  projectId: string,
  { people }: RecordMeetingInput,
): Promise<ReadonlyMap<string, string>> {
  const places = await tx.membership.findMany({
    where: { projectId, userId: { in: people.map(({ userId }) => userId) } },
    include: { user: { select: { name: true } } },
  })
  const names = new Map(places.map(({ userId, user }) => [userId, user.name]))
  if (people.some(({ userId }) => !names.has(userId))) {
    refuseField('people', 'unknown', 'names somebody who is not in this project')
  }
  return names
}

async function makePoint(
  context: WriteContext,
  scope: RevisionScope,
  { record, template }: LoadedRevision,
  {
    decision,
    index,
    origin,
  }: {
    readonly decision: DecisionInput
    readonly index: number
    readonly origin: { readonly kind: 'meeting'; readonly id: string; readonly label: string }
  },
): Promise<Point> {
  const field = `decisions.${index}.points`
  const [kind = '', id = ''] = decision.points.split(' ')
  if (kind === 'none') return { kind, id: '', label: '' }
  if (kind === 'action') {
    const { action } = decision
    if (action === undefined) refuseField(field, 'missing', 'makes an action: state its owner and when it is due')
    const { ownerId, due, dueOn } = action
    const made = await storeNewAction(context, scope, {
      origin,
      audienceCompanyId: null,
      text: decision.text,
      ownerId,
      due,
      dueOn: dueOn === '' ? null : dueOn,
    })
    return { kind, id: made.id, label: `action ${made.number}` }
  }
  const label =
    kind === 'item'
      ? template.items.find((item) => item.id === id)?.question
      : kind === 'thread'
        ? record.threads.find((thread) => thread.id === id)?.title
        : undefined
  if (label === undefined) refuseField(field, 'unknown', 'names something that this revision does not have')
  return { kind, id, label }
}
