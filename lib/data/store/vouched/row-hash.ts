import 'server-only'
import { hashJson, type JsonValue, type TrailRecord } from '@/lib/review'
import type { VouchedModel, VouchedRow } from './models'

/** Hashes of rows by kind and key; null where the row was deleted. */
export type RowHashes = Readonly<Record<string, Readonly<Record<string, string | null>>>>

/** SHA-256 of the canonical form (RFC 8785) of a row's columns. What is empty is left out, so that a new column changes nothing. */
export function hashRow({ kind, columns, later, renamed }: VouchedModel, row: VouchedRow): string {
  const values: Record<string, JsonValue> = {}
  for (const column of columns) {
    const value = row[renamed?.[column] ?? column]
    if (value === null || value === undefined || value === later?.[column]) continue
    values[column] = value instanceof Date ? value.toISOString() : (value as JsonValue)
  }
  return hashJson({ kind, values })
}

/** The hashes that a record carries; null for one from before they were kept, and for an act that left no row behind. */
export function readRowHashes(record: Pick<TrailRecord, 'details'>): RowHashes | null {
  const rows = record.details.rows
  return typeof rows === 'object' && rows !== null && !Array.isArray(rows) ? (rows as RowHashes) : null
}
