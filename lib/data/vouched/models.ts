import 'server-only'

/** Content of one row, as the database client reads it. */
export type VouchedRow = Readonly<Record<string, unknown>>

/** A table whose rows the trail vouches for: each record carries hashes of the rows that its act left behind. */
export interface VouchedModel {
  /** As the models name it. */
  readonly model: string
  /** The word for a row of it, in records and reports. */
  readonly kind: string
  readonly key: string
  /** What the hash covers. */
  readonly columns: readonly string[]
  /**
   * Columns that came after hashes were first kept, with the value that older rows were given: a row that still has it
   * hashes as it did before. Columns that are null in older rows need no entry.
   */
  readonly later?: Readonly<Record<string, string | number | boolean>>
  /** Columns that no hash covers, and why. */
  readonly open?: Readonly<Record<string, string>>
  /** What tells this row from others, for a reader. */
  readonly name: (row: VouchedRow) => string
}

const by = (column: string) => (row: VouchedRow) => `"${String(row[column])}"`

const OWN_SECRET = 'a secret of one person, which changes without anybody else'
const OWN_CHOICE = 'a choice of one person about the own account'

/** Tables in the order of the models. Every table is here or in UNVOUCHED_MODELS: a test compares both with the models. */
export const VOUCHED_MODELS: readonly VouchedModel[] = [
  {
    model: 'Workspace',
    kind: 'workspace',
    key: 'id',
    columns: ['id', 'name', 'settingsJson', 'version', 'createdAt'],
    name: by('name'),
  },
  {
    model: 'Company',
    kind: 'company',
    key: 'id',
    columns: ['id', 'kind', 'name', 'nameKey', 'createdAt'],
    name: by('name'),
  },
  {
    model: 'User',
    kind: 'account',
    key: 'id',
    columns: ['id', 'email', 'name', 'isAdmin', 'disabledAt', 'createdAt'],
    open: {
      passwordHash: OWN_SECRET,
      sessionVersion: 'ends sessions and gives no right',
      isDemo: 'set by the program that plays the demonstration, and takes rights away',
      mailOffJson: OWN_CHOICE,
    },
    name: by('name'),
  },
  {
    model: 'Project',
    kind: 'project',
    key: 'id',
    columns: ['id', 'name', 'nameKey', 'description', 'createdById', 'createdAt'],
    name: by('name'),
  },
  {
    model: 'Membership',
    kind: 'membership',
    key: 'id',
    columns: ['id', 'userId', 'projectId', 'companyId', 'role', 'createdAt'],
    name: (row) => `as ${String(row.role)}`,
  },
  {
    model: 'Invitation',
    kind: 'invitation',
    key: 'id',
    columns: [
      'id',
      'tokenHash',
      'email',
      'role',
      'projectId',
      'companyId',
      'createdById',
      'createdAt',
      'expiresAt',
      'usedAt',
      'usedById',
      'revokedAt',
    ],
    name: (row) => `of a ${String(row.role)}`,
  },
  {
    model: 'Revision',
    kind: 'revision',
    key: 'id',
    columns: [
      'id',
      'projectId',
      'label',
      'labelKey',
      'stage',
      'designJson',
      'designHash',
      'designVersion',
      'version',
      'basedOnId',
      'supersededById',
      'createdById',
      'createdAt',
      'stageSince',
      'templateVersion',
    ],
    name: by('label'),
  },
  {
    model: 'Edit',
    kind: 'edit',
    key: 'id',
    columns: ['id', 'revisionId', 'userId', 'companyId', 'part', 'version', 'summaryJson', 'at'],
    name: (row) => `of the ${String(row.part)}`,
  },
  {
    model: 'RevisionShare',
    kind: 'share',
    key: 'id',
    columns: ['id', 'revisionId', 'companyId', 'sharedById', 'createdAt', 'lookedAt', 'lookedJson'],
    name: (row) => `with the company ${String(row.companyId)}`,
  },
  {
    model: 'Evaluation',
    kind: 'results',
    key: 'id',
    columns: [
      'id',
      'revisionId',
      'ordinal',
      'designHash',
      'limitsHash',
      'inputsHash',
      'engineVersion',
      'resultsJson',
      'createdAt',
    ],
    name: (row) => `${String(row.ordinal)}`,
  },
  {
    model: 'Answer',
    kind: 'answer',
    key: 'id',
    columns: [
      'id',
      'revisionId',
      'itemId',
      'state',
      'reason',
      'version',
      'answeredById',
      'companyId',
      'answeredAt',
      'basisDesignHash',
      'basisArtworkHash',
      'carriedFromId',
    ],
    name: (row) => `to ${String(row.itemId)}`,
  },
  {
    model: 'AnswerHistory',
    kind: 'earlier answer',
    key: 'id',
    columns: ['id', 'answerId', 'version', 'state', 'reason', 'userId', 'companyId', 'at'],
    name: (row) => `${String(row.version)} of the answer ${String(row.answerId)}`,
  },
  {
    model: 'DesignState',
    kind: 'design state',
    key: 'hash',
    columns: ['hash', 'designJson', 'createdAt'],
    name: () => 'that answers and proposals refer to',
  },
  {
    model: 'Proposal',
    kind: 'proposal',
    key: 'id',
    columns: [
      'id',
      'revisionId',
      'companyId',
      'title',
      'patchJson',
      'baseVersion',
      'baseHash',
      'state',
      'threadId',
      'proposedById',
      'proposedByCompanyId',
      'proposedAt',
      'decidedById',
      'decidedAt',
      'decisionNote',
      'madeVersion',
    ],
    name: by('title'),
  },
  {
    model: 'Waiver',
    kind: 'waiver',
    key: 'id',
    columns: [
      'id',
      'revisionId',
      'itemId',
      'state',
      'reason',
      'basisHash',
      'proposedById',
      'proposedAt',
      'decidedById',
      'decidedAt',
      'decisionNote',
    ],
    name: (row) => `of ${String(row.itemId)}`,
  },
  {
    model: 'Thread',
    kind: 'thread',
    key: 'id',
    columns: [
      'id',
      'revisionId',
      'companyId',
      'openedByCompanyId',
      'anchorKind',
      'anchorId',
      'anchorLabel',
      'anchorXMm',
      'anchorYMm',
      'kind',
      'title',
      'state',
      'openedById',
      'openedAt',
      'answeredById',
      'answeredAt',
      'closedById',
      'closedAt',
      'closeReason',
      'version',
    ],
    name: by('title'),
  },
  {
    model: 'Comment',
    kind: 'comment',
    key: 'id',
    columns: [
      'id',
      'threadId',
      'ordinal',
      'authorId',
      'companyId',
      'text',
      'isAnswer',
      'version',
      'createdAt',
      'editedAt',
    ],
    name: (row) => `${String(row.ordinal)} of the thread ${String(row.threadId)}`,
  },
  {
    model: 'CommentEdit',
    kind: 'earlier comment',
    key: 'id',
    columns: ['id', 'commentId', 'version', 'text', 'at'],
    name: (row) => `${String(row.version)} of the comment ${String(row.commentId)}`,
  },
  {
    model: 'Attachment',
    kind: 'attachment',
    key: 'id',
    columns: [
      'id',
      'revisionId',
      'itemId',
      'commentId',
      'sha256',
      'originalName',
      'sizeBytes',
      'mediaType',
      'uploadedById',
      'companyId',
      'createdAt',
      'removedAt',
    ],
    name: by('originalName'),
  },
  {
    model: 'Artwork',
    kind: 'artwork',
    key: 'id',
    columns: [
      'id',
      'revisionId',
      'sha256',
      'originalName',
      'sizeBytes',
      'mediaType',
      'uploadedById',
      'createdAt',
      'removedAt',
      'removedById',
    ],
    name: by('originalName'),
  },
  {
    model: 'Declaration',
    kind: 'declaration',
    key: 'id',
    columns: ['id', 'revisionId', 'companyId', 'isBuildable', 'note', 'contentHash', 'madeById', 'madeAt'],
    name: (row) => (row.isBuildable === true ? 'that it is buildable' : 'that it is not buildable'),
  },
  {
    model: 'Signature',
    kind: 'signature',
    key: 'id',
    columns: [
      'id',
      'revisionId',
      'signerId',
      'signerName',
      'capacity',
      'statement',
      'contentHash',
      'contentJson',
      'signedAt',
      'voidedAt',
      'voidedById',
      'voidReason',
      'changesJson',
    ],
    name: (row) => `of ${String(row.signerName)}`,
  },
  {
    model: 'StageMove',
    kind: 'stage move',
    key: 'id',
    columns: ['id', 'revisionId', 'fromStage', 'toStage', 'reason', 'movedById', 'movedAt'],
    name: (row) => `to ${String(row.toStage)}`,
  },
  {
    model: 'Package',
    kind: 'package',
    key: 'id',
    columns: ['id', 'revisionId', 'audience', 'sha256', 'sizeBytes', 'contentHash', 'releasedById', 'releasedAt'],
    name: (row) => `for ${String(row.audience)}`,
  },
  {
    model: 'Limit',
    kind: 'limit',
    key: 'id',
    columns: ['id', 'ownerKey', 'companyId', 'key', 'value', 'note', 'version', 'setById', 'setAt'],
    name: by('key'),
  },
  {
    model: 'FabricationSheet',
    kind: 'fabrication sheet',
    key: 'id',
    columns: ['id', 'companyId', 'kind', 'version', 'contentJson', 'issuedOn', 'note', 'setById', 'setAt'],
    name: (row) => `${String(row.kind)}, version ${String(row.version)}`,
  },
  {
    model: 'CatalogueTemplate',
    kind: 'catalogue',
    key: 'version',
    columns: ['version', 'contentJson', 'summary', 'reason', 'changedById', 'changedAt'],
    name: (row) => `version ${String(row.version)}`,
  },
]

/** Tables that no record vouches for, and why. */
export const UNVOUCHED_MODELS: Readonly<Record<string, string>> = {
  TrailRecord: 'the trail itself, which its own chain and the checkpoints hold together',
  TrailCheckpoint: 'signed one by one',
  IdempotencyKey: 'the memory of a request for some days',
  SignInAttempt: 'the memory of a failed sign-in for some minutes',
  MailMessage: 'what was sent is with the receiver; the state of sending changes by itself',
  DigestDay: 'the memory that a digest was dealt with',
}

const BY_MODEL = new Map(VOUCHED_MODELS.map((vouched) => [vouched.model, vouched]))

export function findVouchedModel(model: string | undefined): VouchedModel | null {
  return BY_MODEL.get(model ?? '') ?? null
}
