'use client'

import { ActionButton } from '@/app/_components/ui/action-button'
import type { Action } from '@/app/_components/ui/action-result'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { InvitationView } from '@/lib/data'
import { COMPANY_ROLE_WORDS, ROLE_WORDS } from './words'

/** Links that were made, and what became of each. */
export function InvitationList({
  invitations,
  mayRevoke,
  revokeAction,
}: {
  invitations: readonly InvitationView[]
  mayRevoke: boolean
  revokeAction: Action<null>
}) {
  return (
    <TableFrame label="Invitations">
      <table className="ledger" data-stack>
        <thead>
          <tr>
            <th scope="col">For</th>
            <th scope="col">As</th>
            <th scope="col">Company</th>
            <th scope="col">State</th>
            <th scope="col">Expires (UTC)</th>
            <th scope="col">
              <span className="sr-only">Acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {invitations.map((invitation) => (
            <tr key={invitation.id} data-quiet={invitation.state === 'open' ? undefined : true}>
              <td>{invitation.email ?? 'anyone with the link'}</td>
              <td>
                {invitation.companyRole === null
                  ? ROLE_WORDS[invitation.role]
                  : COMPANY_ROLE_WORDS[invitation.companyRole]}
              </td>
              <td>{invitation.companyName}</td>
              <td>{invitation.state}</td>
              <td data-label="expires">
                <Timestamp at={invitation.expiresAt} />
              </td>
              <td>
                {mayRevoke && invitation.state === 'open' && (
                  <ActionButton
                    action={revokeAction}
                    input={{ invitationId: invitation.id }}
                    weight="quiet"
                    confirm={{
                      title: 'Revoke this invitation?',
                      text: 'The link stops working at once.',
                      label: 'Revoke',
                    }}
                  >
                    Revoke
                  </ActionButton>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}
