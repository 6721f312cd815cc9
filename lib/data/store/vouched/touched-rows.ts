import 'server-only'
import type { VouchedRow } from './models'
import { VOUCHED_MODELS } from './models'
import { hashRow, type RowHashes } from './row-hash'
import { getDelegate } from './watch'
import type { Writing } from './writing'

export interface TouchedRow {
  readonly kind: string
  readonly key: string
  readonly model: string
  /** Null where the row is gone; so is its hash. */
  readonly row: VouchedRow | null
  readonly hash: string | null
}

/** As many keys as a statement takes on either database. */
const KEYS_AT_ONCE = 500

/** Hashes of the rows that a transaction touched, as they are now; in the order of the models and of their keys. */
export async function hashTouchedRows({ tx, touched }: Writing): Promise<TouchedRow[]> {
  const rows: TouchedRow[] = []
  for (const vouched of VOUCHED_MODELS) {
    const keys = [...(touched.get(vouched.model) ?? [])].sort()
    for (let from = 0; from < keys.length; from += KEYS_AT_ONCE) {
      const some = keys.slice(from, from + KEYS_AT_ONCE)
      const found = await getDelegate(tx, vouched.model).findMany({ where: { [vouched.key]: { in: some } } })
      const byKey = new Map(found.map((row) => [row[vouched.key], row]))
      for (const key of some) {
        const row = byKey.get(key) ?? null
        const { model, kind } = vouched
        rows.push({ kind, key: String(key), model, row, hash: row === null ? null : hashRow(vouched, row) })
      }
    }
  }
  return rows
}

export function groupRows(rows: readonly TouchedRow[]): RowHashes {
  const groups: Record<string, Record<string, string | null>> = {}
  for (const { kind, key, hash } of rows) groups[kind] = { ...groups[kind], [key]: hash }
  return groups
}
