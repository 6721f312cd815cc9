import 'server-only'
import { type Design, ENGINE_VERSION, type Evaluation } from '@/lib/engine'
import type { CatalogueEdition } from '@/lib/engine/catalogue'
import {
  findBlockers,
  findSigningBlockers,
  isAllowed,
  isOpenStage,
  listSigningCapacities,
  RELEASE_PURPOSES,
  type ReviewSnapshot,
  type RevisionSubject,
  readSignedContent,
  readVoidingChanges,
  summarizeSigning,
  TRANSITIONS,
  WITHDRAWN_BY_SIGNER,
} from '@/lib/review'
import {
  getMembership,
  mayInProject,
  mayOnRevision,
  type PersonRights,
  type RevisionScope,
  readStage,
} from '../records/authorization'
import { listCheckedLimits } from '../records/effective-limits'
import { gatherArtworkFacts } from '../records/evaluation'
import { listReplaced } from '../records/issued-revision'
import { areSameProfiles, isBehindCatalogue, type LoadedRevision } from '../records/loaded-revision'
import { toAttachmentView, toCompanyView, toPersonView } from '../records/part-views'
import type { RevisionRecord } from '../records/revision-record'
import { readGrant } from '../records/signature-grant'
import { getSigningStatement } from '../records/signing-statement'
import { makeSnapshot } from '../records/snapshot'
import { getStandingContent } from '../records/standing-content'
import { readWord } from '../records/stored-words'
import { findTestedLives } from '../records/tested-lives'
import type { PackageView, RevisionRights, RevisionView, SignatureView } from '../views'
import { toDeclaredViews } from './declared-view'
import { listItemViews } from './item-view'
import { listProposalSummaries } from './proposal-view'
import { listReviewActionViews } from './review-action-view'
import { makeSignOffView } from './sign-off-view'
import { listThreadViews } from './thread-view'

const NO_RESULTS: Evaluation = {
  engineVersion: ENGINE_VERSION,
  designName: '',
  zones: [],
  bends: [],
  conductors: [],
  damage: [],
  items: [],
  headlineQuantities: [],
}

/** What the screens of a revision show to this person. */
export function toRevisionView(
  loaded: LoadedRevision,
  bases: ReadonlyMap<string, Design>,
  rights: PersonRights,
  scope: RevisionScope,
): RevisionView {
  const { record, design } = loaded
  const { fabricatorCompanyId, subject } = scope
  const { snapshot, limits } = makeSnapshot(loaded, fabricatorCompanyId)
  const threads = listThreadViews(loaded, bases, rights, scope)
  const isTeam = fabricatorCompanyId === null
  const may = listRights(rights, subject, snapshot)
  const editorIds = new Set(snapshot.editors.map(({ userId }) => userId))
  const evaluationRow = record.evaluations[0]
  return {
    id: record.id,
    project: { id: record.projectId, name: record.project.name },
    label: record.label,
    stage: snapshot.stage,
    stageSince: record.stageSince.toISOString(),
    version: record.version,
    designVersion: record.designVersion,
    design,
    designHash: record.designHash,
    createdAt: record.createdAt.toISOString(),
    createdBy: toPersonView(record, record.createdById),
    basedOn: record.basedOn,
    supersededBy: record.supersededBy,
    editors: snapshot.editors.map(({ userId, name }) => ({ id: userId, name })),
    evaluation: snapshot.evaluation?.results ?? { ...NO_RESULTS, designName: design.name },
    evaluationRecord: {
      recordedAt: (evaluationRow?.createdAt ?? record.createdAt).toISOString(),
      engineVersion: snapshot.evaluation?.engineVersion ?? ENGINE_VERSION,
      staleBecause: listStaleness(loaded, snapshot),
    },
    limits,
    testedLives: findTestedLives(loaded, fabricatorCompanyId),
    artworkFacts: gatherArtworkFacts(loaded),
    checkedLimits: isTeam ? listCheckedLimits(loaded.sheets) : [],
    template: {
      version: loaded.template.version,
      latestVersion: loaded.latestTemplateVersion,
      // The reasons beside limits and the specimens of flex tests are the workspace's own business; what is in force stands above.
      content: shareContent(loaded),
      profiles: loaded.template.review.profiles ?? [],
      isBehind: isBehindCatalogue(loaded),
      switchedOff: loaded.template.catalogue.switchedOff,
    },
    items: listItemViews({ record, snapshot, rights, subject, fabricatorCompanyId, threads }),
    threads,
    actions: listReviewActionViews(record, rights, subject),
    proposals: listProposalSummaries(record, rights, subject),
    artwork: record.artwork.map((file) => toAttachmentView(record, file)),
    ...toDeclaredViews({ loaded, snapshot, bases, may, fabricatorCompanyId }),
    signatures: record.signatures.map((signature) =>
      toSignatureView(record, signature, {
        fabricatorCompanyId,
        isVisible: (userId) => isTeam || editorIds.has(userId),
        mayWithdraw:
          signature.voidedAt === null &&
          isAllowed(rights, 'signature:withdraw', { ...subject, kind: 'signature', signerId: signature.signerId }),
      }),
    ),
    stageMoves: record.stageMoves.map((move) => ({
      from: readStage(move.fromStage),
      to: readStage(move.toStage),
      reason: move.reason,
      by: toPersonView(record, move.movedById),
      at: move.movedAt.toISOString(),
    })),
    sharedWith: record.shares
      .filter(({ companyId }) => isTeam || companyId === fabricatorCompanyId)
      .map(({ company }) => toCompanyView(company)),
    package: may.downloadPackage ? findPackageView(record, fabricatorCompanyId) : null,
    release: readRelease(record),
    wouldReplace: may.release ? (listReplaced(loaded)[0]?.label ?? null) : null,
    blockers: findBlockers(snapshot),
    signingBlockers: may.sign ? findSigningBlockers(snapshot, rights.userId) : [],
    contentHash: isTeam ? getStandingContent(loaded, snapshot).contentHash : '',
    signingCapacities: listSigningCapacities(snapshot, rights),
    signOff: makeSignOffView(loaded, snapshot, rights, subject),
    statement: isTeam ? getSigningStatement(snapshot) : '',
    signingSummary: may.sign ? summarizeSigning(snapshot, findLastSignature(record)) : null,
    may,
    role: getMembership(rights, record.projectId)?.role ?? null,
  }
}

