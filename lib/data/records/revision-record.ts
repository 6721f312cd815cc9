import 'server-only'
import { readStoredDesign } from '@/lib/engine'
import type { Prisma } from '../generated/sqlite/client'
import type { TransactionClient } from '../store/client'
import { readTogether } from '../store/read-together'
import { loadRevisionRows, type RevisionRow } from './revision-rows'
import { type PassedAnswer, passAnchorsOn, passAnswersOn, passOn } from './successors'

type Row = RevisionRow
type CompanyRow = Prisma.CompanyGetPayload<object>
type EvaluationRow = Prisma.EvaluationGetPayload<object>

type WithCompany<T> = T & { readonly company: CompanyRow }
type WithAudience<T> = T & { readonly audienceCompany: CompanyRow | null }

interface Labelled {
  readonly id: string
  readonly label: string
}

/** A released revision of the project, with the number that it was issued under. */
interface InForce extends Labelled {
  readonly partNumber: string
}

type NamedRow = Omit<Row, 'project' | 'shares' | 'threads' | 'declarations' | 'proposals' | 'release'> & {
  readonly project: Omit<Row['project'], 'memberships' | 'revisions'> & {
    readonly memberships: WithCompany<Row['project']['memberships'][number]>[]
    readonly revisions: readonly InForce[]
  }
  readonly shares: WithCompany<Row['shares'][number]>[]
  readonly threads: WithAudience<Row['threads'][number]>[]
  readonly declarations: WithCompany<Row['declarations'][number]>[]
  readonly proposals: WithAudience<Row['proposals'][number]>[]
  readonly basedOn: Labelled | null
  readonly supersededBy: Labelled | null
  readonly release: (NonNullable<Row['release']> & { readonly replaces: Labelled | null }) | null
}

export interface RevisionRecord extends NamedRow {
  /** Under the ids of today's items. */
  readonly answers: PassedAnswer<Row['answers'][number]>[]
  /** The newest one alone. */
  readonly evaluations: readonly EvaluationRow[]
  /** Names of everybody whom the record mentions. */
  readonly people: ReadonlyMap<string, string>
  /** Names of the companies whom the record mentions. */
  readonly companies: ReadonlyMap<string, { readonly id: string; readonly kind: string; readonly name: string }>
}

/** @throws Error when it is absent: the caller has already loaded and authorised it in the same transaction */
export async function loadRevisionRecord(tx: TransactionClient, revisionId: string): Promise<RevisionRecord> {
  const [record] = await loadRevisionRecords(tx, [revisionId])
  if (record === undefined) throw new Error(`there is no revision ${revisionId}`)
  return record
}

/** Several records, in the order asked for. What is asked of the database does not grow with their number. */
export async function loadRevisionRecords(
  tx: TransactionClient,
  revisionIds: readonly string[],
): Promise<RevisionRecord[]> {
  const found = await loadRevisionRows(tx, revisionIds)
  const rowsById = new Map(found.rows.map((row) => [row.id, row]))
  const rows = revisionIds.flatMap((id) => rowsById.get(id) ?? [])
  const { people, companies } = await readTogether(tx, {
    people: {
      model: 'User',
      only: ['id', 'name'],
      among: { id: [...new Set(rows.flatMap((row) => [...collectPeople(row)]))] },
    },
    companies: { model: 'Company', among: { id: [...new Set(rows.flatMap((row) => [...collectCompanies(row)]))] } },
  } as const)
  const related = await loadRelated(tx, rows)
  const numbers = await loadNumbersFromBefore(tx, rows)
  const names = new Map(people.map(({ id, name }) => [id, name]))
  const companiesById = new Map(companies.map((company) => [company.id, company]))
  const named = rows.map((row) => ({
    ...row,
    ...withCompanies(row, companiesById, numbers),
    ...withRelated(row, related),
  }))
  return named.map((row) => ({
    ...row,
    answers: passAnswersOn(row.answers),
    waivers: passOn(row.waivers),
    attachments: passOn(row.attachments),
    threads: passAnchorsOn(row.threads),
    evaluations: found.evaluations.filter(({ revisionId }) => revisionId === row.id),
    // Of the people and companies that were loaded, those whom this record mentions: a view looks no further.
    people: pick(names, collectPeople(row)),
    companies: pick(companiesById, collectCompanies(row)),
  }))
}

/** Part numbers of releases from before issues were kept: their designs say them. */
async function loadNumbersFromBefore(
  tx: TransactionClient,
  rows: readonly Row[],
): Promise<ReadonlyMap<string, string>> {
  const ids = rows.flatMap(({ project }) => project.revisions.filter(({ issue }) => issue === null).map(({ id }) => id))
  if (ids.length === 0) return new Map()
  const found = await tx.revision.findMany({ where: { id: { in: ids } }, select: { id: true, designJson: true } })
  return new Map(found.map(({ id, designJson }) => [id, readStoredDesign(designJson).brief.partNumber]))
}

/** The other revisions that these name, if there are any: one statement for all of them. */
async function loadRelated(tx: TransactionClient, rows: readonly Row[]): Promise<ReadonlyMap<string, Labelled>> {
  const ids = new Set(rows.flatMap((row) => [row.basedOnId, row.supersededById, row.release?.replacesId ?? null]))
  const given = [...withoutNull(ids)]
  if (given.length === 0) return new Map()
  const found = await tx.revision.findMany({ where: { id: { in: given } }, select: { id: true, label: true } })
  return new Map(found.map((revision) => [revision.id, revision]))
}

