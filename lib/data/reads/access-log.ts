import 'server-only'
import { getSettings } from '@/lib/config'
import { writeCsv } from '@/lib/spreadsheet'
import type { Prisma } from '../generated/sqlite/client'
import { type Actor, requireCompany, requireProject } from '../records/authorization'
import { readWord } from '../records/stored-words'
import type { AccessEventView, AccessKind, AccessLogView, FileDownload } from '../views'
import { MAX_ROWS_ON_PAGE } from './paged'
import { type ReadContext, read } from './read'

const ACCESS_KINDS = [
  'signed-in',
  'sign-in-refused',
  'revision-opened',
  'file-fetched',
  'refused',
] as const satisfies readonly AccessKind[]

/** Of sign-ins nobody can tell for which project they were. */
const SIGN_INS = ['signed-in', 'sign-in-refused']
/** A file of more would not open in common spreadsheet programs. */
const MOST_IN_FILE = 100_000

interface Chosen {
  readonly name: string
  readonly where: Prisma.AccessEventWhereInput
}

/** Who opened what of a project, newest first, with the sign-ins of its people. For its leads. */
export function listProjectAccess(actor: Actor, projectId: string, page = 1): Promise<AccessLogView> {
  return read(actor, async (context) => toView(context, await chooseOfProject(context, projectId), page))
}

/** What a company's own people opened, and who opened its sheets. For its administrators. */
export function listCompanyAccess(actor: Actor, companyId: string, page = 1): Promise<AccessLogView> {
  return read(actor, async (context) => toView(context, await chooseOfCompany(context, companyId), page))
}

export function getProjectAccessFile(actor: Actor, projectId: string): Promise<FileDownload> {
  return read(actor, async (context) => toFile(context, await chooseOfProject(context, projectId)))
}

export function getCompanyAccessFile(actor: Actor, companyId: string): Promise<FileDownload> {
  return read(actor, async (context) => toFile(context, await chooseOfCompany(context, companyId)))
}

async function chooseOfProject({ tx, rights }: ReadContext, projectId: string): Promise<Chosen> {
  const { id, name } = await requireProject(tx, rights, projectId, 'project:view-access')
  const members = await tx.membership.findMany({ where: { projectId: id }, select: { userId: true } })
  const userIds = members.map(({ userId }) => userId)
  return { name, where: { OR: [{ projectId: id }, { kind: { in: SIGN_INS }, userId: { in: userIds } }] } }
}

async function chooseOfCompany({ tx, rights }: ReadContext, companyId: string): Promise<Chosen> {
  const { company } = await requireCompany(tx, rights, companyId, 'company:view-access')
  const people = await tx.companyPerson.findMany({ where: { companyId: company.id }, select: { userId: true } })
  const userIds = people.map(({ userId }) => userId)
  return {
    name: company.name,
    where: {
      OR: [
        { companyId: company.id },
        { ownerCompanyId: company.id },
        { kind: { in: SIGN_INS }, userId: { in: userIds } },
      ],
    },
  }
}

const NEWEST_FIRST = [{ at: 'desc' }, { id: 'desc' }] satisfies Prisma.AccessEventOrderByWithRelationInput[]

async function toView({ tx }: ReadContext, { name, where }: Chosen, page: number): Promise<AccessLogView> {
  const total = await tx.accessEvent.count({ where })
  const skip = (page - 1) * MAX_ROWS_ON_PAGE
  const rows = await tx.accessEvent.findMany({ where, orderBy: NEWEST_FIRST, skip, take: MAX_ROWS_ON_PAGE })
  return { name, rows: rows.map(toRow), total, keptDays: getSettings().accessLogDays }
}

function toRow(row: Prisma.AccessEventGetPayload<object>): AccessEventView {
  const { id, at, userName, companyName, what, device } = row
  return {
    id,
    at: at.toISOString(),
    kind: readWord(row.kind, ACCESS_KINDS, 'kind of access'),
    userName,
    companyName,
    what,
    source: row.sourceKey.slice(0, 8),
    device,
  }
}

const HEAD = ['At (UTC)', 'Who', 'Company', 'Act', 'What', 'Source', 'Device']

async function toFile({ tx }: ReadContext, { name, where }: Chosen): Promise<FileDownload> {
  const rows = await tx.accessEvent.findMany({ where, orderBy: NEWEST_FIRST, take: MOST_IN_FILE })
  const cells = rows
    .map(toRow)
    .map((row) => [row.at, row.userName, row.companyName, row.kind, row.what, row.source, row.device])
  return {
    fileName: `${name.replaceAll(/[^\p{L}\p{N}]+/gu, '-')}-access.csv`,
    mediaType: 'text/csv; charset=utf-8',
    bytes: new TextEncoder().encode(writeCsv([HEAD, ...cells])),
  }
}
