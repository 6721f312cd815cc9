import 'server-only'
import type { LookedAt, RecordedAnswer, ViewedFile } from '@/lib/review'
import type { RevisionRecord } from './revision-record'

/** Files of the revision in which somebody may have looked who answers an item: artwork, and what is attached to the item in their view. */
export function listViewableFiles(
  record: Pick<RevisionRecord, 'artwork' | 'attachments'>,
  itemId: string,
  fabricatorCompanyId: string | null,
): ViewedFile[] {
  const attached = record.attachments.filter(
    (file) =>
      file.itemId === itemId &&
      (fabricatorCompanyId === null || file.companyId === null || file.companyId === fabricatorCompanyId),
  )
  return [...record.artwork, ...attached].map(({ originalName, sha256 }) => ({ fileName: originalName, sha256 }))
}

type AnswerRow = RevisionRecord['answers'][number]

/** Where somebody looked, and whether the file is still there: read anew each time, so that the answer lapses with the file. */
export function readLookedAt(
  record: Pick<RevisionRecord, 'artwork' | 'attachments'>,
  answer: AnswerRow,
  isHidden: boolean,
): Pick<RecordedAnswer, 'lookedAt' | 'isFileGone'> {
  const { viewedSheet, viewedLayer, viewedSha256, viewedFileName } = answer
  if (viewedSheet === null || viewedLayer === null || viewedSha256 === null || viewedFileName === null) {
    return { lookedAt: null }
  }
  const hidden = '(another party to the review)'
  const lookedAt: LookedAt = isHidden
    ? { sheet: hidden, layer: hidden, fileName: hidden, sha256: viewedSha256 }
    : { sheet: viewedSheet, layer: viewedLayer, fileName: viewedFileName, sha256: viewedSha256 }
  const isThere = listViewableFiles(record, answer.itemId, null).some(({ sha256 }) => sha256 === viewedSha256)
  return { lookedAt, isFileGone: !isThere }
}
