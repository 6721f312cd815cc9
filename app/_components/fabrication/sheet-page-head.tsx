import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { type FabricationSheetView, getCompany, listSheetVersions } from '@/lib/data'
import { isTableSheetKind, type KeptSheetKind } from '@/lib/fabrication'
import { CompanyLinks } from './company-links'
import { SheetVersion } from './sheet-version'
import { VersionList } from './version-list'

interface SheetPageHeadProps {
  /** Of the page. */
  readonly address: string
  readonly kind: KeptSheetKind
  readonly sheet: FabricationSheetView<unknown>
  readonly title: string
  /** What the sheet is for, to those who fill it in. */
  readonly toEditors: string
  readonly toReaders: string
}

/** The head of each page of a fabricator's sheets: what it is, the other sheets, and the versions of this one. */
export async function SheetPageHead({ address, kind, sheet, title, toEditors, toReaders }: SheetPageHeadProps) {
  const actor = await requireActor(address)
  const { company, mayEdit, current } = sheet
  const { may } = await readOrNotFound(() => getCompany(actor, company.id))
  const versions = await listSheetVersions(actor, company.id, kind)
  return (
    <>
      <PageHead title={title} over={company.name} under={mayEdit ? toEditors : toReaders} />
      <CompanyLinks companyId={company.id} may={may} />
      {current !== null && <SheetVersion sheet={current} />}
      <VersionList
        versions={versions}
        hrefOf={
          sheet.mayOpenVersions && isTableSheetKind(kind)
            ? (version) => paths.sheetVersion(company.id, kind, version)
            : null
        }
      />
    </>
  )
}
