import 'server-only'
import { now } from '@/lib/config'
import { type Action, isAllowed, isOverdue, isPending, type RevisionSubject } from '@/lib/review'
import { makeReviewActionSubject, maySeeReviewAction, type PersonRights } from '../records/authorization'
import { toAttachmentView, toCompanyView, toPersonView } from '../records/part-views'
import { readReviewAction } from '../records/review-action-record'
import type { RevisionRecord } from '../records/revision-record'
import type { ReviewActionView } from '../views'

type ActionRow = RevisionRecord['actions'][number]

/** Actions of a revision that the person may see, in their order. */
export function listReviewActionViews(
  record: RevisionRecord,
  rights: PersonRights,
  subject: RevisionSubject,
): ReviewActionView[] {
  return record.actions
    .filter((row) => maySeeReviewAction(rights, subject, row))
    .map((row) => toReviewActionView(record, row, rights, subject))
}

function toReviewActionView(
  record: RevisionRecord,
  row: ActionRow,
  rights: PersonRights,
  revision: RevisionSubject,
): ReviewActionView {
  const action = readReviewAction(record, row)
  const subject = makeReviewActionSubject(revision, row)
  const may = (asked: Action & `review-action:${string}`) => isAllowed(rights, asked, subject)
  const person = (userId: string | null) => (userId === null ? null : toPersonView(record, userId))
  const company = row.audienceCompanyId === null ? undefined : record.companies.get(row.audienceCompanyId)
  const isUnsettled = isPending(action)
  return {
    id: row.id,
    revisionId: row.revisionId,
    number: row.number,
    origin: action.origin,
    company: company === undefined ? null : toCompanyView(company),
    text: row.text,
    owner: toPersonView(record, row.ownerId),
    ownerCompanyName: action.ownerCompanyName,
    due: action.due,
    dueOn: row.dueOn,
    isOverdue: isOverdue(action, now().toISOString().slice(0, 10)),
    isAfterRelease: row.isAfterRelease,
    state: action.state,
    version: row.version,
    takenOnBy: toPersonView(record, row.takenOnById),
    takenOnAt: action.takenOnAt,
    evidence: row.evidence,
    attachments: record.attachments
      .filter(({ actionId }) => actionId === row.id)
      .map((file) => toAttachmentView(record, file)),
    reportedBy: person(row.reportedById),
    reportedAt: action.reportedAt,
    closedBy: person(row.closedById),
    closedAt: action.closedAt,
    closeNote: row.closeNote,
    may: {
      change: isUnsettled && may('review-action:change'),
      report: isUnsettled && may('review-action:report'),
      close: action.state === 'reported' && may('review-action:close'),
      drop: isUnsettled && may('review-action:drop'),
      reopen: action.state !== 'open' && may('review-action:reopen'),
    },
  }
}
