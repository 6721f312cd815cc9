import { LinesScreen } from '@/app/_components/engineering'
import { saveDesign } from '../construction/actions'
import { loadRevision, type RevisionParams } from '../load-revision'
import { toStoredRevision } from '../to-stored-revision'

export default async function LinesPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { revision } = await loadRevision(projectId, revisionId)
  return <LinesScreen stored={toStoredRevision(revision)} saveAction={saveDesign} />
}
