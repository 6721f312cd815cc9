import type { ReactNode } from 'react'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { AttachmentView } from '@/lib/data'
import { asFileSize } from '@/lib/engine/units'

interface FileListProps {
  files: readonly AttachmentView[]
  hrefOf: (id: string) => string
  /** An act beside each file, e.g. taking it off. */
  renderAct?: (file: AttachmentView) => ReactNode
}

/** Files with what identifies them: name, size, hash, who brought them and when. */
export function FileList({ files, hrefOf, renderAct }: FileListProps) {
  return (
    <ul className="files">
      {files.map((file) => (
        <li key={file.id}>
          <a href={hrefOf(file.id)} download={file.fileName}>
            {file.fileName}
          </a>{' '}
          <span className="muted small">
            {asFileSize(file.sizeBytes)}, {file.uploadedBy.name}, <Timestamp at={file.at} />
          </span>
          <span className="hash muted" title="SHA-256">
            {file.sha256}
          </span>
          {renderAct?.(file)}
        </li>
      ))}
    </ul>
  )
}
