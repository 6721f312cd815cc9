'use client'

import { ROLE_WORDS } from '@/app/_components/review/words'
import { ActionButton } from '@/app/_components/ui/action-button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { FormError } from '@/app/_components/ui/form-error'
import { SelectField } from '@/app/_components/ui/select-field'
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
  const columns = {
    name: { head: 'Name', isRowHead: true },
    role: { head: 'Role' },
    company: { head: 'Company' },
    mail: { head: 'E-mail' },
    ...(mayManage ? { acts: { head: 'Acts', isHeadHidden: true } } : {}),
  } satisfies Columns
  return (
    <DataTable label="People" columns={columns}>
      {people.map((person) => (
        <DataRow
          key={person.user.id}
          columns={columns}
          cells={{
            name: person.user.name,
            role:
              mayManage && person.role !== 'fabricator' && person.user.id !== ownUserId ? (
                <RoleChoice projectId={projectId} person={person} />
              ) : (
                ROLE_WORDS[person.role]
              ),
            company: person.company.name,
            mail: person.email ?? '',
            acts: person.user.id !== ownUserId && (
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
            ),
          }}
        />
      ))}
    </DataTable>
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
