import type { Metadata } from 'next'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { listAllCompanies } from '@/lib/data'
import { CompanyAdministrators } from './_components/company-administrators'
import { UnconfirmedCompany } from './_components/unconfirmed-company'

export const metadata: Metadata = { title: 'Fabricators' }

export default async function WorkspaceCompaniesPage() {
  const actor = await requireActor(paths.workspaceCompanies())
  const companies = await readOrNotFound(() => listAllCompanies(actor))
  const unconfirmed = companies.filter(({ project }) => project !== null)
  const known = companies.filter(({ project }) => project === null)
  return (
    <>
      <PageHead
        title="Fabricators"
        over="Workspace"
        under="A company belongs to its own people. Its sheets are private, and this page shows none of them. What you do here is recorded in the trail."
      />
      <PageSection title="Names to confirm">
        {unconfirmed.length === 0 ? (
          <EmptyState>All names are confirmed.</EmptyState>
        ) : (
          <ul className="plain-list">
            {unconfirmed.map((listed) => (
              <li key={listed.company.id} className="stack">
                <UnconfirmedCompany
                  listed={listed}
                  known={known.map(({ company }) => ({ value: company.id, label: company.name }))}
                />
              </li>
            ))}
          </ul>
        )}
      </PageSection>
      <PageSection title="Known companies">
        {known.length === 0 ? (
          <EmptyState>No company is known yet.</EmptyState>
        ) : (
          <ul className="plain-list">
            {known.map((listed) => (
              <li key={listed.company.id} className="stack">
                <CompanyAdministrators listed={listed} />
              </li>
            ))}
          </ul>
        )}
      </PageSection>
    </>
  )
}
