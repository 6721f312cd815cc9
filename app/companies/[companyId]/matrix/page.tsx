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

export const metadata: Metadata = { title: 'Capability matrix' }

export default async function CompanyMatrixPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const actor = await requireActor(paths.companyMatrix(companyId))
  const { company, mayEdit, current } = await readOrNotFound(() => getSheet(actor, companyId, 'matrix'))
  const { may } = await readOrNotFound(() => getCompany(actor, companyId))
  const versions = await listSheetVersions(actor, companyId, 'matrix')
  const version = current?.version ?? 0
  return (
    <>
      <PageHead
        title="Capability matrix"
        over={company.name}
        under={
          mayEdit
            ? 'What you build every day, and what you can build at a stretch. Reviews shared with you compare each value of the design with it; no other fabricator sees it.'
            : 'What this fabricator builds every day, and at a stretch.'
        }
      />
      <CompanyLinks companyId={companyId} may={may} />
      {current !== null && <SheetVersion sheet={current} />}
      <VersionList versions={versions} />
      {!mayEdit && current === null ? (
        <p className="empty">This fabricator has stated no capability matrix yet.</p>
      ) : (
        <FabricationSheetEditor
          key={version}
          label="Capability matrix"
          companyId={companyId}
          sheet={{ kind: 'matrix', content: current?.content ?? { rows: [] } }}
          seenVersion={version}
          mayEdit={mayEdit}
          today={now().toISOString().slice(0, 10)}
        />
      )}
    </>
  )
}
