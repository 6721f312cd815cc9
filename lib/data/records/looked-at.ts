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

/** Where somebody looked as the columns of an answer, and of each earlier one, hold it. */
interface ViewedColumns {
  readonly viewedSheet: string | null
  readonly viewedLayer: string | null
  readonly viewedSha256: string | null
  readonly viewedFileName: string | null
}

export const NOWHERE_LOOKED: ViewedColumns = {
  viewedSheet: null,
  viewedLayer: null,
  viewedSha256: null,
  viewedFileName: null,
}

export function toViewedColumns(lookedAt: LookedAt | null): ViewedColumns {
  if (lookedAt === null) return NOWHERE_LOOKED
  const { sheet, layer, sha256, fileName } = lookedAt
  return { viewedSheet: sheet, viewedLayer: layer, viewedSha256: sha256, viewedFileName: fileName }
}

export function fromViewedColumns(columns: ViewedColumns): LookedAt | null {
  const { viewedSheet, viewedLayer, viewedSha256, viewedFileName } = columns
  return viewedSheet === null || viewedLayer === null || viewedSha256 === null || viewedFileName === null
    ? null
    : { sheet: viewedSheet, layer: viewedLayer, fileName: viewedFileName, sha256: viewedSha256 }
}

/** Where somebody looked, and whether the file is still there: read again each time, so that the answer lapses with the file. */
export function readLookedAt(
  record: Pick<RevisionRecord, 'artwork' | 'attachments'>,
  answer: RevisionRecord['answers'][number],
  isHidden: boolean,
): Pick<RecordedAnswer, 'lookedAt' | 'isFileGone'> {
  const stated = fromViewedColumns(answer)
  if (stated === null) return { lookedAt: null }
  const hidden = '(another party to the review)'
  const lookedAt: LookedAt = isHidden ? { ...stated, sheet: hidden, layer: hidden, fileName: hidden } : stated
  const isThere = listViewableFiles(record, answer.itemId, null).some(({ sha256 }) => sha256 === stated.sha256)
  return { lookedAt, isFileGone: !isThere }
}
