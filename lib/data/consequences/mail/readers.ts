import 'server-only'
import { getSettings } from '@/lib/config'
import { readStoredDesign } from '@/lib/engine'
import { composeMail, findMentions, type MailNotice, type OptionalMailKind, type Wanted } from '@/lib/mail'
import type { RevisionSubject } from '@/lib/review'
import { loadStanding, mayOnRevision, readStage, type Standing } from '../../records/authorization'
import { readMailOff } from '../../records/mail-off'
import { foldName } from '../../records/names'
import { type MailAddress, queueMail } from '../../records/outbox'
import type { TransactionClient } from '../../store/client'
import type { TrailNote } from '../../store/trail-note'

/** One entry of the trail, in the entry's own transaction. */
export interface TrailEvent {
  readonly tx: TransactionClient
  readonly at: Date
  readonly by: { readonly userId: string | null; readonly name: string }
  readonly note: TrailNote
  /** The entry's place in the trail: tells two acts on the same thing apart. */
  readonly sequence: number
}

/** Somebody who may be written to about a revision. */
export interface Reader {
  readonly userId: string
  readonly name: string
  readonly address: string
  readonly standing: Standing
  readonly off: ReadonlySet<OptionalMailKind>
  /** Null for the team and its observers. */
  readonly fabricatorCompanyId: string | null
  readonly role: string
  readonly companyId: string
}

/** Everybody of the project who may see the revision and has an account that works, the person who acts left out. */
export async function loadReaders({ tx, by }: TrailEvent, subject: RevisionSubject): Promise<Reader[]> {
  const members = await tx.membership.findMany({
    where: { projectId: subject.projectId, user: { disabledAt: null }, NOT: { userId: by.userId ?? '' } },
    include: { user: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const readers: Reader[] = []
  for (const { user, role, companyId } of members) {
    const standing = await loadStanding(tx, user.id)
    if (!mayOnRevision(standing, 'revision:view', subject)) continue
    readers.push({
      userId: user.id,
      name: user.name,
      address: user.email,
      standing,
      off: readMailOff(user.mailOffJson),
      fabricatorCompanyId: role === 'fabricator' ? companyId : null,
      role,
      companyId,
    })
  }
  return readers
}

export async function loadSubject(tx: TransactionClient, revisionId: string) {
  const row = await tx.revision.findUniqueOrThrow({
    where: { id: revisionId },
    select: {
      id: true,
      label: true,
      stage: true,
      designJson: true,
      projectId: true,
      project: { select: { name: true } },
      shares: { select: { companyId: true } },
    },
  })
  const subject: RevisionSubject = {
    kind: 'revision',
    projectId: row.projectId,
    stage: readStage(row.stage),
    sharedWithCompanyIds: row.shares.map(({ companyId }) => companyId),
    hasLiveSignature: false,
  }
  return { row, subject }
}

/** Names of other fabricators and of their people, folded: a fabricator's mail holds none of them. */
export async function loadForeignNames(tx: TransactionClient, companyId: string | null): Promise<readonly string[]> {
  if (companyId === null) return []
  const others = await tx.company.findMany({
    where: { kind: 'fabricator', NOT: { id: companyId } },
    include: { memberships: { where: { role: 'fabricator' }, include: { user: { select: { name: true } } } } },
  })
  return others.flatMap(({ name, memberships }) => [name, ...memberships.map(({ user }) => user.name)]).map(foldName)
}

/** Text that somebody typed, or null where it names another fabricator. */
export function withoutForeignNames(text: string, foreignNames: readonly string[]): string | null {
  const folded = foldName(text)
  return foreignNames.some((name) => folded.includes(name)) ? null : text
}

export type MailRevision = Awaited<ReturnType<typeof loadSubject>>['row']

/** The page that a message leads to, with the names that its reader may know. */
export function makePlace(revision: MailRevision, foreignNames: readonly string[], tail: string) {
  const page = `${getSettings().publicUrl}/projects/${revision.projectId}/revisions/${revision.id}`
  return {
    projectName: withoutForeignNames(revision.project.name, foreignNames),
    revisionLabel: withoutForeignNames(revision.label, foreignNames),
    href: `${page}${tail}`,
  }
}

/** What somebody is asked to do, by the date that the brief states. */
export function makeWanted(act: string, { designJson }: MailRevision): Wanted {
  const { brief } = readStoredDesign(designJson)
  if (brief.layoutFreezeDate !== null) {
    return { act, until: { date: brief.layoutFreezeDate, event: 'the layout is frozen' } }
  }
  return { act, until: brief.needDate === null ? null : { date: brief.needDate, event: 'the parts are needed' } }
}

/** @param subjectKey  what the message is about: messages to one person about one thing are threaded */
export async function queueTo(
  { tx, at, by, note, sequence }: TrailEvent,
  reader: Reader,
  notice: MailNotice,
  subjectKey: string,
): Promise<void> {
  await queueMail(tx, at, {
    kind: notice.kind,
    dedupeKey: `${note.action}:${sequence}:${reader.userId}`,
    recipient: { userId: reader.userId, name: reader.name, address: reader.address },
    text: composeMail(notice),
    subjectKey,
    replyTo: await findReplyTo(tx, by, reader.fabricatorCompanyId),
  })
}

/** Whoever acted answers for it. Between two fabricators no address passes, nor that of an account that is disabled. */
export async function findReplyTo(
  tx: TransactionClient,
  by: TrailEvent['by'],
  fabricatorCompanyId: string | null,
): Promise<MailAddress | null> {
  if (by.userId === null) return null
  const user = await tx.user.findUnique({ where: { id: by.userId }, include: { memberships: true } })
  if (user === null || user.disabledAt !== null) return null
  const isForeign = user.memberships.some(
    ({ role, companyId }) => role === 'fabricator' && fabricatorCompanyId !== null && companyId !== fabricatorCompanyId,
  )
  return isForeign ? null : { name: user.name, address: user.email }
}

/** Ids of the readers whom a text mentions. */
export function findMentioned(text: string, readers: readonly Reader[]): ReadonlySet<string> {
  const people = readers.map(({ userId, name }) => ({ id: userId, name }))
  return new Set(findMentions(text, people).map(({ id }) => id))
}
