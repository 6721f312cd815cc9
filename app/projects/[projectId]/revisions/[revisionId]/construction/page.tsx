import { ConstructionScreen } from '@/app/_components/engineering'
import { loadRevision, type RevisionParams } from '../load-revision'
import { toStoredRevision } from '../to-stored-revision'
import { saveDesign } from './actions'

export default async function ConstructionPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { revision } = await loadRevision(projectId, revisionId)
  return <ConstructionScreen stored={toStoredRevision(revision)} saveAction={saveDesign} />
}
