import 'server-only'
import { now } from '@/lib/config'
import { ENGINE_VERSION, type LimitOverride, readStoredResults } from '@/lib/engine'
import { findEarlierQuestion } from '@/lib/engine/catalogue'
import {
  ANCHOR_KINDS,
  isOpenStage,
  listDifferences,
  type RecordedEvaluation,
  type ReviewSnapshot,
  type ReviewThread,
  readSignedContent,
  readVoidingChanges,
  THREAD_KINDS,
  THREAD_STATES,
  type ThreadAnchor,
} from '@/lib/review'
import { readAcknowledgement } from './acknowledgement-record'
import { readStage } from './authorization'
import { listAuthors } from './authors'
import { listTakenOff, readDone, toDeclaration } from './declaration-record'
import { combineLimits } from './effective-limits'
import { evaluateFor, hashLimitsOf } from './evaluation'
import { isVisibleTo, type LoadedRevision } from './loaded-revision'
import { readLookedAt } from './looked-at'
import { unpackText } from './packed-text'
import { readReviewAction } from './review-action-record'
import { getCompanyName, getPersonName, type RevisionRecord } from './revision-record'
import { readPinnedPolicy } from './sign-off-policy-record'
import { readGrant } from './signature-grant'
import { readSubstanceHash } from './standing-content'
import { readWord } from './stored-words'

export interface Snapshot {
  readonly snapshot: ReviewSnapshot
  readonly limits: readonly LimitOverride[]
}

/**
 * The revision as the review's rules see it.
 *
 * @param fabricatorCompanyId  null for the team, and for every decision. A fabricator's snapshot holds nothing of
 * another fabricator: no name, no thread, no declaration, no evidence; its results are computed with its own company's
 * limits alone.
 */
