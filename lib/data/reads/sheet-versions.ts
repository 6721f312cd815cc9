import 'server-only'
import { listTableChanges, type SheetRow, tableOf } from '@/lib/fabrication'
import { sheetVersionInput } from '@/lib/inputs'
import { type Actor, requireCompany } from '../records/authorization'
import { toCompanyView } from '../records/part-views'
import { loadSheetVersion } from '../records/sheet-records'
import { NotFoundError } from '../store/errors'
import type { SheetTable, SheetVersionView } from '../views'
import { findVersions } from './fabrication-sheets'
import { read } from './read'

/**
 * One version of a matrix, a shelf or flex tests, with what differs between it and another one: for the fabricator's own people.
 *
 * @param asked  as the address says it; `against` null is the newest version, or for the newest the one before it
 */
export function getSheetVersion(
  actor: Actor,
  companyId: string,
  asked: { readonly kind: string; readonly version: string; readonly against: string | null },
): Promise<SheetVersionView> {
  return read(actor, async ({ tx, rights }) => {
    const parsed = sheetVersionInput.safeParse({ companyId, ...asked })
    if (!parsed.success) throw new NotFoundError('version')
    const { kind, version, against } = parsed.data
    const { company, may } = await requireCompany(tx, rights, companyId, 'company:view-versions')
    const versions = await findVersions(tx, company.id, kind)
    const found = versions.find((one) => one.version === version)
    const others = versions.filter((one) => one !== found)
    const other = against === null ? others[0] : others.find((one) => one.version === against)
    if (found === undefined || (against !== null && other === undefined)) throw new NotFoundError('version')
    const load = async (number: number): Promise<SheetTable> => {
      const record = await loadSheetVersion(tx, company.id, kind, number)
      if (record === null) throw new NotFoundError('version')
      // The record is of the kind that it was asked by.
      return { kind, content: record.content } as SheetTable
    }
    const sheet = await load(version)
    return {
      company: toCompanyView(company),
      mayRestore: may('sheet:edit'),
      version: found,
      sheet,
      newestVersion: versions[0]?.version ?? version,
      others,
      comparison:
        other === undefined
          ? null
          : compare({ number: version, sheet }, { number: other.version, sheet: await load(other.version) }),
    }
  })
}

interface Side {
  readonly number: number
  readonly sheet: SheetTable
}

function compare(one: Side, other: Side): NonNullable<SheetVersionView['comparison']> {
  const [from, to] = one.number < other.number ? [one, other] : [other, one]
  const [before, after] = [readBuildTime(from.sheet), readBuildTime(to.sheet)]
  return {
    from: from.number,
    to: to.number,
    rows: listTableChanges<SheetRow>(tableOf(from.sheet.kind), from.sheet.content.rows, to.sheet.content.rows),
    buildTimeDays: before === after ? null : { before, after },
  }
}

const readBuildTime = ({ kind, content }: SheetTable) => (kind === 'shelf' ? content.buildTimeDays : null)
