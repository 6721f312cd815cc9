'use client'

import { ROLE_WORDS } from '@/app/_components/review/words'
import { ActionButton } from '@/app/_components/ui/action-button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { AccountView } from '@/lib/data'
import { setAccountState, setAdminRight } from '../actions'
import { AccountRecovery } from './account-recovery'

interface AccountTableProps {
  accounts: readonly AccountView[]
  ownUserId: string
  /** Of the sign-in provider; null without one. */
  providerName: string | null
}

const COLUMNS = {
  name: { head: 'Name', isRowHead: true },
  mail: { head: 'E-mail' },
  projects: { head: 'Projects', className: 'small' },
  since: { head: 'Since' },
  state: { head: 'State' },
  acts: { head: 'Acts', isHeadHidden: true },
} satisfies Columns

export function AccountTable({ accounts, ownUserId, providerName }: AccountTableProps) {
  return (
    <DataTable label="Accounts" columns={COLUMNS}>
      {accounts.map((account) => (
        <DataRow
          key={account.id}
          data-quiet={account.isDisabled || undefined}
          columns={COLUMNS}
          cells={{
            name: account.name,
            mail: account.email,
            projects: account.memberships
              .map(({ projectName, role, companyName }) => `${projectName} (${ROLE_WORDS[role]}, ${companyName})`)
              .join('; '),
            since: <Timestamp at={account.createdAt} dateOnly />,
            state: (
              <>
                {account.isDisabled ? 'disabled' : 'active'}
                {account.isAdmin && ', administrator'}
              </>
            ),
            acts: account.id !== ownUserId && <Acts account={account} providerName={providerName} />,
          }}
        />
      ))}
    </DataTable>
  )
}

function Acts({ account, providerName }: { account: AccountView; providerName: string | null }) {
  return (
    <span className="row">
      <ActionButton
        action={setAccountState}
        input={{ userId: account.id, isDisabled: !account.isDisabled }}
        weight="quiet"
        confirm={
          account.isDisabled
            ? {
                title: `Enable ${account.name}’s account?`,
                text: 'They can sign in with their earlier password.',
                label: 'Enable',
              }
            : {
                title: `Disable ${account.name}’s account?`,
                text: 'Their sessions end at once. What they wrote and signed stays.',
                label: 'Disable',
              }
        }
      >
        {account.isDisabled ? 'Enable' : 'Disable'}
      </ActionButton>
      <ActionButton
        action={setAdminRight}
        input={{ userId: account.id, isAdmin: !account.isAdmin }}
        weight="quiet"
        confirm={{
          title: account.isAdmin
            ? `Remove ${account.name} as administrator?`
            : `Make ${account.name} an administrator?`,
          text: 'An administrator manages accounts and workspace settings. The role gives no right to sign.',
          label: account.isAdmin ? 'Remove' : 'Make administrator',
        }}
      >
        {account.isAdmin ? 'No longer administrator' : 'Make administrator'}
      </ActionButton>
      <AccountRecovery account={account} providerName={providerName} />
    </span>
  )
}
