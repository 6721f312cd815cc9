import { NavLinks } from '@/app/_components/shell/nav-links'
import { paths } from '@/lib/addresses'
import type { CompanyRights } from '@/lib/data'

/** What a fabricator keeps, each on its own page: those that the person asking may open. */
export function CompanyLinks({ companyId, may }: { companyId: string; may: CompanyRights }) {
  return (
    <NavLinks
      label="Sheets of this fabricator"
      links={[
        { href: paths.company(companyId), label: may.viewInside ? 'People and projects' : 'Company', isExact: true },
        ...(may.viewMatrix
          ? [
              { href: paths.companyLimits(companyId), label: 'Limits' },
              { href: paths.companyMatrix(companyId), label: 'Capability matrix' },
              { href: paths.companyFlexTests(companyId), label: 'Flex tests' },
            ]
          : []),
        ...(may.viewShelf ? [{ href: paths.companyShelf(companyId), label: 'Shelf' }] : []),
        ...(may.viewRates
          ? [
              { href: paths.companyPanels(companyId), label: 'Panel formats' },
              { href: paths.companyRates(companyId), label: 'Process rates' },
            ]
          : []),
        ...(may.viewAccess ? [{ href: paths.companyAccess(companyId), label: 'Who opened what' }] : []),
      ]}
    />
  )
}
