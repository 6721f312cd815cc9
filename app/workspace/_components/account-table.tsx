'use client'

import { ROLE_WORDS } from '@/app/_components/review/words'
import { ActionButton } from '@/app/_components/ui/action-button'
import { TableFrame } from '@/app/_components/ui/table-frame'
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

export function AccountTable({ accounts, ownUserId, providerName }: AccountTableProps) {
  return (
    <TableFrame label="Accounts">
      <table className="ledger" data-stack>
        <thead>
          <tr>
            <th scope="col">Name</th>
            <th scope="col">E-mail</th>
            <th scope="col">Projects</th>
            <th scope="col">Since</th>
            <th scope="col">State</th>
            <th scope="col">
              <span className="sr-only">Acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {accounts.map((account) => (
            <tr key={account.id} data-quiet={account.isDisabled || undefined}>
              <th scope="row">{account.name}</th>
              <td>{account.email}</td>
              <td className="small">
                {account.memberships
                  .map(({ projectName, role, companyName }) => `${projectName} (${ROLE_WORDS[role]}, ${companyName})`)
                  .join('; ')}
              </td>
              <td>
                <Timestamp at={account.createdAt} dateOnly />
              </td>
              <td>
                {account.isDisabled ? 'disabled' : 'active'}
                {account.isAdmin && ', administrator'}
              </td>
              <td>{account.id !== ownUserId && <Acts account={account} providerName={providerName} />}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
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
