'use client'

import { ActionButton } from '@/app/_components/ui/action-button'
import type { Action } from '@/app/_components/ui/action-result'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { InvitationView } from '@/lib/data'
import { COMPANY_ROLE_WORDS, ROLE_WORDS } from './words'

const COLUMNS = {
  for: { head: 'For' },
  as: { head: 'As' },
  company: { head: 'Company' },
  state: { head: 'State' },
  expires: { head: 'Expires (UTC)' },
  acts: { head: 'Acts', isHeadHidden: true },
} satisfies Columns

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
    <DataTable label="Invitations" columns={COLUMNS}>
      {invitations.map((invitation) => (
        <DataRow
          key={invitation.id}
          data-quiet={invitation.state === 'open' ? undefined : true}
          columns={COLUMNS}
          cells={{
            for: invitation.email ?? 'anyone with the link',
            as:
              invitation.companyRole === null
                ? ROLE_WORDS[invitation.role]
                : COMPANY_ROLE_WORDS[invitation.companyRole],
            company: invitation.companyName,
            state: invitation.state,
            expires: <Timestamp at={invitation.expiresAt} />,
            acts: mayRevoke && invitation.state === 'open' && (
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
            ),
          }}
        />
      ))}
    </DataTable>
  )
}
