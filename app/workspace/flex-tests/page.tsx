import type { Metadata } from 'next'
import { FlexTestSets } from '@/app/_components/flex-tests/flex-test-sets'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getWorkspaceFlexTests } from '@/lib/data'
import { FlexTestEditor } from './_components/flex-test-editor'

export const metadata: Metadata = { title: 'Flex tests of the workspace' }

export default async function WorkspaceFlexTestsPage() {
  const actor = await requireActor(paths.workspaceFlexTests())
  const { version, workspaceName, rows, mayEdit } = await readOrNotFound(() => getWorkspaceFlexTests(actor))
  return (
    <>
      <PageHead
        title="Flex tests of the workspace"
        over={version === 0 ? 'Catalogue as delivered' : `Catalogue version ${version}`}
        under="Lives of specimens that you tested. Results use their slope and ductility where foil, motion, radius and cycles match. They are part of the catalogue: a review keeps the version that it started with and is offered the newest one."
      />
      <PageSection title="Sets">
        <FlexTestSets rows={rows} owner={{ kind: 'workspace', name: workspaceName }} />
      </PageSection>
      <PageSection title="Specimens">
        <FlexTestEditor key={version} rows={rows} seenVersion={version} mayEdit={mayEdit} />
      </PageSection>
    </>
  )
}
