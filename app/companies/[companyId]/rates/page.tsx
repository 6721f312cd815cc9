import type { Metadata } from 'next'
import { CompanyLinks } from '@/app/_components/fabrication/company-links'
import { RatesSheet } from '@/app/_components/fabrication/rates-sheet'
import { SheetVersion } from '@/app/_components/fabrication/sheet-version'
import { VersionList } from '@/app/_components/fabrication/version-list'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getCompany, getSheet, listSheetVersions } from '@/lib/data'

export const metadata: Metadata = { title: 'Process rates' }

export default async function CompanyRatesPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const actor = await requireActor(paths.companyRates(companyId))
  const { company, mayEdit, current } = await readOrNotFound(() => getSheet(actor, companyId, 'process-rates'))
  const { may } = await readOrNotFound(() => getCompany(actor, companyId))
  const versions = await listSheetVersions(actor, companyId, 'process-rates')
  return (
    <>
      <PageHead
        title="Process rates"
        over={company.name}
        under={
          mayEdit
            ? 'Replace any line with your own rate; the others stay illustrative and are labelled so wherever they are used. The teams that you share them with see the rates; no other fabricator does.'
            : 'Rates of this fabricator, and illustrative ones where it states none. They compare constructions and are not prices.'
        }
      />
      <CompanyLinks companyId={companyId} may={may} />
      {current !== null && <SheetVersion sheet={current} />}
      <VersionList versions={versions} />
      <RatesSheet
        key={current?.version ?? 0}
        companyId={companyId}
        seenVersion={current?.version ?? 0}
        content={current?.content ?? null}
        mayEdit={mayEdit}
        today={now().toISOString().slice(0, 10)}
      />
    </>
  )
}
