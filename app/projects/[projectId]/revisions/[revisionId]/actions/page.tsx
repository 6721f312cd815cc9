import { ActionList } from '@/app/_components/review/action-list'
import { MAX_FILE_BYTES } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../load-revision'

export default async function ActionsPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { revision } = await loadRevision(projectId, revisionId)
  return <ActionList projectId={projectId} revision={revision} maxFileBytes={MAX_FILE_BYTES} />
}
