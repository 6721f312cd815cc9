import type { Metadata } from 'next'
import Link from 'next/link'
import { ROLE_WORDS } from '@/app/_components/review/words'
import { paths } from '@/app/_components/shell/paths'
import { requireActor } from '@/app/_components/shell/require-actor'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead, Section } from '@/app/_components/ui/section'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { getMailChoices, getOwnAccount, listOwnSessions } from '@/lib/data'
import { PasswordForm } from './_components/account-forms'
import { DeviceList } from './_components/device-list'
import { MailChoicesForm } from './_components/mail-choices-form'

export const metadata: Metadata = { title: 'Account' }

export default async function AccountPage() {
  const actor = await requireActor(paths.account())
  const [account, mailKinds, sessions] = await Promise.all([
    getOwnAccount(actor),
    getMailChoices(actor),
    listOwnSessions(actor),
  ])
  return (
    <>
      <PageHead
        title={account.name}
        over="Account"
        under={
          <p>
            {account.email}, since <Timestamp at={account.createdAt} dateOnly />
            {account.isAdmin && '; administrator of this workspace'}
          </p>
        }
      />
      <Section title="Your projects">
        {account.memberships.length === 0 ? (
          <EmptyState>You belong to no project yet. A lead engineer can invite you.</EmptyState>
        ) : (
          <TableFrame label="Your projects">
            <table className="ledger" data-stack>
              <thead>
                <tr>
                  <th scope="col">Project</th>
                  <th scope="col">You are</th>
                  <th scope="col">For</th>
                </tr>
              </thead>
              <tbody>
                {account.memberships.map((membership) => (
                  <tr key={membership.projectId}>
                    <th scope="row">
                      <Link href={paths.project(membership.projectId)}>{membership.projectName}</Link>
                    </th>
                    <td>{ROLE_WORDS[membership.role]}</td>
                    <td>{membership.companyName}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableFrame>
        )}
      </Section>
      <Section title="Mail">
        <MailChoicesForm kinds={mailKinds} />
      </Section>
      <Section title="Password">
        <PasswordForm />
      </Section>
      <Section title="Devices">
        <DeviceList sessions={sessions} />
      </Section>
    </>
  )
}
