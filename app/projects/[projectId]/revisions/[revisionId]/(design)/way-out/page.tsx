import { WayOutScreen } from '@/app/_components/engineering'
import { loadRevision, type RevisionParams } from '../../load-revision'
import { toStoredRevision } from '../../to-stored-revision'
import { saveDesign } from '../construction/actions'

export default async function WayOutPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { revision } = await loadRevision(projectId, revisionId)
  return <WayOutScreen stored={toStoredRevision(revision)} saveAction={saveDesign} />
}
