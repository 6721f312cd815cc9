import 'server-only'
import isSame from 'fast-deep-equal'
import { flexTestRowKey } from '@/lib/engine/flex-tests'
import {
  compareRows,
  describeRowChanges,
  type FabricationSheetContent,
  type KeptSheetKind,
  matrixRowKey,
  readSheetContent,
  SHEET_NAMES,
  shelfRowKey,
} from '@/lib/fabrication'
import type { RestoreSheetVersionInput, SaveSheetInput } from '@/lib/inputs'
import { type WriteContext, write } from '../../consequences/write'
import { loadNames } from '../../reads/fabrication-sheets'
import { type Actor, requireCompany } from '../../records/authorization'
import { loadSheet, loadSheetVersion, reviveSheet } from '../../records/sheet-records'
import type { TransactionClient } from '../../store/client'
import { NotFoundError, refuseField, refuseInvalid, refuseStale } from '../../store/errors'
import type { ActResult, ChangeSince } from '../../views'

export interface SavedSheet {
  /** The new version; the one that was there where nothing differs. */
  readonly version: number
}

/**
 * Saves a sheet as a new version; earlier ones stay. As with a fabricator's limits, recorded results of revisions that
 * are shared with them show as stale until they are evaluated again: nobody's signature lapses by a sheet elsewhere.
 */
export function saveSheet(actor: Actor, input: SaveSheetInput): Promise<ActResult<SavedSheet>> {
  return write(actor, 'save-sheet', input, (context) =>
    storeSheet(context, input, () => {
      const reading = readSheetContent(input.kind, input.content)
      return reading.ok ? reading.content : refuseInvalid(reading.issues)
    }),
  )
}

/** Saves what an earlier version holds as a new one; a version that says what the newest one says is refused. */
export function restoreSheetVersion(actor: Actor, input: RestoreSheetVersionInput): Promise<ActResult<SavedSheet>> {
  return write(actor, 'restore-sheet-version', input, (context) => {
    const { tx } = context
    return storeSheet(
      context,
      input,
      async (before) => {
        const earlier = await loadSheetVersion(tx, input.companyId, input.kind, input.version)
        if (earlier === null) throw new NotFoundError('version')
        if (isSame(before, earlier.content)) {
          refuseField('version', 'nothing-to-restore', `${input.version} says the same as the newest version`)
        }
        return earlier.content
      },
      input.version,
    )
  })
}

/**
 * Stores a new version within a write, for a person who keeps the sheet and saw its newest version.
 * @param makeContent  what it holds, from what it held; may refuse
 * @param restored  the earlier version whose content it is
 */
export async function storeSheet<K extends KeptSheetKind>(
  { tx, rights, at, record }: WriteContext,
  input: Omit<SaveSheetInput, 'content' | 'kind'> & { readonly kind: K },
  makeContent: (
    before: FabricationSheetContent<K> | null,
  ) => FabricationSheetContent<K> | Promise<FabricationSheetContent<K>>,
  restored?: number,
): Promise<SavedSheet> {
  const { company } = await requireCompany(tx, rights, input.companyId, 'sheet:edit')
  const { kind, issuedOn, note } = input
  const stored = await loadSheet(tx, company.id, kind)
  const version = stored?.version ?? 0
  if (version !== input.seenVersion) {
    const changes = await listChangesSince(tx, company.id, kind, input.seenVersion)
    refuseStale(input.seenVersion, version, changes, `the ${SHEET_NAMES[kind]}`)
  }
  const content = await makeContent(stored?.content ?? null)
  const summary = describeContentChanges(kind, stored?.content ?? null, content)
  if (stored !== null && summary === null && stored.issuedOn === issuedOn && stored.note === note) return { version }
  const next = version + 1
  const fields = { version: next, contentJson: JSON.stringify(content), issuedOn, note }
  await tx.fabricationSheet.create({
    data: { companyId: company.id, kind, ...fields, setById: rights.userId, setAt: at },
  })
  await record({
    action: 'sheet-saved',
    subject: { kind: 'sheet', id: `${kind}/${next}` },
    companyId: company.id,
    // Neither contents nor note: the trail is read by people to whom the fabricator does not show the sheet.
    details: {
      sheet: SHEET_NAMES[kind],
      version: next,
      issuedOn,
      changes: summary ?? 'date or note',
      ...(restored === undefined ? {} : { restored }),
    },
  })
  return { version: next }
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
  'flex-tests': flexTestRowKey,
}