function listRights(rights: PersonRights, subject: RevisionSubject, snapshot: ReviewSnapshot): RevisionRights {
  const may = (action: Parameters<typeof mayOnRevision>[1]) => mayOnRevision(rights, action, subject)
  const moves = TRANSITIONS[subject.stage]
  const hasCapacity = listSigningCapacities(snapshot, rights).length > 0
  return {
    edit: may('revision:edit'),
    answer: snapshot.items.some(({ answeredBy }) =>
      isAllowed(rights, 'item:answer', { ...subject, kind: 'item', answeredBy }),
    ),
    comment: may('revision:comment'),
    raiseQuery: may('revision:raise-query'),
    proposeWaiver: may('waiver:propose'),
    approveWaiver: isAllowed(rights, 'waiver:decline', {
      ...subject,
      kind: 'waiver',
      isIndependent: true,
    }),
    declare: may('declaration:make'),
    decideConditions: may('condition:decide'),
    chooseFabricators: may('release:choose-fabricators'),
    propose: may('proposal:make'),
    decideProposal: may('proposal:decide'),
    takeOnAction: may('review-action:take-on'),
    advance: moves.advance !== undefined && moves.advance !== 'released' && may('stage:move'),
    sendBack: moves['send-back'] !== undefined && may('stage:move'),
    withdraw: may('revision:withdraw'),
    sign: mayOnRevision(rights, 'revision:sign', { ...subject, hasCapacity }),
    review: may('review:declare'),
    release: may('revision:release'),
    share: may('revision:share'),
    keepConstruction: may('construction:keep'),
    copy: mayInProject(rights, 'revision:create', subject.projectId),
    downloadPackage: may('package:download'),
    viewTrail: may('revision:view-trail'),
    viewMinutes: may('minutes:view'),
  }
}

/** Readers of a revision get neither profiles that it does not follow nor the limits of any. */
function shareContent({ template }: LoadedRevision): CatalogueEdition {
  const { content, catalogue } = template
  const { profiles: _all, flexTests: _specimens, ...others } = content
  const own = catalogue.profiles.filter(({ id }) => content.profiles?.some((profile) => profile.id === id) === true)
  return {
    ...others,
    limits: [],
    ...(own.length === 0 ? {} : { profiles: own.map((profile) => ({ ...structuredClone(profile), limits: [] })) }),
  } as CatalogueEdition
}