export function makeSnapshot(loaded: LoadedRevision, fabricatorCompanyId: string | null): Snapshot {
  const { record, template, sheets, workspace, design } = loaded
  const isVisible = (companyId: string | null) => isVisibleTo(fabricatorCompanyId, companyId)
  const limits = combineLimits(sheets, fabricatorCompanyId)
  const name = (userId: string) => getPersonName(record, userId)
  const shares = record.shares.filter((share) => isVisible(share.companyId))
  const edits = record.edits.filter((edit) => isVisible(edit.companyId))
  const stage = readStage(record.stage)
  const today = (isOpenStage(stage) ? now() : record.stageSince).toISOString().slice(0, 10)
  const evidence = (itemId: string) =>
    record.attachments
      .filter((file) => file.itemId === itemId && isVisible(file.companyId))
      .map((file) => ({ fileName: file.originalName, sha256: file.sha256 }))

  const snapshot: ReviewSnapshot = {
    revisionId: record.id,
    projectId: record.projectId,
    projectName: record.project.name,
    label: record.label,
    version: record.version,
    stage,
    today,
    design,
    storedDesign: loaded.storedDesign,
    evaluation: readEvaluation(loaded, fabricatorCompanyId),
    engineVersion: ENGINE_VERSION,
    limitsHash: hashLimitsOf(loaded, fabricatorCompanyId),
    items: template.items,
    template: template.review,
    answers: record.answers.map((answer) => {
      const isHidden = !isVisible(answer.companyId)
      return {
        itemId: answer.itemId,
        state: readWord(answer.state, ['open', 'meets', 'concern', 'not-applicable'] as const, 'answer state'),
        reason: isHidden ? '(given by another party to the review)' : answer.reason,
        answeredBy: isHidden ? '' : answer.answeredById,
        answeredByName: isHidden ? 'another party to the review' : name(answer.answeredById),
        answeredAt: answer.answeredAt.toISOString(),
        evidence: evidence(answer.itemId),
        ...(answer.carriedFromId === null ? {} : { carriedFrom: record.basedOn?.label ?? '' }),
        ...readLookedAt(record, answer, isHidden),
        changedInputs: loaded.changedInputs.get(answer.itemId) ?? [],
        ...(answer.askedItemId === answer.itemId
          ? {}
          : { earlierQuestion: findEarlierQuestion(answer.askedItemId) ?? answer.askedItemId }),
        isFromElsewhere:
          answer.carriedFromId !== null &&
          answer.companyId !== null &&
          !record.shares.some(({ companyId }) => companyId === answer.companyId),
      }
    }),
    waivers: record.waivers.map((waiver) => ({
      id: waiver.id,
      itemId: waiver.itemId,
      state: readWord(waiver.state, ['proposed', 'approved', 'declined'] as const, 'waiver state'),
      reason: waiver.reason,
      proposedBy: waiver.proposedById,
      proposedByName: name(waiver.proposedById),
      proposedAt: waiver.proposedAt.toISOString(),
      decidedBy: waiver.decidedById,
      decidedByName: waiver.decidedById === null ? null : name(waiver.decidedById),
      decidedAt: waiver.decidedAt?.toISOString() ?? null,
      decisionNote: waiver.decisionNote,
      ...(waiver.decidedAsRole === null ? {} : { decidedAsRole: waiver.decidedAsRole }),
      consequence: waiver.consequence ?? '',
      validUntil: waiver.validUntil,
      quantityLimit: waiver.quantityLimit,
      needsCustomerConsent: waiver.needsCustomerConsent ?? false,
      customerConsent: waiver.customerConsent ?? '',
      // What was released stands as it was released; the release itself has its last day.
      isLapsed: isOpenStage(stage) && waiver.validUntil !== null && waiver.validUntil < today,
      basisHash: waiver.basisHash,
    })),
    threads: record.threads
      .filter(({ audienceCompanyId }) => fabricatorCompanyId === null || audienceCompanyId === fabricatorCompanyId)
      .map((thread) => makeReviewThread(record, thread)),
    actions: record.actions
      .filter(({ audienceCompanyId }) => fabricatorCompanyId === null || audienceCompanyId === fabricatorCompanyId)
      .map((action) => readReviewAction(record, action)),
    sharedWith: shares.map(({ company }) => ({ companyId: company.id, companyName: company.name })),
    declarations: record.declarations
      .filter(({ companyId }) => isVisible(companyId))
      .map((declaration) => toDeclaration(record, declaration)),
    takenOff: listTakenOff(record).filter(({ companyId }) => isVisible(companyId)),
    ...findSignedThreads(loaded),
    signatures: record.signatures.map((signature) => ({
      id: signature.id,
      userId: signature.signerId,
      name: signature.signerName,
      capacity: signature.capacity,
      ...(signature.grantJson === null ? {} : { grant: readGrant(signature.grantJson) }),
      statement: signature.statement,
      signedAt: signature.signedAt.toISOString(),
      contentHash: signature.contentHash,
      substanceHash: signature.voidedAt === null ? readSubstanceHash(signature) : '',
      voided:
        signature.voidedAt === null
          ? null
          : {
              at: signature.voidedAt.toISOString(),
              reason: signature.voidReason ?? '',
              changes: readVoidingChanges(signature.changesJson, fabricatorCompanyId),
            },
    })),
    artwork: record.artwork.map((file) => ({
      id: file.id,
      fileName: file.originalName,
      sizeBytes: file.sizeBytes,
      sha256: file.sha256,
    })),
    artworkFacts: loaded.artwork.facts,
    editors: namePeople(record, [record.createdById, ...edits.map(({ userId }) => userId)]),
    authors: listAuthors(record),
    reviews: record.reviewStatements.map((review) => ({
      id: review.id,
      userId: review.userId,
      name: review.userName,
      role: review.role,
      note: review.note,
      madeAt: review.madeAt.toISOString(),
      contentHash: review.contentHash,
      withdrawnAt: review.withdrawnAt?.toISOString() ?? null,
    })),
    acknowledgements: record.acknowledgements.map((row) => readAcknowledgement(record, row)),
    // People who left the project sign nothing in it, whatever was granted to them.
    capacityGrants: record.project.capacityGrants
      .filter(({ userId }) => record.project.memberships.some((membership) => membership.userId === userId))
      .map((grant) => ({
        userId: grant.userId,
        capacity: grant.capacity,
        statement: grant.statement,
        grantedByName: name(grant.grantedById),
        grantedAt: grant.grantedAt.toISOString(),
      })),
    signOffPolicy: readPinnedPolicy(record.signOffPolicyJson),
    settings: workspace.settings,
  }
  return { snapshot: fabricatorCompanyId === null ? snapshot : withOwnDifferences(snapshot), limits }
}

