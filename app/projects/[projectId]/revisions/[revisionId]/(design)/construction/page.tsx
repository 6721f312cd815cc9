import { ConstructionScreen } from '@/app/_components/engineering'
import { listOwnMaterials } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../../load-revision'
import { toStoredRevision } from '../../to-stored-revision'
import { keepConstruction, saveDesign } from './actions'

export default async function ConstructionPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const ownMaterials = await listOwnMaterials(actor)
  return (
    <ConstructionScreen
      stored={toStoredRevision(revision, ownMaterials)}
      saveAction={saveDesign}
      keepAction={revision.may.keepConstruction ? keepConstruction : null}
    />
  )
}
