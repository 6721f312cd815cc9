'use client'

import { COMPANY_ROLE_WORDS } from '@/app/_components/review/words'
import { ActionButton } from '@/app/_components/ui/action-button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { InvitePerson } from '@/app/companies/_components/invite-person'
import { setCompanyRole } from '@/app/companies/actions'
import type { ListedCompanyView } from '@/lib/data'

const COLUMNS = {
  name: { head: 'Name', isRowHead: true },
  mail: { head: 'E-mail' },
  role: { head: 'Role' },
  acts: { head: 'Acts', isHeadHidden: true },
} satisfies Columns

/** Who administers a company. An admin names the first one, from its people or by an invitation. */
export function CompanyAdministrators({ listed: { company, people, participations } }: { listed: ListedCompanyView }) {
  const hasAdministrator = people.some(({ role }) => role === 'administrator')
  return (
    <>
      <h3>
        {company.name}{' '}
        <span className="muted">
          {hasAdministrator ? '' : 'has no administrator and shares nothing until it has one'}
        </span>
      </h3>
      {participations.length > 0 && (
        <p className="small muted">
          Projects:{' '}
          {participations.map(({ projectName, state }) => `${projectName} (${state.replace('-', ' ')})`).join(', ')}
        </p>
      )}
      {people.length > 0 && (
        <DataTable label={`People of ${company.name}`} columns={COLUMNS}>
          {people.map(({ user, email, role }) => (
            <DataRow
              key={user.id}
              columns={COLUMNS}
              cells={{
                name: user.name,
                mail: email,
                role: COMPANY_ROLE_WORDS[role],
                acts: role !== 'administrator' && (
                  <ActionButton
                    action={setCompanyRole}
                    input={{ companyId: company.id, userId: user.id, role: 'administrator' }}
                    weight="quiet"
                    confirm={{
                      title: `Make ${user.name} administrator of ${company.name}?`,
                      text: 'They admit people, agree to projects and choose which sheets are shared.',
                      label: 'Make administrator',
                    }}
                  >
                    Make administrator
                  </ActionButton>
                ),
              }}
            />
          ))}
        </DataTable>
      )}
      <InvitePerson companyId={company.id} projects={[]} />
    </>
  )
}
