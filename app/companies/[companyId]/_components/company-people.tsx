'use client'

import { PeopleTable } from '@/app/_components/people/people-table'
import { InvitationList } from '@/app/_components/review/invitation-list'
import { COMPANY_ROLE_WORDS } from '@/app/_components/review/words'
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

const ROLES = COMPANY_ROLES.map((value) => ({ value, label: COMPANY_ROLE_WORDS[value] }))

/** The company's own people, who admitted them, and links that are still out. */
export function CompanyPeople({ companyId, people, invitations, mayAdmit, ownUserId }: CompanyPeopleProps) {
  return (
    <>
      <PeopleTable
        label="People of the company"
        people={people}
        scope={{ companyId }}
        ownUserId={ownUserId}
        mayManage={mayAdmit}
        roleWords={COMPANY_ROLE_WORDS}
        roles={ROLES}
        mayChangeRole={() => true}
        setRole={setCompanyRole}
        remove={removeCompanyPerson}
        removal={{
          from: 'company',
          text: 'They leave every project that they joined for it. What they wrote stays under their name.',
        }}
        more={{ projects: { head: 'Projects' }, admittedBy: { head: 'Admitted by' } }}
        listMore={(person) => ({
          projects: person.projectNames.join(', '),
          admittedBy: person.admittedBy?.name ?? 'there from before',
        })}
      />
      {invitations.length > 0 && (
        <InvitationList invitations={invitations} mayRevoke={mayAdmit} revokeAction={revokeInvitation} />
      )}
    </>
  )
}
