import type { Metadata } from 'next'
import { CompanyLinks } from '@/app/_components/fabrication/company-links'
import { LimitList } from '@/app/_components/limits/limit-list'
import { listLimitRows } from '@/app/_components/limits/limit-rows'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getCompany, getLimitList } from '@/lib/data'

export const metadata: Metadata = { title: 'Limits' }

export default async function CompanyLimitsPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const actor = await requireActor(paths.companyLimits(companyId))
  const sheet = await readOrNotFound(() => getLimitList(actor, companyId))
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
      <LimitList rows={listLimitRows()} limits={sheet.limits} companyId={companyId} mayEdit={sheet.mayEdit} />
    </>
  )
}
