import type { Metadata } from 'next'
import Link from 'next/link'
import { AboutAccess, AccessLog } from '@/app/_components/access/access-log'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { readPageNumber } from '@/app/_components/ui/page-number'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { listCompanyAccess } from '@/lib/data'

interface AccessPageProps {
  params: Promise<{ companyId: string }>
  searchParams: Promise<{ page?: string | string[] }>
}

export const metadata: Metadata = { title: 'Who opened what' }

export default async function CompanyAccessPage({ params, searchParams }: AccessPageProps) {
  const { companyId } = await params
  const page = readPageNumber((await searchParams).page)
  const actor = await requireActor(paths.companyAccess(companyId))
  const view = await readOrNotFound(() => listCompanyAccess(actor, companyId, page))
  return (
    <>
      <PageHead
        title="Who opened what"
        over={<Link href={paths.company(companyId)}>{view.name}</Link>}
        under={<AboutAccess keptDays={view.keptDays} />}
      />
      <AccessLog
        view={view}
        page={page}
        hrefOf={(n) => paths.companyAccess(companyId, n)}
        fileHref={paths.companyAccessFile(companyId)}
      />
    </>
  )
}
