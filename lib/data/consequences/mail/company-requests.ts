import 'server-only'
import { paths } from '@/lib/addresses'
import { getSettings } from '@/lib/config'
import { composeMail } from '@/lib/mail'
import { readMailOff } from '../../records/mail-off'
import { queueMails } from '../../records/outbox'
import { loadForeignNames, loadReplyTo, type RecordedAct, withoutForeignNames } from './readers'

/**
 * A project asks a company: its administrators are written to, since they alone can answer. Where it has none yet, the
 * admins of the workspace are, since they alone can name one.
 */
export async function queueRequestNotices(act: RecordedAct<'company-asked'>): Promise<void> {
  const { tx, at, by, note } = act
  const companyId = note.subject.id
  const projectId = note.projectId ?? ''
  const part = await tx.participation.findUniqueOrThrow({
    where: { companyId_projectId: { companyId, projectId } },
    include: { company: true, project: true },
  })
  const administrators = await tx.companyPerson.findMany({
    where: { companyId, role: 'administrator', user: { disabledAt: null } },
    include: { user: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const isAnswerable = administrators.length > 0
  const readers = isAnswerable
    ? administrators.map(({ user }) => user)
    : await tx.user.findMany({
        where: { isAdmin: true, disabledAt: null },
        orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      })
  const foreignNames = (await loadForeignNames(tx))(isAnswerable ? companyId : null)
  const replyTo = (await loadReplyTo(tx, by))(isAnswerable ? companyId : null)
  const asking = await tx.membership.findUnique({
    where: { userId_projectId: { userId: by.userId ?? '', projectId } },
    include: { company: true },
  })
  const page = isAnswerable ? paths.company(companyId) : paths.workspaceCompanies()
  const isWrittenTo = (reader: (typeof readers)[number]) =>
    reader.id !== by.userId && !readMailOff(reader.mailOffJson).has('company-asked')
  await queueMails(
    tx,
    at,
    readers.filter(isWrittenTo).map((reader) => ({
      kind: 'company-asked' as const,
      // A project asks as often as it likes; a person is written to about that once a day.
      dedupeKey: `company-asked:${part.id}:${at.toISOString().slice(0, 10)}:${reader.id}`,
      recipient: { userId: reader.id, name: reader.name, address: reader.email },
      text: composeMail({
        kind: 'company-asked',
        projectName: withoutForeignNames(part.project.name, foreignNames),
        companyName: part.company.name,
        by: by.name,
        byCompany: asking?.company.name ?? null,
        wanted: isAnswerable ? (part.state === 'takes-part' ? 'bring-person' : 'take-part') : 'name-administrator',
        askedFor: part.askedFor,
        href: `${getSettings().publicUrl}${page}`,
      }),
      subjectKey: `participation:${part.id}`,
      replyTo,
    })),
  )
}
