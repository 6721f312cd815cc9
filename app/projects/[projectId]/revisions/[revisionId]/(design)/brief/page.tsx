import { BriefScreen } from '@/app/_components/engineering'
import { loadRevision, type RevisionParams } from '../../load-revision'
import { toStoredRevision } from '../../to-stored-revision'
import { saveDesign } from '../construction/actions'

export default async function BriefPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { revision } = await loadRevision(projectId, revisionId)
  // The brief is the team's to say: a proposal changes construction, bends or features.
  const stored = { ...toStoredRevision(revision), proposing: null }
  return <BriefScreen stored={stored} saveAction={saveDesign} />
}
