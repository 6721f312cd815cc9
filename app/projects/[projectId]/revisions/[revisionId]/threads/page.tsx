import { readPoint } from '@/app/_components/review/artwork-picture/read-place'
import { listAnchors } from '@/app/_components/review/thread-anchors'
import { ThreadList } from '@/app/_components/review/thread-list'
import { MAX_FILE_BYTES } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../load-revision'

interface ThreadsPageProps extends RevisionParams {
  searchParams: Promise<{ show?: string | string[]; about?: string | string[]; at?: string | string[] }>
}

export default async function ThreadsPage({ params, searchParams }: ThreadsPageProps) {
  const { projectId, revisionId } = await params
  const { show, about, at } = await searchParams
  const { revision } = await loadRevision(projectId, revisionId)
  return (
    <ThreadList
      projectId={projectId}
      revisionId={revisionId}
      threads={revision.threads}
      anchors={listAnchors(revision)}
      fabricators={revision.sharedWith}
      role={revision.role}
      mayComment={revision.may.comment}
      mayRaiseQuery={revision.may.raiseQuery}
      about={typeof about === 'string' ? about : null}
      aboutPlace={readPoint(at)}
      initialFilter={typeof show === 'string' ? show : 'open'}
      maxFileBytes={MAX_FILE_BYTES}
    />
  )
}
