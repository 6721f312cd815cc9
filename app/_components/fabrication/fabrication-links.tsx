import { NavLinks } from '@/app/_components/shell/nav-links'
import { paths } from '@/lib/addresses'
import './fabrication.css'

/** The pages on what fabrication makes of a revision. */
export function FabricationLinks({ projectId, revisionId }: { projectId: string; revisionId: string }) {
  return (
    <NavLinks
      label="Parts of fabrication"
      links={[
        { href: paths.revision(projectId, revisionId, 'fabrication'), label: 'Capability and shelf', isExact: true },
        { href: paths.panels(projectId, revisionId), label: 'Panels' },
        { href: paths.costs(projectId, revisionId), label: 'Cost' },
        { href: paths.quotation(projectId, revisionId), label: 'Request for quotation' },
      ]}
    />
  )
}
