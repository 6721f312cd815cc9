import type { Metadata } from 'next'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getLibrary } from '@/lib/data'
import { KeptConstructions } from './_components/kept-constructions'
import { OwnMaterials } from './_components/own-materials'

export const metadata: Metadata = { title: 'Materials and constructions' }

export default async function LibraryPage() {
  const actor = await requireActor(paths.library())
  const { materials, constructions, mayEdit } = await readOrNotFound(() => getLibrary(actor))
  return (
    <>
      <PageHead
        title="Materials and constructions"
        over="Workspace"
        under="Of the workspace’s own, for all of its projects. A design takes a copy along: what is changed or withdrawn here moves no result."
      />
      <PageSection title="Materials">
        <OwnMaterials materials={materials} mayEdit={mayEdit} />
      </PageSection>
      <PageSection title="Starting constructions">
        <KeptConstructions constructions={constructions} mayEdit={mayEdit} />
      </PageSection>
    </>
  )
}
