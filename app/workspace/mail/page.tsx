import type { Metadata } from 'next'
import Link from 'next/link'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { listMail } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { MAIL_STATES, type MailState } from '@/lib/mail'
import { MAIL_STATE_WORDS } from './_components/state-words'

export const metadata: Metadata = { title: 'Mail' }

const FILTERS = ['waiting', 'sent', 'uncertain', 'given-up', 'left-out'] as const satisfies readonly MailState[]

interface MailPageProps {
  readonly searchParams: Promise<{ state?: string | string[] }>
}

const COLUMNS = {
  subject: { head: 'Subject', isRowHead: true },
  to: { head: 'To' },
  written: { head: 'Written' },
  state: { head: 'State' },
} satisfies Columns

export default async function MailPage({ searchParams }: MailPageProps) {
  const actor = await requireActor(paths.mail())
  const { state: asked } = await searchParams
  const state = MAIL_STATES.find((known) => known === asked)
  const { entries, counts } = await readOrNotFound(() => listMail(actor, state))
  return (
    <>
      <PageHead
        title="Mail"
        over={<Link href={paths.workspace()}>Workspace</Link>}
        under="Messages that the application sent to people, newest first. Without a mail server, messages are files in the folder “mail” of the data folder."
      />
      <nav aria-label="State of the messages" className="filter-row">
        <Link href={paths.mail()} aria-current={state === undefined ? 'page' : undefined}>
          all
        </Link>
        {FILTERS.map((filter) => (
          <Link key={filter} href={paths.mail(filter)} aria-current={state === filter ? 'page' : undefined}>
            {MAIL_STATE_WORDS[filter]} <span className="muted">{counts[filter]}</span>
          </Link>
        ))}
      </nav>
      {entries.length === 0 ? (
        <EmptyState>No message{state === undefined ? ' yet' : ' in this state'}.</EmptyState>
      ) : (
        <DataTable label="Messages" columns={COLUMNS}>
          {entries.map((entry) => (
            <DataRow
              key={entry.id}
              columns={COLUMNS}
              cells={{
                subject: <Link href={paths.mailMessage(entry.id)}>{entry.subject}</Link>,
                to: entry.to,
                written: <Timestamp at={entry.createdAt} />,
                state: (
                  <>
                    {MAIL_STATE_WORDS[entry.state]}
                    {entry.lastError !== null && entry.state !== 'sent' && (
                      <p className="small muted">
                        {entry.attempts > 0 && `${countOf(entry.attempts, 'attempt')}; `}
                        {entry.lastError}
                      </p>
                    )}
                  </>
                ),
              }}
            />
          ))}
        </DataTable>
      )}
    </>
  )
}
