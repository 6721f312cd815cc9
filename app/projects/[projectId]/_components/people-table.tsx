'use client'

import { ROLE_WORDS } from '@/app/_components/review/words'
import { ActionButton } from '@/app/_components/ui/action-button'
import { FormError } from '@/app/_components/ui/form-error'
import { SelectField } from '@/app/_components/ui/select-field'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { useAction } from '@/app/_components/ui/use-action'
import type { ProjectMemberView } from '@/lib/data'
import { removeMember, setMembershipRole } from '../../actions'

interface PeopleTableProps {
  projectId: string
  people: readonly ProjectMemberView[]
  mayManage: boolean
  ownUserId: string
}

export function PeopleTable({ projectId, people, mayManage, ownUserId }: PeopleTableProps) {
  return (
    <TableFrame label="People">
      <table className="ledger" data-stack>
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">Role</th>
            <th scope="col">Company</th>
            <th scope="col">E-mail</th>
            {mayManage && (
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
              <td>
                {mayManage && person.role !== 'fabricator' && person.user.id !== ownUserId ? (
                  <RoleChoice projectId={projectId} person={person} />
                ) : (
                  ROLE_WORDS[person.role]
                )}
              </td>
              <td>{person.company.name}</td>
              <td>{person.email ?? ''}</td>
              {mayManage && (
                <td>
                  {person.user.id !== ownUserId && (
                    <ActionButton
                      action={removeMember}
                      input={{ projectId, userId: person.user.id }}
                      weight="quiet"
                      confirm={{
                        title: `Remove ${person.user.name} from the project?`,
                        text: 'They will no longer see it. What they wrote and signed stays under their name.',
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
  )
}

const ROLES = [
  { value: 'lead', label: ROLE_WORDS.lead },
  { value: 'member', label: ROLE_WORDS.member },
  { value: 'observer', label: ROLE_WORDS.observer },
] as const

function RoleChoice({ projectId, person }: { projectId: string; person: ProjectMemberView }) {
  const { send, isPending, refusal } = useAction(setMembershipRole)
  const chosen = ROLES.find((role) => role.value === person.role)
  return (
    <>
      <SelectField
        label={`Role of ${person.user.name}`}
        isLabelHidden
        value={chosen?.value ?? null}
        options={ROLES}
        isDisabled={isPending}
        onChange={(role) => send({ projectId, userId: person.user.id, role })}
      />
      <FormError refusal={refusal} />
    </>
  )
}
