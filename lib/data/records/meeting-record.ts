import 'server-only'
import { z } from 'zod'
import { readStoredJson } from '@/lib/engine'
import { ATTENDANCES, DECISION_POINTS, type Meeting, NEED_METHODS, type Need } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import { readWord } from './stored-words'

/** Meetings of a revision, in their order, for those who may read its minutes. */
export async function loadMeetings(tx: TransactionClient, revisionId: string): Promise<Meeting[]> {
  const rows = await tx.meeting.findMany({
    where: { revisionId },
    include: { people: { orderBy: [{ userName: 'asc' }, { id: 'asc' }] }, decisions: { orderBy: { ordinal: 'asc' } } },
    orderBy: { number: 'asc' },
  })
  const names = await loadNames(
    tx,
    rows.map(({ recordedById }) => recordedById),
  )
  return rows.map(({ id, number, title, heldOn, agenda, people, decisions, recordedById, recordedAt }) => {
    const listPeople = (attendance: string) =>
      people
        .filter((person) => readWord(person.attendance, ATTENDANCES, 'attendance') === attendance)
        .map(({ userName }) => userName)
    return {
      id,
      number,
      title,
      heldOn,
      agenda,
      present: listPeople('present'),
      excused: listPeople('excused'),
      decisions: decisions.map(({ ordinal, text, pointsKind, pointsId, pointsLabel }) => ({
        ordinal,
        text,
        points: { kind: readWord(pointsKind, DECISION_POINTS, 'decision'), id: pointsId, label: pointsLabel },
      })),
      recordedByName: names.get(recordedById) ?? 'somebody',
      recordedAt: recordedAt.toISOString(),
    }
  })
}

const itemIdsSchema = z.array(z.string())

/** Needs of a revision, in their order, for those who may read them. */
export async function loadNeeds(tx: TransactionClient, revisionId: string): Promise<Need[]> {
  const rows = await tx.need.findMany({
    where: { revisionId },
    include: { attachments: { where: { removedAt: null }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] } },
    orderBy: { number: 'asc' },
  })
  const names = await loadNames(
    tx,
    rows.flatMap(({ statedById, reportedById, acceptedById }) => [statedById, reportedById, acceptedById]),
  )
  const name = (id: string | null) => (id === null ? null : (names.get(id) ?? 'somebody'))
  return rows.map((row) => ({
    id: row.id,
    number: row.number,
    text: row.text,
    itemIds: readStoredJson('the items of a need', itemIdsSchema, row.itemIdsJson),
    method: readWord(row.method, NEED_METHODS, 'method of a need'),
    plannedOn: row.plannedOn,
    result: row.result,
    files: row.attachments.map(({ id, originalName, sha256 }) => ({ id, fileName: originalName, sha256 })),
    reportedById: row.reportedById,
    reportedByName: name(row.reportedById),
    reportedAt: row.reportedAt?.toISOString() ?? null,
    acceptedByName: name(row.acceptedById),
    acceptedAt: row.acceptedAt?.toISOString() ?? null,
    acceptNote: row.acceptNote,
    droppedReason: row.droppedReason,
    statedByName: name(row.statedById) ?? 'somebody',
    version: row.version,
  }))
}

async function loadNames(tx: TransactionClient, ids: readonly (string | null)[]): Promise<ReadonlyMap<string, string>> {
  const given = [...new Set(ids.filter((id) => id !== null))]
  if (given.length === 0) return new Map()
  const people = await tx.user.findMany({ where: { id: { in: given } }, select: { id: true, name: true } })
  return new Map(people.map((person) => [person.id, person.name]))
}
