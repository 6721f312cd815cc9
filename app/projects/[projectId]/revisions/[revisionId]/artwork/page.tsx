import { ArtworkList } from '@/app/_components/review/artwork-list'
import { ArtworkPicture, listArtworkFindings, planShapesOf } from '@/app/_components/review/artwork-picture'
import { readPlace } from '@/app/_components/review/artwork-picture/read-place'
import { ArtworkReading } from '@/app/_components/review/artwork-reading'
import { ReadAgainButton } from '@/app/_components/review/artwork-reading-acts'
import { FileRoom } from '@/app/_components/review/file-room'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { getArtworkReading, getFileRoom, MAX_FILE_BYTES, type ThreadView } from '@/lib/data'
import { loadRevision, type RevisionParams } from '../load-revision'

interface ArtworkPageProps extends RevisionParams {
  searchParams: Promise<{ at?: string | string[]; in?: string | string[] }>
}

export default async function ArtworkPage({ params, searchParams }: ArtworkPageProps) {
  const { projectId, revisionId } = await params
  const { at, in: frame } = await searchParams
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
      {reading.facts !== null && (
        <PageSection title="Layers over the plan" id="artwork-picture">
          {reading.hasPicture ? (
            <ArtworkPicture
              key={`${String(frame)} ${String(at)}`}
              projectId={projectId}
              revisionId={revisionId}
              registration={reading.onPlan?.registration ?? null}
              plan={reading.onPlan?.registration == null ? null : planShapesOf(revision.design)}
              findings={listArtworkFindings(revision.items)}
              threads={listPlaces(revision.threads)}
              files={revision.may.comment ? revision.artwork.map(({ id, fileName }) => ({ id, fileName })) : []}
              cameFor={readPlace(frame, at)}
            />
          ) : (
            <NoPicture revisionId={revisionId} mayEdit={reading.mayEdit} />
          )}
        </PageSection>
      )}
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

/** Files that were read before pictures were made. */
function NoPicture({ revisionId, mayEdit }: { revisionId: string; mayEdit: boolean }) {
  return (
    <EmptyState>
      <p>These files were read before layers could be looked at.</p>
      {mayEdit && <ReadAgainButton revisionId={revisionId} />}
    </EmptyState>
  )
}

const listPlaces = (threads: readonly ThreadView[]) =>
  threads.flatMap(({ id, title, place }) => (place === null ? [] : [{ id, title, ...place }]))