function withRelated(row: Row, related: ReadonlyMap<string, Labelled>) {
  const get = (id: string | null) => (id === null ? null : (related.get(id) ?? null))
  const { release } = row
  return {
    basedOn: get(row.basedOnId),
    supersededBy: get(row.supersededById),
    release: release === null ? null : { ...release, replaces: get(release.replacesId) },
  }
}

/** Every id that is looked up here was collected by {@link collectCompanies}, and each points at a company that exists. */
function withCompanies(row: Row, companies: ReadonlyMap<string, CompanyRow>, numbers: ReadonlyMap<string, string>) {
  const get = (id: string): CompanyRow => {
    const company = companies.get(id)
    if (company === undefined) throw new Error(`there is no company ${id}`)
    return company
  }
  const withCompany = <T extends { companyId: string }>(one: T) => ({ ...one, company: get(one.companyId) })
  const withAudience = <T extends { audienceCompanyId: string | null }>(one: T) => ({
    ...one,
    audienceCompany: one.audienceCompanyId === null ? null : get(one.audienceCompanyId),
  })
  return {
    project: {
      ...row.project,
      memberships: row.project.memberships.map(withCompany),
      revisions: row.project.revisions.map(({ id, label, issue }) => ({
        id,
        label,
        partNumber: issue?.partNumber ?? numbers.get(id) ?? '',
      })),
    },
    shares: row.shares.map(withCompany),
    threads: row.threads.map(withAudience),
    declarations: row.declarations.map(withCompany),
    proposals: row.proposals.map(withAudience),
  }
}

function pick<T>(all: ReadonlyMap<string, T>, ids: ReadonlySet<string>): Map<string, T> {
  const picked = new Map<string, T>()
  for (const id of ids) {
    const value = all.get(id)
    if (value !== undefined) picked.set(id, value)
  }
  return picked
}

export function getPersonName(record: Pick<RevisionRecord, 'people'>, userId: string): string {
  return record.people.get(userId) ?? 'somebody'
}

export function getCompanyName(record: Pick<RevisionRecord, 'companies'>, companyId: string): string {
  return record.companies.get(companyId)?.name ?? 'a company'
}

/** What is collected from: the project's releases name nobody. */
type Mentioning = Omit<Row, 'project'> & { readonly project: Pick<Row['project'], 'memberships' | 'capacityGrants'> }

function collectPeople(row: Mentioning): Set<string> {
  const ids = new Set<string | null>([row.createdById])
  for (const membership of row.project.memberships) ids.add(membership.userId)
  for (const grant of row.project.capacityGrants) ids.add(grant.grantedById)
  for (const edit of row.edits) ids.add(edit.userId)
  for (const answer of row.answers) for (const entry of answer.history) ids.add(entry.userId)
  for (const waiver of row.waivers) ids.add(waiver.proposedById).add(waiver.decidedById)
  for (const thread of row.threads) {
    ids.add(thread.openedById).add(thread.answeredById).add(thread.closedById).add(thread.ownerId)
    for (const comment of thread.comments) ids.add(comment.authorId)
  }
  for (const file of [...row.attachments, ...row.artwork]) ids.add(file.uploadedById)
  for (const declaration of row.declarations) {
    ids.add(declaration.madeById)
    for (const condition of declaration.conditions) ids.add(condition.decidedById)
  }
  for (const { acknowledgedById } of row.acknowledgements) ids.add(acknowledgedById)
  for (const exclusion of row.exclusions) ids.add(exclusion.takenOffById).add(exclusion.putBackById)
  for (const proposal of row.proposals) ids.add(proposal.proposedById).add(proposal.decidedById)
  for (const action of row.actions) {
    ids.add(action.ownerId).add(action.takenOnById).add(action.reportedById).add(action.closedById)
  }
  for (const signature of row.signatures) ids.add(signature.signerId).add(signature.voidedById)
  for (const move of row.stageMoves) ids.add(move.movedById)
  for (const file of row.packages) ids.add(file.releasedById)
  return withoutNull(ids)
}

function collectCompanies(row: Mentioning): Set<string> {
  const ids = new Set<string | null>(row.project.memberships.map((membership) => membership.companyId))
  for (const share of row.shares) ids.add(share.companyId)
  for (const thread of row.threads) {
    ids.add(thread.audienceCompanyId).add(thread.openedByCompanyId)
    for (const comment of thread.comments) ids.add(comment.companyId)
  }
  for (const declaration of row.declarations) ids.add(declaration.companyId)
  for (const action of row.actions) ids.add(action.ownerCompanyId).add(action.audienceCompanyId)
  for (const exclusion of row.exclusions) ids.add(exclusion.companyId)
  for (const proposal of row.proposals) ids.add(proposal.audienceCompanyId).add(proposal.proposedByCompanyId)
  return withoutNull(ids)
}

function withoutNull(ids: ReadonlySet<string | null>): Set<string> {
  return new Set([...ids].filter((id) => id !== null))
}
