import { NavLinks } from '@/app/_components/shell/nav-links'
import { paths } from '@/app/_components/shell/paths'

/** What a fabricator keeps: limits and sheets, each on its own page. */
export function CompanyLinks({ companyId }: { companyId: string }) {
  return (
    <NavLinks
      label="What this fabricator states"
      links={[
        { href: paths.company(companyId), label: 'Limits', isExact: true },
        { href: paths.companyMatrix(companyId), label: 'Capability matrix' },
        { href: paths.companyShelf(companyId), label: 'Shelf' },
        { href: paths.companyPanels(companyId), label: 'Panel formats' },
        { href: paths.companyRates(companyId), label: 'Process rates' },
      ]}
    />
  )
}