/** What was let stand names what others said: a fabricator's view has those that it can find itself. */
function withOwnDifferences(snapshot: ReviewSnapshot): ReviewSnapshot {
  if (snapshot.acknowledgements.length === 0) return snapshot
  const own = new Set(listDifferences(snapshot).map(({ key }) => key))
  return { ...snapshot, acknowledgements: snapshot.acknowledgements.filter(({ key }) => own.has(key)) }
}

function namePeople(record: RevisionRecord, userIds: readonly string[]) {
  return [...new Set(userIds)].map((userId) => ({ userId, name: getPersonName(record, userId) }))
}

function readEvaluation(loaded: LoadedRevision, fabricatorCompanyId: string | null): RecordedEvaluation | null {
  const row = loaded.record.evaluations[0]
  if (row === undefined) return null
  const recorded = {
    designHash: row.designHash,
    engineVersion: row.engineVersion,
    evaluatedAt: row.createdAt.toISOString(),
  }
  const limitsHash = hashLimitsOf(loaded, fabricatorCompanyId)
  if (fabricatorCompanyId === null && (row.limitsHash === limitsHash || !mayHoldHidden(loaded))) {
    return { ...recorded, limitsHash: row.limitsHash, results: readStoredResults(unpackText(row.resultsJson)) }
  }
  const results = evaluateFor(loaded, { fabricatorCompanyId, evaluatedOn: row.createdAt })
  if (fabricatorCompanyId === null) return { ...recorded, limitsHash: row.limitsHash, results }
  return { ...recorded, engineVersion: ENGINE_VERSION, limitsHash, results }
}

/**
 * May recorded results that are not the present limits' hold one that a fabricator no longer shows? Then the team sees them
 * made again, still as stale. What was signed or released stays as it was signed: it was shown then.
 */
function mayHoldHidden({ record, sheets }: LoadedRevision): boolean {
  const isSettled = record.packages.length > 0 || record.signatures.some(({ voidedAt }) => voidedAt === null)
  return !isSettled && sheets.fabricators.some(({ sharing }) => sharing !== 'shown')
}

/** Once a revision has left its path, threads are what the signature that stands says they were. */
function findSignedThreads({ record }: LoadedRevision): Pick<ReviewSnapshot, 'signedThreads'> {
  if (isOpenStage(readStage(record.stage))) return {}
  const signed = record.signatures.findLast(({ voidedAt }) => voidedAt === null)
  const threads = signed === undefined ? undefined : readSignedContent(signed.contentJson).threads
  return threads === undefined ? {} : { signedThreads: threads }
}

type ThreadRow = RevisionRecord['threads'][number]

export function makeReviewThread(record: RevisionRecord, thread: ThreadRow): ReviewThread {
  return {
    id: thread.id,
    kind: readWord(thread.kind, THREAD_KINDS, 'kind of thread'),
    state: readWord(thread.state, THREAD_STATES, 'state of a thread'),
    title: thread.title,
    anchor: readAnchor(thread),
    openedBy: thread.openedById,
    openedByName: getPersonName(record, thread.openedById),
    openedAt: thread.openedAt.toISOString(),
    audienceCompanyId: thread.audienceCompanyId,
    openedByCompanyId: thread.openedByCompanyId,
    openedByCompanyName: getCompanyName(record, thread.openedByCompanyId),
    comments: thread.comments.map((comment) => ({
      id: comment.id,
      authorId: comment.authorId,
      authorName: getPersonName(record, comment.authorId),
      companyName: getCompanyName(record, comment.companyId),
      at: comment.createdAt.toISOString(),
      text: comment.text,
      editedAt: comment.editedAt?.toISOString() ?? null,
      attachments: comment.attachments
        .filter((file) => file.removedAt === null)
        .map((file) => ({ fileName: file.originalName, sha256: file.sha256 })),
    })),
    closed:
      thread.state !== 'closed' || thread.closedById === null || thread.closedAt === null
        ? null
        : {
            by: thread.closedById,
            byName: getPersonName(record, thread.closedById),
            at: thread.closedAt.toISOString(),
            reason: thread.closeReason ?? '',
            done: readDone(thread.doneJson),
          },
  }
}

export function readAnchor(thread: Pick<ThreadRow, 'anchorKind' | 'anchorId' | 'anchorLabel'>): ThreadAnchor {
  return {
    kind: readWord(thread.anchorKind, ANCHOR_KINDS, 'anchor of a thread'),
    id: thread.anchorId,
    label: thread.anchorLabel,
  }
}
