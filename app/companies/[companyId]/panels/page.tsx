import type { Metadata } from 'next'
import { CompanyLinks } from '@/app/_components/fabrication/company-links'
import { FormatTable } from '@/app/_components/fabrication/format-table'
import { FormatsForm } from '@/app/_components/fabrication/formats-form'
import { SheetVersion } from '@/app/_components/fabrication/sheet-version'
import { VersionList } from '@/app/_components/fabrication/version-list'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getCompany, getSheet, listSheetVersions } from '@/lib/data'

export const metadata: Metadata = { title: 'Panel formats' }

export default async function CompanyPanelsPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const actor = await requireActor(paths.companyPanels(companyId))
  const { company, mayEdit, current } = await readOrNotFound(() => getSheet(actor, companyId, 'panel-formats'))
  const { may } = await readOrNotFound(() => getCompany(actor, companyId))
  const versions = await listSheetVersions(actor, companyId, 'panel-formats')
  return (
    <>
      <PageHead
        title="Panel formats"
        over={company.name}
        under={
          mayEdit
            ? 'The panels that you run. Parts in reviews shared with you are placed on them; no other fabricator sees them.'
            : 'The panels that this fabricator runs.'
        }
      />
      <CompanyLinks companyId={companyId} may={may} />
      {current !== null && <SheetVersion sheet={current} />}
      <VersionList versions={versions} />
      {mayEdit ? (
        <FormatsForm
          key={current?.version ?? 0}
          companyId={companyId}
          seenVersion={current?.version ?? 0}
          content={current?.content ?? { formats: [] }}
          today={now().toISOString().slice(0, 10)}
        />
      ) : current === null || current.content.formats.length === 0 ? (
        <p className="empty">This fabricator has stated no panel format yet.</p>
      ) : (
        <FormatTable formats={current.content.formats} />
      )}
    </>
  )
}
