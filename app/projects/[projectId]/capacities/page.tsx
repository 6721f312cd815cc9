import type { Metadata } from 'next'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getCapacities } from '@/lib/data'
import { CapacityTable } from './_components/capacity-table'
import { GrantForm } from './_components/grant-form'

interface CapacitiesPageProps {
  params: Promise<{ projectId: string }>
}

export const metadata: Metadata = { title: 'Capacities' }

/** In what capacity people may sign in a project; read by the project's own company, granted by a lead or an admin. */
export default async function CapacitiesPage({ params }: CapacitiesPageProps) {
  const { projectId } = await params
  const actor = await requireActor(paths.capacities(projectId))
  const { projectName, capacities, people, mayGrant } = await readOrNotFound(() => getCapacities(actor, projectId))
  return (
    <>
      <PageHead
        title="Capacities"
        over={projectName}
        under={
          <p>
            People sign a revision in a capacity that somebody else granted to them, with a statement of what they
            answer for in it. Both stand with the signature.
          </p>
        }
      />
      <PageSection title="Granted">
        {capacities.length === 0 ? (
          <EmptyState>No capacity is granted yet, so nobody can sign.</EmptyState>
        ) : (
          <CapacityTable capacities={capacities} mayWithdraw={mayGrant} />
        )}
      </PageSection>
      {mayGrant && (
        <PageSection title="Grant a capacity">
          <GrantForm key={capacities.length} projectId={projectId} people={people} ownUserId={actor.userId} />
        </PageSection>
      )}
    </>
  )
}
