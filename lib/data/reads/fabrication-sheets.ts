import 'server-only'
import type { FabricationSheetContent, KeptSheetKind } from '@/lib/fabrication'
import { type Actor, type CompanyAction, requireCompany } from '../records/authorization'
import { toCompanyView } from '../records/part-views'
import { loadSheet } from '../records/sheet-records'
import type { TransactionClient } from '../store/client'
import type { FabricationSheetVersionView, FabricationSheetView } from '../views'
import { read } from './read'

/** The right to see each kind of sheet. */
export const SHEET_VIEW_ACTIONS = {
  matrix: 'company:view-matrix',
  shelf: 'company:view-shelf',
  'panel-formats': 'company:view-rates',
  'process-rates': 'company:view-rates',
  // Shown where the matrix is.
  'flex-tests': 'company:view-matrix',
} as const satisfies Record<KeptSheetKind, CompanyAction>

/**
 * The newest version of what a fabricator keeps of one kind: for their own people, and for the team of a project to
 * which they chose to show it. To another fabricator the company does not exist.
 */
export function getSheet<K extends KeptSheetKind>(
  actor: Actor,
  companyId: string,
  kind: K,
): Promise<FabricationSheetView<FabricationSheetContent<K>>> {
  return read(actor, async ({ tx, rights }) => {
    const { company, may, mayEdit } = await requireCompany(tx, rights, companyId, SHEET_VIEW_ACTIONS[kind])
    const mayOpenVersions = may('company:view-versions')
    const record = await loadSheet(tx, company.id, kind)
    if (record === null) return { company: toCompanyView(company), mayEdit, mayOpenVersions, current: null }
    const names = await loadNames(tx, [record.setById])
    return {
      company: toCompanyView(company),
      mayEdit,
      mayOpenVersions,
      current: { ...toVersionView(record, names), content: record.content },
    }
  })
}

/** Every version that was saved, newest first, without what it holds. */
export function listSheetVersions(
  actor: Actor,
  companyId: string,
  kind: KeptSheetKind,
): Promise<readonly FabricationSheetVersionView[]> {
  return read(actor, async ({ tx, rights }) => {
    const { company } = await requireCompany(tx, rights, companyId, SHEET_VIEW_ACTIONS[kind])
    return findVersions(tx, company.id, kind)
  })
}

/** Newest first. */
export async function findVersions(
  tx: TransactionClient,
  companyId: string,
  kind: KeptSheetKind,
): Promise<readonly FabricationSheetVersionView[]> {
  const rows = await tx.fabricationSheet.findMany({
    where: { companyId, kind },
    orderBy: { version: 'desc' },
    select: { version: true, issuedOn: true, note: true, setById: true, setAt: true },
  })
  const names = await loadNames(
    tx,
    rows.map(({ setById }) => setById),
  )
  return rows.map((row) => toVersionView(row, names))
}

type VersionRow = Pick<FabricationSheetVersionView, 'version' | 'issuedOn' | 'note'> & {
  readonly setById: string
  readonly setAt: Date
}

function toVersionView(row: VersionRow, names: ReadonlyMap<string, string>): FabricationSheetVersionView {
  const { version, issuedOn, note, setById, setAt } = row
  const setBy = { id: setById, name: names.get(setById) ?? 'somebody' }
  return { version, issuedOn, note, setBy, setAt: setAt.toISOString() }
}

export async function loadNames(
  tx: TransactionClient,
  userIds: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const users = await tx.user.findMany({
    where: { id: { in: [...new Set(userIds)] } },
    select: { id: true, name: true },
  })
  return new Map(users.map(({ id, name }) => [id, name]))
}
