import 'server-only'
import { describeAction } from '@/lib/review'

interface RecordRow {
  readonly action: string
  readonly revisionId: string | null
  readonly detailsJson: string
}

/**
 * A record of the trail as a sentence without its subject.
 * @param labels  of revisions, where the reader is not on the revision's own page
 */
export function describeRecord(row: RecordRow, labels: ReadonlyMap<string, string>): string {
  const sentence = describeAction(row.action, row.detailsJson)
  const label = row.revisionId === null ? undefined : labels.get(row.revisionId)
  return label === undefined ? sentence : `revision ${label}: ${sentence}`
}
