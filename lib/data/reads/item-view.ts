import 'server-only'
import {
  coversBasis,
  explainNoAnswer,
  explainNoApproval,
  type ItemState,
  isAllowed,
  listItemStates,
  listLegalStates,
  type ReviewSnapshot,
  type RevisionSubject,
} from '@/lib/review'
import { getMembership, type PersonRights } from '../records/authorization'
import { fromViewedColumns, listViewableFiles } from '../records/looked-at'
import { toAttachmentView, toPersonView } from '../records/part-views'
import type { RevisionRecord } from '../records/revision-record'
import { readWord } from '../records/stored-words'
import type { AnswerView, ItemView, ThreadView, WaiverView } from '../views'

const ANSWERS = ['open', 'meets', 'concern', 'not-applicable'] as const
const WAIVERS = ['proposed', 'approved', 'declined'] as const

interface ItemsRequest {
  readonly record: RevisionRecord
  readonly snapshot: ReviewSnapshot
  readonly rights: PersonRights
  readonly subject: RevisionSubject
  /** Null for the team: nothing is hidden from it. */
  readonly fabricatorCompanyId: string | null
  readonly threads: readonly ThreadView[]
}

/** Every item of the checklist as the person asking may see it; none before the first evaluation. */
export function listItemViews(request: ItemsRequest): ItemView[] {
  return listItemStates(request.snapshot).flatMap((item) => {
    const view = toItemView(request, item)
    return view === null ? [] : [view]
  })
}

function toItemView(request: ItemsRequest, item: ItemState): ItemView | null {
  const { record, rights, subject, fabricatorCompanyId, threads } = request
  const { result } = item
  if (result === null) return null
  const itemId = item.item.id
  const whyNot = explainNoAnswer(rights, { ...subject, kind: 'item', answeredBy: item.item.answeredBy })
  const isHidden = (companyId: string | null) =>
    fabricatorCompanyId !== null && companyId !== null && companyId !== fabricatorCompanyId
  const row = record.answers.find((answer) => answer.itemId === itemId)
  const role = getMembership(rights, record.projectId)?.role ?? ''
  const whyNotApprove = (proposedBy: string) =>
    explainNoApproval(request.snapshot, item.item, { proposedBy, userId: rights.userId, role })
  const answerHidden = row !== undefined && isHidden(row.companyId)
  return {
    itemId,
    result,
    state: item.state,
    answer:
      row === undefined || item.answer === null
        ? null
        : {
            state: item.answer.state,
            reason: item.answer.reason,
            version: row.version,
            by: { id: item.answer.answeredBy, name: item.answer.answeredByName },
            at: item.answer.answeredAt,
            lookedAt: item.answer.lookedAt ?? null,
          },
    answerVersion: row?.version ?? 0,
    carriedFrom: item.answer?.carriedFrom ?? null,
    changedInputs: item.answer?.changedInputs ?? [],
    history: answerHidden
      ? []
      : (row?.history ?? [])
          .filter((entry) => !isHidden(entry.companyId))
          .map(
            (entry): AnswerView => ({
              state: readWord(entry.state, ANSWERS, 'answer state'),
              reason: entry.reason,
              version: entry.version,
              by: toPersonView(record, entry.userId),
              at: entry.at.toISOString(),
              lookedAt: fromViewedColumns(entry),
            }),
          ),
    waivers: record.waivers
      .filter((waiver) => waiver.itemId === itemId)
      .map(
        (waiver): WaiverView => ({
          id: waiver.id,
          itemId,
          state: readWord(waiver.state, WAIVERS, 'waiver state'),
          covers: coversBasis(waiver, result, item.followers),
          reason: waiver.reason,
          proposedBy: toPersonView(record, waiver.proposedById),
          proposedAt: waiver.proposedAt.toISOString(),
          decidedBy: waiver.decidedById === null ? null : toPersonView(record, waiver.decidedById),
          decidedAt: waiver.decidedAt?.toISOString() ?? null,
          decisionNote: waiver.decisionNote,
          consequence: waiver.consequence ?? '',
          validUntil: waiver.validUntil,
          isLapsed: request.snapshot.waivers.some(({ id, isLapsed }) => id === waiver.id && isLapsed === true),
          quantityLimit: waiver.quantityLimit,
          needsCustomerConsent: waiver.needsCustomerConsent ?? false,
          customerConsent: waiver.customerConsent ?? '',
          mayDecide:
            waiver.state === 'proposed' &&
            isAllowed(rights, 'waiver:approve', {
              ...subject,
              kind: 'waiver',
              isIndependent: whyNotApprove(waiver.proposedById) === '',
            }),
          whyNotApprove: waiver.state === 'proposed' ? whyNotApprove(waiver.proposedById) : '',
        }),
      ),
    attachments: record.attachments
      .filter((file) => file.itemId === itemId && !isHidden(file.companyId))
      .map((file) => toAttachmentView(record, file)),
    threadIds: threads.filter(({ anchor }) => anchor.kind === 'item' && anchor.id === itemId).map(({ id }) => id),
    viewableFiles: listViewableFiles(record, itemId, fabricatorCompanyId),
    legalStates: listLegalStates(result.verdict),
    mayAnswer: whyNot === '',
    whyNoAnswer: whyNot,
    setAside: item.setAside,
    needsWaiver: item.needsWaiver,
    follows: item.follows.map(({ id, question }) => ({ itemId: id, question })),
    followers: item.followers.map(({ itemId: id }) => ({
      itemId: id,
      question: request.snapshot.items.find((other) => other.id === id)?.question ?? id,
    })),
  }
}
