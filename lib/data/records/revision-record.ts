import 'server-only'
import type { Prisma } from '../generated/sqlite/client'
import type { TransactionClient } from '../store/client'

/**
 * A revision with everything that belongs to it, as stored. The one place that says what is loaded; views and
 * snapshots are made from it and never load more.
 */
const REVISION_RECORD = {
  project: {
    include: { memberships: { include: { company: true }, orderBy: { createdAt: 'asc' } } },
  },
  basedOn: { select: { id: true, label: true } },
  supersededBy: { select: { id: true, label: true } },
  edits: { orderBy: [{ version: 'asc' }, { id: 'asc' }] },
  shares: { include: { company: true }, orderBy: { createdAt: 'asc' } },
  evaluations: { orderBy: { ordinal: 'desc' }, take: 1 },
  answers: { include: { history: { orderBy: { version: 'asc' } } }, orderBy: { itemId: 'asc' } },
  waivers: { orderBy: [{ proposedAt: 'asc' }, { id: 'asc' }] },
  threads: {
    include: {
      audienceCompany: true,
      comments: { include: { edits: { orderBy: { version: 'asc' } }, attachments: true }, orderBy: { ordinal: 'asc' } },
    },
    orderBy: [{ openedAt: 'asc' }, { id: 'asc' }],
  },
  attachments: { where: { removedAt: null }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] },
  artwork: { where: { removedAt: null }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] },
  declarations: { include: { company: true }, orderBy: [{ madeAt: 'asc' }, { id: 'asc' }] },
  proposals: { include: { audienceCompany: true }, orderBy: [{ proposedAt: 'asc' }, { id: 'asc' }] },
  signatures: { orderBy: [{ signedAt: 'asc' }, { id: 'asc' }] },
  stageMoves: { orderBy: [{ movedAt: 'asc' }, { id: 'asc' }] },
  packages: true,
} as const satisfies Prisma.RevisionInclude

type Row = Prisma.RevisionGetPayload<{ include: typeof REVISION_RECORD }>

export interface RevisionRecord extends Row {
  /** Names of everybody whom the record mentions. */
  readonly people: ReadonlyMap<string, string>
  /** Names of the companies whom the record mentions. */
  readonly companies: ReadonlyMap<string, { readonly id: string; readonly kind: string; readonly name: string }>
}

/** @throws Error when it is absent: the caller has already loaded and authorised it in the same transaction */
export async function loadRevisionRecord(tx: TransactionClient, revisionId: string): Promise<RevisionRecord> {
  const row = await tx.revision.findUniqueOrThrow({ where: { id: revisionId }, include: REVISION_RECORD })
  const people = await tx.user.findMany({
    where: { id: { in: [...collectPeople(row)] } },
    select: { id: true, name: true },
  })
  const companies = await tx.company.findMany({ where: { id: { in: [...collectCompanies(row)] } } })
  return {
    ...row,
    people: new Map(people.map(({ id, name }) => [id, name])),
    companies: new Map(companies.map((company) => [company.id, company])),
  }
}

export function getPersonName(record: Pick<RevisionRecord, 'people'>, userId: string): string {
  return record.people.get(userId) ?? 'somebody'
}

export function getCompanyName(record: Pick<RevisionRecord, 'companies'>, companyId: string): string {
  return record.companies.get(companyId)?.name ?? 'a company'
}

function collectPeople(row: Row): Set<string> {
  const ids = new Set<string | null>([row.createdById])
  for (const membership of row.project.memberships) ids.add(membership.userId)
  for (const edit of row.edits) ids.add(edit.userId)
  for (const answer of row.answers) for (const entry of answer.history) ids.add(entry.userId)
  for (const waiver of row.waivers) ids.add(waiver.proposedById).add(waiver.decidedById)
  for (const thread of row.threads) {
    ids.add(thread.openedById).add(thread.answeredById).add(thread.closedById)
    for (const comment of thread.comments) ids.add(comment.authorId)
  }
  for (const file of [...row.attachments, ...row.artwork]) ids.add(file.uploadedById)
  for (const declaration of row.declarations) ids.add(declaration.madeById)
  for (const proposal of row.proposals) ids.add(proposal.proposedById).add(proposal.decidedById)
  for (const signature of row.signatures) ids.add(signature.signerId).add(signature.voidedById)
  for (const move of row.stageMoves) ids.add(move.movedById)
  for (const file of row.packages) ids.add(file.releasedById)
  return withoutNull(ids)
}

function collectCompanies(row: Row): Set<string> {
  const ids = new Set<string | null>(row.project.memberships.map((membership) => membership.companyId))
  for (const share of row.shares) ids.add(share.companyId)
  for (const thread of row.threads) {
    ids.add(thread.audienceCompanyId).add(thread.openedByCompanyId)
    for (const comment of thread.comments) ids.add(comment.companyId)
  }
  for (const declaration of row.declarations) ids.add(declaration.companyId)
  for (const proposal of row.proposals) ids.add(proposal.audienceCompanyId).add(proposal.proposedByCompanyId)
  return withoutNull(ids)
}

function withoutNull(ids: ReadonlySet<string | null>): Set<string> {
  return new Set([...ids].filter((id) => id !== null))
}
