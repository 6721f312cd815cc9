'use client'

import { InvitationList } from '@/app/_components/review/invitation-list'
import { COMPANY_ROLE_WORDS } from '@/app/_components/review/words'
import { ActionButton } from '@/app/_components/ui/action-button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { FormError } from '@/app/_components/ui/form-error'
import { SelectField } from '@/app/_components/ui/select-field'
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
  const columns = {
    name: { head: 'Name', isRowHead: true },
    role: { head: 'Role' },
    mail: { head: 'E-mail' },
    projects: { head: 'Projects' },
    admittedBy: { head: 'Admitted by' },
    ...(mayAdmit ? { acts: { head: 'Acts', isHeadHidden: true } } : {}),
  } satisfies Columns
  return (
    <>
      <DataTable label="People of the company" columns={columns}>
        {people.map((person) => (
          <DataRow
            key={person.user.id}
            columns={columns}
            cells={{
              name: person.user.name,
              role: mayAdmit ? <RoleChoice companyId={companyId} person={person} /> : COMPANY_ROLE_WORDS[person.role],
              mail: person.email,
              projects: person.projectNames.join(', '),
              admittedBy: person.admittedBy?.name ?? 'there from before',
              acts: person.user.id !== ownUserId && (
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
              ),
            }}
          />
        ))}
      </DataTable>
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
