'use client'

import { COMPANY_ROLE_WORDS } from '@/app/_components/review/words'
import { ActionButton } from '@/app/_components/ui/action-button'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { InvitePerson } from '@/app/companies/_components/invite-person'
import { setCompanyRole } from '@/app/companies/actions'
import type { ListedCompanyView } from '@/lib/data'

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
        <TableFrame label={`People of ${company.name}`}>
          <table className="ledger" data-stack>
            <thead>
              <tr>
                <th scope="col">Name</th>
                <th scope="col">E-mail</th>
                <th scope="col">Role</th>
                <th scope="col">
                  <span className="sr-only">Acts</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {people.map(({ user, email, role }) => (
                <tr key={user.id}>
                  <th scope="row">{user.name}</th>
                  <td>{email}</td>
                  <td>{COMPANY_ROLE_WORDS[role]}</td>
                  <td>
                    {role !== 'administrator' && (
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
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableFrame>
      )}
      <InvitePerson companyId={company.id} projects={[]} />
    </>
  )
}
