import 'server-only'

/** Content of one row, as the database client reads it. */
export type VouchedRow = Readonly<Record<string, unknown>>

/** A table whose rows the trail vouches for: each record carries hashes of the rows that its act left behind. */
export interface VouchedModel {
  /** As the models name it. */
  readonly model: string
  /** The word for a row of it, in records and reports. */
  readonly kind: string
  readonly key: string
  /** What the hash covers. */
  readonly columns: readonly string[]
  /**
   * Columns that came after hashes were first kept, with the value that older rows were given: a row that still has it
   * hashes as it did before. Columns that are null in older rows need no entry.
   */
  readonly later?: Readonly<Record<string, string | number | boolean>>
  /** What the models call a column today, where hashes were first kept under another name. */
  readonly renamed?: Readonly<Record<string, string>>
  /** Columns that no hash covers, and why. */
  readonly open?: Readonly<Record<string, string>>
  /** What tells this row from others, for a reader. */
  readonly name: (row: VouchedRow) => string
}

/** By a column that people know it by. */
export const by = (column: string) => (row: VouchedRow) => `"${String(row[column])}"`
