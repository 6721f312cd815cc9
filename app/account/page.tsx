import type { Metadata } from 'next'
import Link from 'next/link'
import { ROLE_WORDS } from '@/app/_components/review/words'
import { requireActor } from '@/app/_components/shell/require-actor'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState, Notice } from '@/app/_components/ui/notices'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { getSettings } from '@/lib/config'
import {
  arePasskeysPossible,
  getMailChoices,
  getOwnAccount,
  getOwnIdentity,
  getSecondFactor,
  listOwnSessions,
} from '@/lib/data'
import { PasswordForm } from './_components/account-forms'
import { AddressForm } from './_components/address-form'
import { DeviceList } from './_components/device-list'
import { MailChoicesForm } from './_components/mail-choices-form'
import { OneTimeCodes } from './_components/one-time-codes'
import { PasskeyList } from './_components/passkey-list'
import { SingleSignOn } from './_components/single-sign-on'

export const metadata: Metadata = { title: 'Account' }

interface AccountPageProps {
  searchParams: Promise<{ linked?: string | string[] }>
}

const COLUMNS = {
  project: { head: 'Project', isRowHead: true },
  role: { head: 'Your role' },
  for: { head: 'For' },
} satisfies Columns

export default async function AccountPage({ searchParams }: AccountPageProps) {
  const actor = await requireActor(paths.account())
  const { linked } = await searchParams
  const { oidc } = getSettings()
  const [account, mailKinds, sessions, factor, identity] = await Promise.all([
    getOwnAccount(actor),
    getMailChoices(actor),
    listOwnSessions(actor),
    getSecondFactor(actor),
    getOwnIdentity(actor),
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
      <PageSection title="Your projects">
        {account.memberships.length === 0 ? (
          <EmptyState>You are not in any project yet. A lead engineer can invite you.</EmptyState>
        ) : (
          <DataTable label="Your projects" columns={COLUMNS}>
            {account.memberships.map((membership) => (
              <DataRow
                key={membership.projectId}
                columns={COLUMNS}
                cells={{
                  project: <Link href={paths.project(membership.projectId)}>{membership.projectName}</Link>,
                  role: ROLE_WORDS[membership.role],
                  for: membership.companyName,
                }}
              />
            ))}
          </DataTable>
        )}
      </PageSection>
      <PageSection title="Mail">
        <MailChoicesForm kinds={mailKinds} />
      </PageSection>
      <PageSection title="Password">
        <PasswordForm />
      </PageSection>
      <PageSection title="Address">
        <p className="muted">You sign in with {account.email}, and messages go there.</p>
        <AddressForm />
      </PageSection>
      <PageSection title="Second factor">
        <OneTimeCodes factor={factor} />
        {arePasskeysPossible() && (
          <div className="above-wide">
            <PasskeyList passkeys={factor.passkeys} />
          </div>
        )}
      </PageSection>
      {oidc !== null && (
        <PageSection title="Single sign-on">
          {linked === 'no' && (
            <Notice tone="refused">
              <p>The identity was not linked: it belongs to another account, or the attempt took too long.</p>
            </Notice>
          )}
          <SingleSignOn providerName={oidc.name} identity={identity} />
        </PageSection>
      )}
      <PageSection title="Devices">
        <DeviceList sessions={sessions} />
      </PageSection>
    </>
  )
}
