'use client'

import type { ReactNode } from 'react'
import { ActionButton } from '@/app/_components/ui/action-button'
import type { Action } from '@/app/_components/ui/action-result'
import { type Cells, type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { FormError } from '@/app/_components/ui/form-error'
import { type Option, SelectField } from '@/app/_components/ui/select-field'
import { useAction } from '@/app/_components/ui/use-action'

interface Person<Role extends string> {
  readonly user: { readonly id: string; readonly name: string }
  readonly role: Role
  readonly email: string | null
}

interface PeopleTableProps<Role extends string, P extends Person<Role>> {
  readonly label: string
  readonly people: readonly P[]
  /** What the acts are sent: the project or the company. */
  readonly scope: { readonly projectId: string } | { readonly companyId: string }
  readonly ownUserId: string
  readonly mayManage: boolean
  readonly roleWords: Readonly<Record<Role, string>>
  /** Roles that may be given here. */
  readonly roles: readonly Option<NoInfer<Role>>[]
  readonly mayChangeRole: (person: P) => boolean
  readonly setRole: Action<unknown>
  readonly remove: Action<unknown>
  readonly removal: { readonly from: string; readonly text: string }
  /** Columns beside name, role and address. */
  readonly more: Columns
  readonly listMore: (person: P) => Cells<Columns>
}

/** The people of a project or a company: who they are, their role, and who may change or remove them. */
export function PeopleTable<Role extends string, P extends Person<Role>>(props: PeopleTableProps<Role, P>) {
  const { label, people, scope, ownUserId, mayManage, roleWords, mayChangeRole, remove, removal, more, listMore } =
    props
  const columns: Columns = {
    name: { head: 'Name', isRowHead: true },
    role: { head: 'Role' },
    mail: { head: 'E-mail' },
    ...more,
    ...(mayManage ? { acts: { head: 'Acts', isHeadHidden: true } } : {}),
  }
  return (
    <DataTable label={label} columns={columns}>
      {people.map((person) => {
        const { id, name } = person.user
        const cells: Record<string, ReactNode> = {
          name,
          role: mayManage && mayChangeRole(person) ? <RoleChoice {...props} person={person} /> : roleWords[person.role],
          mail: person.email ?? '',
          ...listMore(person),
          acts: id !== ownUserId && (
            <ActionButton
              action={remove}
              input={{ ...scope, userId: id }}
              weight="quiet"
              confirm={{ title: `Remove ${name} from the ${removal.from}?`, text: removal.text, label: 'Remove' }}
            >
              Remove
            </ActionButton>
          ),
        }
        return <DataRow key={id} columns={columns} cells={cells} />
      })}
    </DataTable>
  )
}

function RoleChoice<Role extends string, P extends Person<Role>>({
  person,
  roles,
  scope,
  setRole,
}: PeopleTableProps<Role, P> & { readonly person: P }) {
  const { send, isPending, refusal } = useAction(setRole)
  return (
    <>
      <SelectField
        label={`Role of ${person.user.name}`}
        isLabelHidden
        value={roles.some(({ value }) => value === person.role) ? person.role : null}
        options={roles}
        isDisabled={isPending}
        onChange={(role) => send({ ...scope, userId: person.user.id, role })}
      />
      <FormError refusal={refusal} />
    </>
  )
}
