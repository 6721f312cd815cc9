import 'server-only'
import type { Acknowledgement } from '@/lib/review'
import { getPersonName, type RevisionRecord } from './revision-record'

/** A difference that somebody let stand, as the review's rules see it. */
export function readAcknowledgement(
  record: RevisionRecord,
  row: RevisionRecord['acknowledgements'][number],
): Acknowledgement {
  const { id, differenceKey, fact, said, against, reason, acknowledgedById, acknowledgedAt } = row
  return {
    id,
    key: differenceKey,
    fact,
    said,
    against,
    reason,
    byId: acknowledgedById,
    byName: getPersonName(record, acknowledgedById),
    at: acknowledgedAt.toISOString(),
  }
}
