import 'server-only'
import { ACTION_DUES, ACTION_ORIGINS, ACTION_STATES, type ReviewAction } from '@/lib/review'
import { getCompanyName, getPersonName, type RevisionRecord } from './revision-record'
import { readWord } from './stored-words'

type ActionRow = RevisionRecord['actions'][number]

/** An action as the review's rules see it. */
export function readReviewAction(record: RevisionRecord, row: ActionRow): ReviewAction {
  const name = (userId: string | null) => (userId === null ? null : getPersonName(record, userId))
  return {
    id: row.id,
    number: row.number,
    origin: {
      kind: readWord(row.originKind, ACTION_ORIGINS, 'origin of an action'),
      id: row.originId,
      label: row.originLabel,
    },
    audienceCompanyId: row.audienceCompanyId,
    text: row.text,
    ownerId: row.ownerId,
    ownerName: getPersonName(record, row.ownerId),
    ownerCompanyName: getCompanyName(record, row.ownerCompanyId),
    due: readWord(row.due, ACTION_DUES, 'due date of an action'),
    dueOn: row.dueOn,
    isAfterRelease: row.isAfterRelease,
    state: readWord(row.state, ACTION_STATES, 'state of an action'),
    takenOnByName: getPersonName(record, row.takenOnById),
    takenOnAt: row.takenOnAt.toISOString(),
    evidence: row.evidence,
    files: record.attachments
      .filter(({ actionId }) => actionId === row.id)
      .map(({ originalName, sha256 }) => ({ fileName: originalName, sha256 })),
    reportedByName: name(row.reportedById),
    reportedAt: row.reportedAt?.toISOString() ?? null,
    closedByName: name(row.closedById),
    closedAt: row.closedAt?.toISOString() ?? null,
    closeNote: row.closeNote,
  }
}
