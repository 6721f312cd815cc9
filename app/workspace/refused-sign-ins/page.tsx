import type { Metadata } from 'next'
import Link from 'next/link'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { listRefusedSignIns } from '@/lib/data'

export const metadata: Metadata = { title: 'Refused sign-ins' }

const COLUMNS = {
  at: { head: 'When (UTC)', className: 'nowrap' },
  account: { head: 'Account' },
  reason: { head: 'Refused for' },
  device: { head: 'Device' },
  source: { head: 'Source' },
} satisfies Columns

const REASONS: Readonly<Record<string, string>> = {
  password: 'wrong address or password, or a disabled account',
  code: 'wrong code',
  passkey: 'a passkey that is not known',
  clash: 'not possible here, or too late',
}

/** Attempts to sign in that were refused, for an admin. */
export default async function RefusedSignInsPage() {
  const actor = await requireActor(paths.refusedSignIns())
  const refused = await readOrNotFound(() => listRefusedSignIns(actor))
  return (
    <>
      <PageHead
        title="Refused sign-ins"
        over={<Link href={paths.workspace()}>Workspace</Link>}
        under="Newest first, kept for some 400 days. Refused acts of signing and release are in the trail of their revision; that the limit of attempts was reached is in the whole trail."
      />
      {refused.length === 0 ? (
        <EmptyState>No sign-in was refused.</EmptyState>
      ) : (
        <DataTable label="Refused sign-ins" columns={COLUMNS}>
          {refused.map(({ id, at, name, reason, device, source }) => (
            <DataRow
              key={id}
              columns={COLUMNS}
              cells={{
                at: <Timestamp at={at} />,
                account: name ?? <span className="muted">an address without an account</span>,
                reason: REASONS[reason] ?? reason,
                device,
                source: <span className="hash muted">{source}</span>,
              }}
            />
          ))}
        </DataTable>
      )}
    </>
  )
}
