import { ArtworkList } from '@/app/_components/review/artwork-list'
import { ArtworkReading } from '@/app/_components/review/artwork-reading'
import { FileRoom } from '@/app/_components/review/file-room'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { getArtworkReading, getFileRoom, MAX_FILE_BYTES } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../load-revision'

export default async function ArtworkPage({ params }: RevisionParams) {
  const { projectId, revisionId } = await params
  const { actor, revision } = await loadRevision(projectId, revisionId)
  const [room, reading] = await Promise.all([getFileRoom(actor, projectId), getArtworkReading(actor, revisionId)])
  const { bends, construction } = revision.design
  return (
    <>
      <PageSection title="Artwork">
        <p className="muted">
          Files are kept under their SHA-256, which the signature covers. Adding or removing a file voids signatures.
        </p>
        {revision.artwork.length === 0 && <EmptyState>No artwork file yet.</EmptyState>}
        <ArtworkList
          revisionId={revisionId}
          files={revision.artwork}
          mayEdit={revision.may.edit}
          maxFileBytes={MAX_FILE_BYTES}
        />
        <FileRoom room={room} />
      </PageSection>
      {reading.state !== 'none' && (
        <PageSection title="What the files say">
          <ArtworkReading
            revisionId={revisionId}
            reading={reading}
            agreement={revision.items.find(({ itemId }) => itemId === 'artwork-agreement')}
            names={{ zones: namesOf(construction.zones), bends: namesOf(bends) }}
          />
        </PageSection>
      )}
    </>
  )
}

const namesOf = (list: readonly { readonly id: string; readonly name: string }[]) =>
  new Map(list.map(({ id, name }) => [id, name]))
