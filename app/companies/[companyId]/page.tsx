import type { Metadata } from 'next'
import { CompanyLinks } from '@/app/_components/fabrication/company-links'
import { listLimitRows } from '@/app/_components/limits/limit-rows'
import { LimitSheet } from '@/app/_components/limits/limit-sheet'
import { paths } from '@/app/_components/shell/paths'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { getLimitSheet } from '@/lib/data'

export const metadata: Metadata = { title: 'Fabricator' }

export default async function CompanyPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const actor = await requireActor(paths.company(companyId))
  const sheet = await readOrNotFound(() => getLimitSheet(actor, companyId))
  return (
    <>
      <PageHead
        title={sheet.company?.name ?? 'Fabricator'}
        over="Fabricator"
        under={
          sheet.mayEdit
            ? 'What your process can hold. Reviews shared with you use these limits and say that they are yours; no other fabricator sees them.'
            : 'Limits that this fabricator has set for its own process.'
        }
      />
      <CompanyLinks companyId={companyId} />
      <LimitSheet rows={listLimitRows()} limits={sheet.limits} companyId={companyId} mayEdit={sheet.mayEdit} />
    </>
  )
}
