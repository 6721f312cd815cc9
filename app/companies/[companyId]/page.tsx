import type { Metadata } from 'next'
import { CompanyLinks } from '@/app/_components/fabrication/company-links'
import { COMPANY_ROLE_WORDS } from '@/app/_components/review/words'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { type CompanyPageView, getCompany } from '@/lib/data'
import { InvitePerson } from '../_components/invite-person'
import { CompanyPeople } from './_components/company-people'
import { DefaultSharing } from './_components/default-sharing'
import { Participations } from './_components/participations'
import { ProbingTable } from './_components/probing-table'

export const metadata: Metadata = { title: 'Company' }

export default async function CompanyPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const actor = await requireActor(paths.company(companyId))
  const view = await readOrNotFound(() => getCompany(actor, companyId))
  return (
    <>
      <PageHead
        title={view.company.name}
        over={view.role === null ? 'Fabricator' : `Fabricator · your role: ${COMPANY_ROLE_WORDS[view.role]}`}
        under={view.ofProjectAlone === null ? undefined : describeName(view.ofProjectAlone)}
      />
      <CompanyLinks companyId={companyId} may={view.may} />
      {view.inside === null ? (
        <SeenByTeam view={view} />
      ) : (
        <Inside view={view} inside={view.inside} userId={actor.userId} />
      )}
    </>
  )
}

function describeName(projectName: string): string {
  return `A company of project ${projectName} only. Its name is not confirmed; an admin of the workspace can confirm it.`
}

function SeenByTeam({ view: { company, may } }: { view: CompanyPageView }) {
  const hasAny = may.viewMatrix || may.viewShelf || may.viewRates
  return (
    <EmptyState>
      {hasAny
        ? `${company.name} shares what is linked above. The rest is not shared with this project.`
        : `${company.name} takes part and shares none of its sheets with this project.`}
    </EmptyState>
  )
}

interface InsideProps {
  readonly view: CompanyPageView
  readonly inside: NonNullable<CompanyPageView['inside']>
  readonly userId: string
}

function Inside({ view: { company, may }, inside, userId }: InsideProps) {
  const { people, participations, defaultSharing, probing, invitations } = inside
  return (
    <>
      <PageSection title="Projects">
        {participations.length === 0 ? (
          <EmptyState>No project has asked this company to take part yet.</EmptyState>
        ) : (
          <Participations companyId={company.id} participations={participations} people={people} may={may} />
        )}
        {may.share && <DefaultSharing companyId={company.id} sharing={defaultSharing} />}
      </PageSection>
      <PageSection title="People">
        <CompanyPeople
          companyId={company.id}
          people={people}
          invitations={invitations}
          mayAdmit={may.admit}
          ownUserId={userId}
        />
        {may.admit && (
          <InvitePerson
            companyId={company.id}
            projects={participations
              .filter(({ state }) => state === 'takes-part')
              .map(({ projectId, projectName }) => ({ value: projectId, label: projectName }))}
          />
        )}
      </PageSection>
      <PageSection title="Verdicts changed by teams">
        <p className="muted">
          Saves by which a team changed a verdict that depends on limits or a matrix that you do not show it. Many in a
          row on one revision can narrow down a limit.
        </p>
        <ProbingTable probing={probing} />
      </PageSection>
    </>
  )
}
