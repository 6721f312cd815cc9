'use client'

import { ActionButton } from '@/app/_components/ui/action-button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import type { SessionView } from '@/lib/data'
import { endSession, signOutElsewhere, signOutEverywhere } from '../actions'

const COLUMNS = {
  device: { head: 'Device', isRowHead: true },
  signedIn: { head: 'Signed in' },
  lastUsed: { head: 'Last used' },
  actions: { head: 'Actions', isHeadHidden: true },
} satisfies Columns

/** Where the person is signed in. Signing out in the menu ends this device alone; the rest is chosen here. */
export function DeviceList({ sessions }: { sessions: readonly SessionView[] }) {
  return (
    <div className="stack">
      <DataTable label="Devices" columns={COLUMNS}>
        {sessions.map((session) => (
          <DataRow
            key={session.id}
            columns={COLUMNS}
            cells={{
              device: (
                <>
                  {session.device} {session.isThisOne && <span className="muted">this device</span>}
                </>
              ),
              signedIn: <Timestamp at={session.createdAt} />,
              lastUsed: <Timestamp at={session.seenAt} />,
              actions: !session.isThisOne && (
                <ActionButton action={endSession} input={{ sessionId: session.id }} weight="quiet">
                  Sign out this device
                </ActionButton>
              ),
            }}
          />
        ))}
      </DataTable>
      <div className="row">
        {sessions.length > 1 && (
          <ActionButton action={signOutElsewhere} input={{}}>
            Sign out all other devices
          </ActionButton>
        )}
        <ActionButton
          action={signOutEverywhere}
          input={{}}
          confirm={{
            title: 'Sign out everywhere?',
            text: 'Every device where you are signed in is signed out at once, this one too.',
            label: 'Sign out everywhere',
          }}
          // A full load: nothing that was rendered for a member stays in the page.
          onDone={() => window.location.assign(paths.signIn())}
        >
          Sign out everywhere
        </ActionButton>
      </div>
    </div>
  )
}
