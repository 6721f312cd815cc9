import type { Metadata } from 'next'
import { CompanyLinks } from '@/app/_components/fabrication/company-links'
import { FabricationSheetEditor } from '@/app/_components/fabrication/grid/sheet-editor'
import { SheetVersion } from '@/app/_components/fabrication/sheet-version'
import { VersionList } from '@/app/_components/fabrication/version-list'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getCompany, getSheet, listSheetVersions } from '@/lib/data'

export const metadata: Metadata = { title: 'Shelf' }

export default async function CompanyShelfPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const actor = await requireActor(paths.companyShelf(companyId))
  const { company, mayEdit, current } = await readOrNotFound(() => getSheet(actor, companyId, 'shelf'))
  const { may } = await readOrNotFound(() => getCompany(actor, companyId))
  const versions = await listSheetVersions(actor, companyId, 'shelf')
  const version = current?.version ?? 0
  return (
    <>
      <PageHead
        title="Shelf"
        over={company.name}
        under={
          mayEdit
            ? 'The materials that you stock, and lead times of the others. Reviews shared with you look up their materials here; no other fabricator sees it.'
            : 'The materials that this fabricator stocks, and lead times of the others.'
        }
      />
      <CompanyLinks companyId={companyId} may={may} />
      {current !== null && <SheetVersion sheet={current} />}
      <VersionList versions={versions} />
      {!mayEdit && current === null ? (
        <p className="empty">This fabricator has stated nothing about its shelf yet.</p>
      ) : (
        <FabricationSheetEditor
          key={version}
          label="Shelf"
          companyId={companyId}
          sheet={{ kind: 'shelf', content: current?.content ?? { buildTimeDays: null, rows: [] } }}
          seenVersion={version}
          mayEdit={mayEdit}
          today={now().toISOString().slice(0, 10)}
        />
      )}
    </>
  )
}