function listStaleness(loaded: LoadedRevision, snapshot: ReviewSnapshot): string[] {
  const { designHash } = loaded.record
  const { evaluation } = snapshot
  if (evaluation === null) return ['nothing has been evaluated yet']
  const reasons: string[] = []
  if (evaluation.designHash !== designHash) reasons.push('the design changed')
  if (evaluation.limitsHash !== snapshot.limitsHash) reasons.push('limits in force, or sheets of a fabricator, changed')
  if (evaluation.engineVersion !== snapshot.engineVersion) {
    reasons.push(
      `the results come from engine ${evaluation.engineVersion}; the current one is ${snapshot.engineVersion}`,
    )
  }
  if (isOpenStage(snapshot.stage) && !areSameProfiles(loaded.template.profileIds, loaded.projectProfileIds)) {
    reasons.push('the project now follows other profiles')
  }
  return reasons
}

interface SignatureViewer {
  readonly fabricatorCompanyId: string | null
  /** Whether the person asking may learn who voided it. */
  readonly isVisible: (userId: string) => boolean
  readonly mayWithdraw: boolean
}

function toSignatureView(
  record: RevisionRecord,
  row: RevisionRecord['signatures'][number],
  { fabricatorCompanyId, isVisible, mayWithdraw }: SignatureViewer,
): SignatureView {
  return {
    id: row.id,
    signer: { id: row.signerId, name: row.signerName },
    capacity: row.capacity,
    grantedBy: row.grantJson === null ? null : readGrant(row.grantJson).grantedByName,
    statement: row.statement,
    contentHash: row.contentHash,
    signedAt: row.signedAt.toISOString(),
    mayWithdraw,
    voidedAt: row.voidedAt?.toISOString() ?? null,
    isWithdrawn: row.voidReason?.startsWith(WITHDRAWN_BY_SIGNER) === true,
    voidedBy: row.voidedById === null || !isVisible(row.voidedById) ? null : toPersonView(record, row.voidedById),
    voidReason: row.voidReason,
    changes: readVoidingChanges(row.changesJson, fabricatorCompanyId),
  }
}

/** The last signature that was given, voided or not, with the content that was kept with it. */
function findLastSignature({ signatures }: RevisionRecord) {
  const last = signatures.at(-1)
  if (last === undefined) return null
  return { name: last.signerName, signedAt: last.signedAt.toISOString(), content: readSignedContent(last.contentJson) }
}

/** The edition of the package that is the person's: the team's, or its own company's. */
export function findPackageRow(record: Pick<RevisionRecord, 'packages'>, fabricatorCompanyId: string | null) {
  return record.packages.find(({ audience }) => audience === (fabricatorCompanyId ?? 'team')) ?? null
}

function findPackageView(record: RevisionRecord, fabricatorCompanyId: string | null): PackageView | null {
  const row = findPackageRow(record, fabricatorCompanyId)
  if (row === null) return null
  return {
    sha256: row.sha256,
    sizeBytes: row.sizeBytes,
    fileName: makePackageName(record, row.releasedAt),
    releasedBy: toPersonView(record, row.releasedById),
    releasedAt: row.releasedAt.toISOString(),
  }
}

function readRelease({ release }: RevisionRecord): RevisionView['release'] {
  if (release === null) return null
  const { isConditional, quantityLimit, validUntil, conditions, changeNumber, reason, effectivity } = release
  return {
    isConditional,
    purpose: release.purpose === null ? null : readWord(release.purpose, RELEASE_PURPOSES, 'purpose of a release'),
    quantityLimit,
    validUntil,
    conditions,
    changeNumber,
    reason,
    effectivity,
    replaces: release.replaces?.label ?? null,
  }
}

/** Part number, revision and day of the release: what people file a package by. */
export function makePackageName({ release, project, label }: RevisionRecord, releasedAt: Date): string {
  const partNumber = release?.partNumber ?? ''
  const day = releasedAt.toISOString().slice(0, 10)
  return makeFileName([partNumber === '' ? project.name : partNumber, label, day], 'package.zip')
}

/** A file name that every system takes, from names that people typed. */
export function makeFileName(parts: readonly string[], ending: string): string {
  const words = parts.map((part) =>
    part
      .normalize('NFKD')
      .replaceAll(/[^A-Za-z0-9]+/g, '-')
      .replaceAll(/^-+|-+$/g, '')
      .toLowerCase(),
  )
  return [...words.filter((word) => word !== ''), ending].join('-')
}
