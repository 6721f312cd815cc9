import type { Metadata } from 'next'
import Link from 'next/link'
import { LimitList } from '@/app/_components/limits/limit-list'
import { listLimitRows } from '@/app/_components/limits/limit-rows'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getSettings } from '@/lib/config'
import { getLimitList, getSettingsView, listAccounts, listCapacityProjects } from '@/lib/data'
import { AccountTable } from './_components/account-table'
import { AdminReads } from './_components/admin-reads'
import { MaintenancePanel } from './_components/maintenance-panel'
import { SettingsForm } from './_components/settings-form'

export const metadata: Metadata = { title: 'Workspace' }

export default async function WorkspacePage() {
  const actor = await requireActor(paths.workspace())
  const [settings, accounts, sheet, projects] = await readOrNotFound(() =>
    Promise.all([getSettingsView(actor), listAccounts(actor), getLimitList(actor, null), listCapacityProjects(actor)]),
  )
  return (
    <>
      <PageHead
        title={settings.workspaceName}
        over="Workspace"
        actions={<LinkButton href={paths.mail()}>Mail</LinkButton>}
        under="People join projects by invitation; lead engineers create invitations on the project page."
      />
      <PageSection title="People">
        <AccountTable accounts={accounts} ownUserId={actor.userId} providerName={getSettings().oidc?.name ?? null} />
      </PageSection>
      <PageSection title="Sign-ins">
        <p>
          <Link href={paths.refusedSignIns()}>Refused sign-ins</Link>: when, to which account, from what device.
        </p>
      </PageSection>
      <PageSection title="Rules of the review">
        <SettingsForm key={settings.version} settings={settings} />
      </PageSection>
      <PageSection title="Capacities">
        <p>In what capacity people sign is granted by somebody else: a lead of the project, or you.</p>
        <ul className="plain-list">
          {projects.map(({ id, name, capacityCount }) => (
            <li key={id}>
              <Link href={paths.capacities(id)}>{name}</Link>{' '}
              <span className="muted">{capacityCount === 0 ? 'none granted' : `${capacityCount} granted`}</span>
            </li>
          ))}
        </ul>
      </PageSection>
      <PageSection title="Catalogue">
        <p>
          <Link href={paths.workspaceCatalogue()}>The workspace’s catalogue</Link>: own items, wording, who answers,
          items switched off, and its versions.
        </p>
      </PageSection>
      <PageSection title="Materials and constructions">
        <p>
          <Link href={paths.library()}>Materials and starting constructions of the workspace</Link>, for all of its
          projects.
        </p>
      </PageSection>
      <PageSection title="Flex tests">
        <p>
          <Link href={paths.workspaceFlexTests()}>Flex tests of the workspace</Link>: slope and ductility of your own,
          in place of the defaults where they match.
        </p>
      </PageSection>
      <PageSection title="Signing keys">
        <p>
          <Link href={paths.signingKeys()}>Keys of this installation</Link>: fingerprints to publish, and another key in
          place of the one in use.
        </p>
      </PageSection>
      <PageSection title="Trail and backup">
        <MaintenancePanel />
      </PageSection>
      <PageSection title="What an admin can read">
        <AdminReads />
      </PageSection>
      <PageSection title="Companies">
        <p>
          <Link href={paths.workspaceCompanies()}>Fabricators</Link>: names that nobody has confirmed, and who
          administers each company.
        </p>
      </PageSection>
      <PageSection title="Limits of the workspace">
        <p className="muted">
          A limit set here applies to every review, unless a fabricator that a revision is shared with sets its own.
        </p>
        <LimitList rows={listLimitRows()} limits={sheet.limits} companyId={null} mayEdit={sheet.mayEdit} />
      </PageSection>
    </>
  )
}
