import 'server-only'
import isSame from 'fast-deep-equal'
import {
  compareRows,
  describeRowChanges,
  type KeptSheetKind,
  matrixRowKey,
  readSheetContent,
  SHEET_NAMES,
  type SheetContent,
  shelfRowKey,
} from '@/lib/fabrication'
import type { SaveSheetInput } from '@/lib/inputs'
import { type Actor, type CompanyAction, requireCompany } from './authorization'
import type { TransactionClient } from './client'
import { refuseInvalid, refuseStale } from './errors'
import { toCompanyView } from './part-views'
import { read } from './read'
import { loadSheet, reviveSheet } from './sheet-records'
import type { ChangeSince, Outcome, SheetVersionView, SheetView } from './views'
import { type WriteContext, write } from './write'

/** The right to see each kind of sheet. */
export const SHEET_VIEW_ACTIONS = {
  matrix: 'company:view-matrix',
  shelf: 'company:view-shelf',
  'panel-formats': 'company:view-rates',
  'process-rates': 'company:view-rates',
} as const satisfies Record<KeptSheetKind, CompanyAction>

/**
 * The newest version of what a fabricator keeps of one kind: for their own people, and for the team of a project to
 * which they chose to show it. To another fabricator the company does not exist.
 */
export function getSheet<K extends KeptSheetKind>(
  actor: Actor,
  companyId: string,
  kind: K,
): Promise<SheetView<SheetContent<K>>> {
  return read(actor, async ({ tx, standing }) => {
    const { company, mayEdit } = await requireCompany(tx, standing, companyId, SHEET_VIEW_ACTIONS[kind])
    const record = await loadSheet(tx, company.id, kind)
    if (record === null) return { company: toCompanyView(company), mayEdit, current: null }
    const names = await loadNames(tx, [record.setById])
    return {
      company: toCompanyView(company),
      mayEdit,
      current: { ...toVersionView(record, names), content: record.content },
    }
  })
}

/** Every version that was saved, newest first, without what it holds. */
export function listSheetVersions(
  actor: Actor,
  companyId: string,
  kind: KeptSheetKind,
): Promise<readonly SheetVersionView[]> {
  return read(actor, async ({ tx, standing }) => {
    const { company } = await requireCompany(tx, standing, companyId, SHEET_VIEW_ACTIONS[kind])
    const rows = await tx.fabricationSheet.findMany({
      where: { companyId: company.id, kind },
      orderBy: { version: 'desc' },
      select: { version: true, issuedOn: true, note: true, setById: true, setAt: true },
    })
    const names = await loadNames(
      tx,
      rows.map(({ setById }) => setById),
    )
    return rows.map((row) => toVersionView(row, names))
  })
}

export interface SavedSheet {
  /** The new version; the one that was there where nothing differs. */
  readonly version: number
}

/**
 * Saves a sheet as a new version; earlier ones stay. As with a fabricator's limits, recorded results of revisions that
 * are shared with them show as stale until they are evaluated again: nobody's signature lapses by a sheet elsewhere.
 */
export function saveSheet(actor: Actor, input: SaveSheetInput): Promise<Outcome<SavedSheet>> {
  return write(actor, 'save-sheet', input, (context) =>
    storeSheet(context, input, () => {
      const reading = readSheetContent(input.kind, input.content)
      return reading.ok ? reading.content : refuseInvalid(reading.issues)
    }),
  )
}

/**
 * Stores a new version within a write, for a person who keeps the sheet and saw its newest version.
 * @param makeContent  what it holds, from what it held; may refuse
 */
export async function storeSheet<K extends KeptSheetKind>(
  { tx, standing, at, record }: WriteContext,
  input: Omit<SaveSheetInput, 'content' | 'kind'> & { readonly kind: K },
  makeContent: (before: SheetContent<K> | null) => SheetContent<K>,
): Promise<SavedSheet> {
  const { company } = await requireCompany(tx, standing, input.companyId, 'sheet:edit')
  const { kind, issuedOn, note } = input
  const stored = await loadSheet(tx, company.id, kind)
  const version = stored?.version ?? 0
  if (version !== input.seenVersion) {
    const changes = await listChangesSince(tx, company.id, kind, input.seenVersion)
    refuseStale(input.seenVersion, version, changes, `the ${SHEET_NAMES[kind]}`)
  }
  const content = makeContent(stored?.content ?? null)
  const summary = describeContentChanges(kind, stored?.content ?? null, content)
  if (stored !== null && summary === null && stored.issuedOn === issuedOn && stored.note === note) return { version }
  const next = version + 1
  const fields = { version: next, contentJson: JSON.stringify(content), issuedOn, note }
  await tx.fabricationSheet.create({
    data: { companyId: company.id, kind, ...fields, setById: standing.userId, setAt: at },
  })
  await record({
    action: 'sheet-saved',
    subject: { kind: 'sheet', id: `${kind}/${next}` },
    companyId: company.id,
    // Neither contents nor note: the trail is read by people to whom the fabricator does not show the sheet.
    details: { sheet: SHEET_NAMES[kind], version: next, issuedOn, changes: summary ?? 'date or note' },
  })
  return { version: next }
}

type VersionRow = Pick<SheetVersionView, 'version' | 'issuedOn' | 'note'> & {
  readonly setById: string
  readonly setAt: Date
}

function toVersionView(row: VersionRow, names: ReadonlyMap<string, string>): SheetVersionView {
  const { version, issuedOn, note, setById, setAt } = row
  const setBy = { id: setById, name: names.get(setById) ?? 'somebody' }
  return { version, issuedOn, note, setBy, setAt: setAt.toISOString() }
}

async function loadNames(tx: TransactionClient, userIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const users = await tx.user.findMany({
    where: { id: { in: [...new Set(userIds)] } },
    select: { id: true, name: true },
  })
  return new Map(users.map(({ id, name }) => [id, name]))
}

/** What each version after the seen one changed, oldest first. */
async function listChangesSince(
  tx: TransactionClient,
  companyId: string,
  kind: KeptSheetKind,
  seenVersion: number,
): Promise<ChangeSince[]> {
  const rows = await tx.fabricationSheet.findMany({
    where: { companyId, kind, version: { gte: seenVersion } },
    orderBy: { version: 'asc' },
  })
  const names = await loadNames(
    tx,
    rows.map(({ setById }) => setById),
  )
  const records = rows.map((row) => reviveSheet(kind, row))
  return records.flatMap((later, index) => {
    if (later.version <= seenVersion) return []
    const what = describeContentChanges(kind, records[index - 1]?.content ?? null, later.content)
    const by = names.get(later.setById) ?? 'Somebody'
    return [{ by, at: later.setAt.toISOString(), what: [what ?? 'the date of issue or the note'] }]
  })
}

/** In words; null where nothing differs. */
function describeContentChanges(kind: KeptSheetKind, before: unknown, after: unknown): string | null {
  if (isSame(before, after)) return null
  const rowsOf = (content: unknown): readonly unknown[] =>
    typeof content === 'object' && content !== null && 'rows' in content && Array.isArray(content.rows)
      ? content.rows
      : []
  const keyOf = ROW_KEYS[kind]
  const changes =
    keyOf === undefined
      ? null
      : describeRowChanges(compareRows(rowsOf(before), rowsOf(after), keyOf as (row: unknown) => string))
  return changes ?? `the ${SHEET_NAMES[kind]}`
}

/** By which a row of each kind of sheet is known; a kind without rows is compared as a whole. */
const ROW_KEYS: { readonly [K in KeptSheetKind]?: (row: never) => string } = {
  matrix: matrixRowKey,
  shelf: shelfRowKey,
}
