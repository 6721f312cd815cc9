import 'server-only'
import {
  type FabricationSheetContent,
  type FabricationSheetKind,
  isKeptSheetKind,
  type KeptSheetKind,
  readSheetContent,
} from '@/lib/fabrication'
import { NOTHING_SHARED, type Sharing } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import { readTogether } from '../store/read-together'

/** The newest version of a sheet, ready for use. */
export interface FabricationSheetRecord<K extends KeptSheetKind> {
  readonly version: number
  readonly issuedOn: string
  readonly note: string
  readonly setById: string
  readonly setAt: Date
  readonly content: FabricationSheetContent<K>
}

/** The newest sheets of one fabricator; a kind that they do not keep is absent. */
export interface CompanySheets {
  readonly companyId: string
  readonly companyName: string
  /** What the project's team gets of them; the company's own people see them whatever this says. */
  readonly sharing: Sharing
  readonly sheets: { readonly [K in KeptSheetKind]?: FabricationSheetRecord<K> }
}

/**
 * What a view may rest on: to a fabricator its own sheets alone, to the team what each fabricator lets it have. A matrix that
 * is only checked against is among them: what is handed out of it passes `withoutLimits`.
 *
 * @param fabricatorCompanyId  null is the team
 */
export function pickSheets(
  all: readonly CompanySheets[],
  fabricatorCompanyId: string | null,
): readonly CompanySheets[] {
  if (fabricatorCompanyId !== null) return all.filter(({ companyId }) => companyId === fabricatorCompanyId)
  return all.map((company) => pickFor(company, ({ matrix }) => matrix !== 'not-shared'))
}

/** What the team may see whole, or try a design on that nobody saved: nothing that is only checked against. */
export function pickShownSheets(
  all: readonly CompanySheets[],
  fabricatorCompanyId: string | null,
): readonly CompanySheets[] {
  if (fabricatorCompanyId !== null) return pickSheets(all, fabricatorCompanyId)
  return all.map((company) => pickFor(company, ({ matrix }) => matrix === 'shown'))
}

function pickFor(company: CompanySheets, hasMatrix: (sharing: Sharing) => boolean): CompanySheets {
  const { sharing, sheets } = company
  const { matrix, shelf, 'panel-formats': formats, 'process-rates': rates, 'flex-tests': tests } = sheets
  return {
    ...company,
    sheets: {
      ...(matrix !== undefined && hasMatrix(sharing) ? { matrix } : {}),
      ...(shelf !== undefined && sharing.shelf === 'shown' ? { shelf } : {}),
      ...(formats !== undefined && sharing.rates === 'shown' ? { 'panel-formats': formats } : {}),
      ...(rates !== undefined && sharing.rates === 'shown' ? { 'process-rates': rates } : {}),
      // A life that rests on them names their figures: where the matrix is only checked against they are not used.
      ...(tests !== undefined && sharing.matrix === 'shown' ? { 'flex-tests': tests } : {}),
    },
  }
}

/** Which versions are in force, as data to hash. */
export function listSheetVersionsOf(companies: readonly CompanySheets[]) {
  return companies.flatMap(({ companyId, sheets }) =>
    Object.entries(sheets).map(([kind, { version }]) => ({ companyId, kind, version })),
  )
}

type FabricationSheetRow = Awaited<ReturnType<typeof findSheetRow>>

function findSheetRow(tx: TransactionClient, companyId: string, kind: FabricationSheetKind) {
  return tx.fabricationSheet.findFirst({ where: { companyId, kind }, orderBy: { version: 'desc' } })
}

/** @throws Error for content that this version cannot read: it was read by its schema before it was stored */
export function reviveSheet<K extends KeptSheetKind>(
  kind: K,
  row: NonNullable<FabricationSheetRow>,
): FabricationSheetRecord<K> {
  const reading = readSheetContent(kind, JSON.parse(row.contentJson))
  if (!reading.ok) throw new Error(`the stored ${kind} ${row.id} cannot be read: ${reading.issues[0]?.message}`)
  const { version, issuedOn, note, setById, setAt } = row
  return { version, issuedOn, note, setById, setAt, content: reading.content }
}

export async function loadSheet<K extends KeptSheetKind>(
  tx: TransactionClient,
  companyId: string,
  kind: K,
): Promise<FabricationSheetRecord<K> | null> {
  const row = await findSheetRow(tx, companyId, kind)
  return row === null ? null : reviveSheet(kind, row)
}

/** A version that is or was in force; null where there is none of that number. */
export async function loadSheetVersion<K extends KeptSheetKind>(
  tx: TransactionClient,
  companyId: string,
  kind: K,
  version: number,
): Promise<FabricationSheetRecord<K> | null> {
  const row = await tx.fabricationSheet.findFirst({ where: { companyId, kind, version } })
  return row === null ? null : reviveSheet(kind, row)
}

interface NamedCompany {
  readonly id: string
  readonly name: string
}

/** The newest sheets of several fabricators, in the order given, shared with nobody: `findFabricatorsInView` tells what a person may have of them. */
export async function loadCompanySheets(
  tx: TransactionClient,
  companies: readonly NamedCompany[],
): Promise<readonly CompanySheets[]> {
  const newest = await loadNewestSheets(
    tx,
    companies.map(({ id }) => id),
  )
  return makeCompanySheets(newest, companies, new Map())
}

type NewestSheets = ReadonlyMap<string, CompanySheets['sheets']>

/** The newest sheet of each kind, by company. */
export async function loadNewestSheets(tx: TransactionClient, companyIds: readonly string[]): Promise<NewestSheets> {
  const { rows } = await readTogether(tx, {
    rows: {
      model: 'FabricationSheet',
      among: { companyId: companyIds },
      latest: { by: ['companyId', 'kind'], number: 'version' },
    },
  } as const)
  return new Map(
    companyIds.map((id) => [
      id,
      Object.fromEntries(
        rows.flatMap((row) =>
          row.companyId === id && isKeptSheetKind(row.kind) ? [[row.kind, reviveSheet(row.kind, row)]] : [],
        ),
      ),
    ]),
  )
}

export function makeCompanySheets(
  newest: NewestSheets,
  companies: readonly NamedCompany[],
  sharings: ReadonlyMap<string, Sharing>,
): readonly CompanySheets[] {
  return companies.map(({ id, name }) => ({
    companyId: id,
    companyName: name,
    sharing: sharings.get(id) ?? NOTHING_SHARED,
    sheets: newest.get(id) ?? {},
  }))
}
