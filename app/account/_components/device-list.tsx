'use client'

import { paths } from '@/app/_components/shell/paths'
import { ActionButton } from '@/app/_components/ui/action-button'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { SessionView } from '@/lib/data'
import { endSession, signOutElsewhere, signOutEverywhere } from '../actions'

/** Where the person is signed in. Signing out in the menu ends this device alone; the rest is chosen here. */
export function DeviceList({ sessions }: { sessions: readonly SessionView[] }) {
  return (
    <div className="stack">
      <TableFrame label="Devices">
        <table className="ledger" data-stack>
          <thead>
            <tr>
              <th scope="col">Device</th>
              <th scope="col">Signed in</th>
              <th scope="col">Last used</th>
              <th scope="col">
                <span className="sr-only">Actions</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {sessions.map((session) => (
              <tr key={session.id}>
                <th scope="row">
                  {session.device} {session.isThisOne && <span className="muted">this device</span>}
                </th>
                <td>
                  <Timestamp at={session.createdAt} />
                </td>
                <td>
                  <Timestamp at={session.seenAt} />
                </td>
                <td>
                  {!session.isThisOne && (
                    <ActionButton action={endSession} input={{ sessionId: session.id }} weight="quiet">
                      Sign out this device
                    </ActionButton>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
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
