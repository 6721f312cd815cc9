'use client'

import { InvitationList } from '@/app/_components/review/invitation-list'
import { COMPANY_ROLE_WORDS } from '@/app/_components/review/words'
import { ActionButton } from '@/app/_components/ui/action-button'
import { FormError } from '@/app/_components/ui/form-error'
import { SelectField } from '@/app/_components/ui/select-field'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { useAction } from '@/app/_components/ui/use-action'
import type { CompanyPersonView, InvitationView } from '@/lib/data'
import { COMPANY_ROLES } from '@/lib/review'
import { removeCompanyPerson, revokeInvitation, setCompanyRole } from '../../actions'

interface CompanyPeopleProps {
  readonly companyId: string
  readonly people: readonly CompanyPersonView[]
  readonly invitations: readonly InvitationView[]
  readonly mayAdmit: boolean
  readonly ownUserId: string
}

/** The company's own people, who admitted them, and links that are still out. */
export function CompanyPeople({ companyId, people, invitations, mayAdmit, ownUserId }: CompanyPeopleProps) {
  return (
    <>
      <TableFrame label="People of the company">
        <table className="ledger" data-stack>
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">Role</th>
              <th scope="col">E-mail</th>
              <th scope="col">Projects</th>
              <th scope="col">Admitted by</th>
              {mayAdmit && (
                <th scope="col">
                  <span className="sr-only">Acts</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {people.map((person) => (
              <tr key={person.user.id}>
                <th scope="row">{person.user.name}</th>
                <td data-label="role">
                  {mayAdmit ? <RoleChoice companyId={companyId} person={person} /> : COMPANY_ROLE_WORDS[person.role]}
                </td>
                <td>{person.email}</td>
                <td data-label="projects">{person.projectNames.join(', ')}</td>
                <td data-label="admitted by">{person.admittedBy?.name ?? 'there from before'}</td>
                {mayAdmit && (
                  <td>
                    {person.user.id !== ownUserId && (
                      <ActionButton
                        action={removeCompanyPerson}
                        input={{ companyId, userId: person.user.id }}
                        weight="quiet"
                        confirm={{
                          title: `Remove ${person.user.name} from the company?`,
                          text: 'They leave every project that they joined for it. What they wrote stays under their name.',
                          label: 'Remove',
                        }}
                      >
                        Remove
                      </ActionButton>
                    )}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      {invitations.length > 0 && (
        <InvitationList invitations={invitations} mayRevoke={mayAdmit} revokeAction={revokeInvitation} />
      )}
    </>
  )
}

const ROLES = COMPANY_ROLES.map((value) => ({ value, label: COMPANY_ROLE_WORDS[value] }))

function RoleChoice({ companyId, person }: { companyId: string; person: CompanyPersonView }) {
  const { send, isPending, refusal } = useAction(setCompanyRole)
  return (
    <>
      <SelectField
        label={`Role of ${person.user.name}`}
        isLabelHidden
        value={person.role}
        options={ROLES}
        isDisabled={isPending}
        onChange={(role) => send({ companyId, userId: person.user.id, role })}
      />
      <FormError refusal={refusal} />
    </>
  )
}
