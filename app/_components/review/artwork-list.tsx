'use client'

import { ActionButton } from '@/app/_components/ui/action-button'
import { paths } from '@/lib/addresses'
import type { AttachmentView } from '@/lib/data'
import { removeArtwork } from './actions'
import { FileList } from './file-list'
import { UploadForm } from './upload-form'

interface ArtworkListProps {
  revisionId: string
  files: readonly AttachmentView[]
  mayEdit: boolean
  maxFileBytes: number
}

export function ArtworkList({ revisionId, files, mayEdit, maxFileBytes }: ArtworkListProps) {
  return (
    <div className="stack above-wide">
      <FileList
        files={files}
        hrefOf={paths.artworkFile}
        {...(mayEdit
          ? {
              renderAct: (file: AttachmentView) => (
                <ActionButton
                  action={removeArtwork}
                  input={{ fileId: file.id }}
                  weight="quiet"
                  confirm={{
                    title: 'Remove this file from the artwork?',
                    text: `“${file.fileName}” will no longer belong to the revision. The file and its record are kept. A signature on the revision is voided.`,
                    label: 'Remove',
                  }}
                >
                  Remove
                </ActionButton>
              ),
            }
          : {})}
      />
      {mayEdit && (
        <UploadForm
          purpose="artwork"
          input={{ revisionId }}
          label="Add an artwork file"
          hint={`Layer images, drill data, outline, drawing. At most ${Math.floor(maxFileBytes / 1e6)} MB each.`}
          buttonLabel="Add to the artwork"
          maxBytes={maxFileBytes}
        />
      )}
    </div>
  )
}
