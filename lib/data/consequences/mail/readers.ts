import 'server-only'
import { paths, type RevisionTab } from '@/lib/addresses'
import { getSettings } from '@/lib/config'
import { readStoredDesign } from '@/lib/engine'
import { composeMail, findMentions, type MailNotice, type OptionalMailKind, type Wanted } from '@/lib/mail'
import type { NoteOn, RevisionSubject, TrailAction } from '@/lib/review'
import { mayOnRevision, type PersonRights, readStage, toRights } from '../../records/authorization'
import { readMailOff } from '../../records/mail-off'
import { foldName } from '../../records/names'
import { type MailAddress, queueMails } from '../../records/outbox'
import type { TransactionClient } from '../../store/client'

/** Any act that the trail records, in the act's own transaction. */
export interface AnyRecordedAct {
  readonly tx: TransactionClient
  readonly at: Date
  readonly by: { readonly userId: string | null; readonly name: string }
  readonly note: { readonly action: string; readonly revisionId?: string }
  /** The record's place in the trail: tells two acts on the same thing apart. */
  readonly sequence: number
}

/** An act of one word, or of several. */
export interface RecordedAct<W extends TrailAction> extends AnyRecordedAct {
  readonly note: NoteOn<W>
}

/** Somebody who may be written to about a revision, with all that a message to them takes. */
export interface Reader {
  readonly userId: string
  readonly name: string
  readonly address: string
  readonly rights: PersonRights
  readonly off: ReadonlySet<OptionalMailKind>
  /** Null for the team and its observers. */
  readonly fabricatorCompanyId: string | null
  readonly role: string
  readonly companyId: string
  /** Names that a message to this person must not hold, folded. */
  readonly foreignNames: readonly string[]
  /** Whom a reply goes to. */
  readonly replyTo: MailAddress | null
}

/** Everybody of the project who may see the revision and has an account that works, the person who acts left out. */
export async function loadReaders({ tx, by }: AnyRecordedAct, subject: RevisionSubject): Promise<Reader[]> {
  const members = await tx.membership.findMany({
    where: { projectId: subject.projectId, user: { disabledAt: null }, NOT: { userId: by.userId ?? '' } },
    include: { user: { include: { memberships: true, companies: true } } },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const foreignNamesOf = await loadForeignNames(tx)
  const replyTo = await loadReplyTo(tx, by)
  return members.flatMap(({ user, role, companyId }): Reader[] => {
    const rights = toRights(user)
    if (!mayOnRevision(rights, 'revision:view', subject)) return []
    const fabricatorCompanyId = role === 'fabricator' ? companyId : null
    return [
      {
        userId: user.id,
        name: user.name,
        address: user.email,
        rights,
        off: readMailOff(user.mailOffJson),
        fabricatorCompanyId,
        role,
        companyId,
        foreignNames: foreignNamesOf(fabricatorCompanyId),
        replyTo: replyTo(fabricatorCompanyId),
      },
    ]
  })
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

/** Names of other fabricators and of their people, folded: a fabricator's mail holds none of them. The team's may hold all. */
export async function loadForeignNames(
  tx: TransactionClient,
): Promise<(fabricatorCompanyId: string | null) => readonly string[]> {
  const fabricators = await tx.company.findMany({
    where: { kind: 'fabricator' },
    include: { memberships: { where: { role: 'fabricator' }, include: { user: { select: { name: true } } } } },
  })
  const named = fabricators.map(({ id, name, memberships }) => ({
    id,
    names: [name, ...memberships.map(({ user }) => user.name)].map(foldName),
  }))
  return (fabricatorCompanyId) =>
    fabricatorCompanyId === null ? [] : named.flatMap(({ id, names }) => (id === fabricatorCompanyId ? [] : names))
}

/** Text that somebody typed, or null where it names another fabricator. */
export function withoutForeignNames(text: string, foreignNames: readonly string[]): string | null {
  const folded = foldName(text)
  return foreignNames.some((name) => folded.includes(name)) ? null : text
}

export type MailRevision = Awaited<ReturnType<typeof loadSubject>>['row']

/** The page that a message leads to, with the names that its reader may know. */
export function makePlace(
  revision: MailRevision,
  foreignNames: readonly string[],
  tab: RevisionTab = 'overview',
  id: string | null = null,
) {
  return {
    projectName: withoutForeignNames(revision.project.name, foreignNames),
    revisionLabel: withoutForeignNames(revision.label, foreignNames),
    href: `${getSettings().publicUrl}${paths.target(revision.projectId, revision.id, { tab, id })}`,
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

/** One message to one reader. */
export interface Letter {
  readonly reader: Reader
  readonly notice: MailNotice
  /** What the message is about: messages to one person about one thing are threaded. */
  readonly subjectKey: string
}

export async function queueLetters(
  { tx, at, note, sequence }: AnyRecordedAct,
  letters: readonly Letter[],
): Promise<void> {
  await queueMails(
    tx,
    at,
    letters.map(({ reader, notice, subjectKey }) => ({
      kind: notice.kind,
      dedupeKey: `${note.action}:${sequence}:${reader.userId}`,
      recipient: { userId: reader.userId, name: reader.name, address: reader.address },
      text: composeMail(notice),
      subjectKey,
      replyTo: reader.replyTo,
    })),
  )
}

/**
 * Replies go to the person who acted. Between two fabricators no address passes, nor that of an account that is disabled.
 * @returns the address for a reader of that fabricator; null is the team
 */
export async function loadReplyTo(
  tx: TransactionClient,
  by: AnyRecordedAct['by'],
): Promise<(fabricatorCompanyId: string | null) => MailAddress | null> {
  const user =
    by.userId === null ? null : await tx.user.findUnique({ where: { id: by.userId }, include: { memberships: true } })
  if (user === null || user.disabledAt !== null) return () => null
  const address = { name: user.name, address: user.email }
  return (fabricatorCompanyId) => {
    const isForeign = user.memberships.some(
      ({ role, companyId }) =>
        role === 'fabricator' && fabricatorCompanyId !== null && companyId !== fabricatorCompanyId,
    )
    return isForeign ? null : address
  }
}

/** Ids of the readers whom a text mentions. */
export function findMentioned(text: string, readers: readonly Reader[]): ReadonlySet<string> {
  const people = readers.map(({ userId, name }) => ({ id: userId, name }))
  return new Set(findMentions(text, people).map(({ id }) => id))
}
