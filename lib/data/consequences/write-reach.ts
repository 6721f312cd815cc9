import 'server-only'
import type { Prisma } from '../generated/sqlite/client'
import type { TransactionClient } from '../store/client'
import type { TouchedRow } from '../store/vouched/touched-rows'
import type { PendingRecord } from '../store/vouched/writing'

/** Rows on which no standing rests: an account's own means of signing in, links, and versions that revisions do not follow by themselves. */
const OF_NO_STANDING: ReadonlySet<string> = new Set([
  'Passkey',
  'Identity',
  'Invitation',
  'CatalogueTemplate',
  'LibraryEntry',
  'DesignState',
  'VerdictFlip',
  'PackageReceipt',
])

/**
 * Which standings of revisions (`RevisionStanding`) a write may have moved: found from the rows that it touched, so that no act can
 * forget to say so. A row that names neither revision, project nor company goes by the record of its act, and otherwise reaches all.
 */
export class WriteReach {
  readonly #revisionIds = new Set<string>()
  readonly #projectIds = new Set<string>()
  readonly #companyIds = new Set<string>()
  readonly #userIds = new Set<string>()
  #isEverything = false

  add(rows: readonly TouchedRow[], records: readonly PendingRecord[]): void {
    for (const row of rows) if (!OF_NO_STANDING.has(row.model)) this.#addRow(row, records)
  }

  #addRow({ model, key, row }: TouchedRow, records: readonly PendingRecord[]): void {
    if (model === 'User') this.#userIds.add(key)
    else if (model === 'Revision') this.#revisionIds.add(key)
    else if (model === 'Project') this.#projectIds.add(key)
    else if (model === 'Company') this.#companyIds.add(key)
    else if (row !== null && this.#addPlace(row)) return
    // Comments and other rows below a revision, and rows that are gone.
    else if (!records.map(({ note }) => this.#addPlace(note)).includes(true)) this.#isEverything = true
  }

  #addPlace(place: {
    readonly revisionId?: unknown
    readonly projectId?: unknown
    readonly companyId?: unknown
  }): boolean {
    if (typeof place.revisionId === 'string') this.#revisionIds.add(place.revisionId)
    else if (typeof place.projectId === 'string') this.#projectIds.add(place.projectId)
    else if (typeof place.companyId === 'string') this.#companyIds.add(place.companyId)
    else return false
    return true
  }

  /** In the transaction of the write: what is worked out from before it does not hold after it. */
  async countUp(tx: TransactionClient): Promise<void> {
    const where = this.#where()
    if (where === null) return
    await tx.revisionStanding.updateMany({ where, data: { changes: { increment: 1 }, workedOutAt: null } })
  }

  #where(): Prisma.RevisionStandingWhereInput | null {
    if (this.#isEverything) return {}
    const OR: Prisma.RevisionStandingWhereInput[] = []
    if (this.#revisionIds.size > 0) OR.push({ revisionId: { in: [...this.#revisionIds] } })
    if (this.#projectIds.size > 0) OR.push({ revision: { projectId: { in: [...this.#projectIds] } } })
    if (this.#companyIds.size > 0) {
      const companyId = { in: [...this.#companyIds] }
      OR.push({
        revision: { OR: [{ shares: { some: { companyId } } }, { project: { memberships: { some: { companyId } } } }] },
      })
    }
    if (this.#userIds.size > 0) {
      OR.push({ revision: { project: { memberships: { some: { userId: { in: [...this.#userIds] } } } } } })
    }
    return OR.length === 0 ? null : { OR }
  }
}
