import type { Metadata } from 'next'
import Link from 'next/link'
import { PolicyRows } from '@/app/_components/review/policy-rows'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getProjectSignOffPolicy } from '@/lib/data'
import { PolicyForm } from './_components/policy-form'

interface PolicyPageProps {
  params: Promise<{ projectId: string }>
}

export const metadata: Metadata = { title: 'Sign-off policy of the project' }

/** What a project asks of review, waivers, signatures and release, and the change of it. */
export default async function SignOffPolicyPage({ params }: PolicyPageProps) {
  const { projectId } = await params
  const actor = await requireActor(paths.signOffPolicy(projectId))
  const { projectName, version, rules, rows, mayEdit } = await readOrNotFound(() =>
    getProjectSignOffPolicy(actor, projectId),
  )
  return (
    <>
      <PageHead
        title="Sign-off policy"
        over={<Link href={paths.project(projectId)}>{projectName}</Link>}
        under={
          <p>
            Who must have reviewed a revision, who may approve a waiver, sign and release. A toy and a medical device
            need different policies. A revision keeps the policy that it began with: a stricter rule applies to open
            revisions at once, a looser one only after a lead puts the revision under it. Signatures cover the policy,
            and documents print where a looser one was used.
          </p>
        }
      />
      <PageSection title={`In force: version ${version}`}>
        <PolicyRows rows={rows} />
      </PageSection>
      {mayEdit && (
        <PageSection title="Change">
          <PolicyForm key={version} projectId={projectId} version={version} rules={rules} />
        </PageSection>
      )}
    </>
  )
}
