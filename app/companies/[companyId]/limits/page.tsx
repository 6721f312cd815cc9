import type { Metadata } from 'next'
import { CompanyLinks } from '@/app/_components/fabrication/company-links'
import { listLimitRows } from '@/app/_components/limits/limit-rows'
import { LimitSheet } from '@/app/_components/limits/limit-sheet'
import { paths } from '@/app/_components/shell/paths'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { getCompany, getLimitSheet } from '@/lib/data'

export const metadata: Metadata = { title: 'Limits' }

export default async function CompanyLimitsPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const actor = await requireActor(paths.companyLimits(companyId))
  const sheet = await readOrNotFound(() => getLimitSheet(actor, companyId))
  const { company, may } = await readOrNotFound(() => getCompany(actor, companyId))
  return (
    <>
      <PageHead
        title="Limits"
        over={company.name}
        under={
          sheet.mayEdit
            ? 'What your process can achieve. Reviews shared with you use these limits and name you as their source; no other fabricator sees them.'
            : 'Limits that this fabricator has set for its own process.'
        }
      />
      <CompanyLinks companyId={companyId} may={may} />
      <LimitSheet rows={listLimitRows()} limits={sheet.limits} companyId={companyId} mayEdit={sheet.mayEdit} />
    </>
  )
}
