import 'server-only'
import type { Prisma } from '../generated/sqlite/client'
import type { TransactionClient } from '../store/client'
import { type Among, type Part, type RowsOf, readTogether } from '../store/read-together'

/**
 * A revision with everything that belongs to it, as stored. The one place that says what is loaded; views and
 * snapshots are made from it and never load more. Companies and related revisions are not included at each place: one statement reads them all.
 * It is the shape and the order; a test holds `loadRevisionRows` to what the client gives for it.
 */
export const REVISION_RECORD = {
  project: {
    include: {
      memberships: { orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] },
      capacityGrants: { where: { withdrawnAt: null }, orderBy: [{ grantedAt: 'asc' }, { id: 'asc' }] },
      // What is in force: a release of the same part number replaces it.
      revisions: {
        where: { stage: 'released' },
        select: { id: true, label: true, issue: { select: { partNumber: true } } },
        orderBy: [{ stageSince: 'desc' }, { id: 'asc' }],
      },
    },
  },
  edits: { orderBy: [{ version: 'asc' }, { id: 'asc' }] },
  shares: { orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] },
  answers: { include: { history: { orderBy: { version: 'asc' } } }, orderBy: { itemId: 'asc' } },
  waivers: { orderBy: [{ proposedAt: 'asc' }, { id: 'asc' }] },
  threads: {
    include: {
      comments: {
        include: {
          edits: { orderBy: { version: 'asc' } },
          attachments: { orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] },
        },
        orderBy: { ordinal: 'asc' },
      },
    },
    orderBy: [{ openedAt: 'asc' }, { id: 'asc' }],
  },
  attachments: { where: { removedAt: null }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] },
  artwork: { where: { removedAt: null }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] },
  artworkRoles: { where: { withdrawnAt: null }, orderBy: [{ setAt: 'asc' }, { id: 'asc' }] },
  declarations: {
    include: { conditions: { orderBy: { ordinal: 'asc' } } },
    orderBy: [{ madeAt: 'asc' }, { id: 'asc' }],
  },
  reviewStatements: { orderBy: [{ madeAt: 'asc' }, { id: 'asc' }] },
  acknowledgements: { where: { withdrawnAt: null }, orderBy: [{ acknowledgedAt: 'asc' }, { id: 'asc' }] },
  exclusions: { orderBy: [{ takenOffAt: 'asc' }, { id: 'asc' }] },
  proposals: { orderBy: [{ proposedAt: 'asc' }, { id: 'asc' }] },
  actions: { orderBy: { number: 'asc' } },
  signatures: { orderBy: [{ signedAt: 'asc' }, { id: 'asc' }] },
  stageMoves: { orderBy: [{ movedAt: 'asc' }, { id: 'asc' }] },
  packages: { orderBy: { id: 'asc' } },
  release: true,
} as const satisfies Prisma.RevisionInclude

export type RevisionRow = Prisma.RevisionGetPayload<{ include: typeof REVISION_RECORD }>

/** More at once would be more parameters than SQLite takes in one statement. */
const MOST_AT_ONCE = 400

/** Those that there are, in no order, with the newest results of each: one statement. */
export async function loadRevisionRows(tx: TransactionClient, revisionIds: readonly string[]) {
  const rows: RevisionRow[] = []
  const evaluations: Prisma.EvaluationGetPayload<object>[] = []
  for (let at = 0; at < revisionIds.length; at += MOST_AT_ONCE) {
    const some = await loadSome(tx, revisionIds.slice(at, at + MOST_AT_ONCE))
    rows.push(...some.rows)
    evaluations.push(...some.evaluations)
  }
  return { rows, evaluations }
}

async function loadSome(tx: TransactionClient, revisionIds: readonly string[]) {
  const found = await readTogether(tx, listParts(revisionIds))
  return { rows: assemble(found), evaluations: found.evaluations }
}

function listParts(revisionIds: readonly string[]) {
  const own = { among: { revisionId: revisionIds } }
  const idsOf = (model: Prisma.ModelName): Among => ({ model, column: 'id', where: own })
  const projectIds: Among = { model: 'Revision', column: 'projectId', where: { among: { id: revisionIds } } }
  const releasedIds: Among = {
    model: 'Revision',
    column: 'id',
    where: { among: { projectId: projectIds }, equals: { stage: 'released' } },
  }
  const commentIds: Among = { model: 'Comment', column: 'id', where: { among: { threadId: idsOf('Thread') } } }
  return {
    revisions: { model: 'Revision', among: { id: revisionIds } },
    projects: { model: 'Project', among: { id: projectIds } },
    memberships: { model: 'Membership', among: { projectId: projectIds } },
    grants: { model: 'CapacityGrant', among: { projectId: projectIds }, isNull: ['withdrawnAt'] },
    released: { model: 'Revision', only: ['id', 'projectId', 'label', 'stageSince'], among: { id: releasedIds } },
    issues: { model: 'IssuedRevision', only: ['revisionId', 'partNumber'], among: { revisionId: releasedIds } },
    edits: { model: 'Edit', ...own },
    shares: { model: 'RevisionShare', ...own },
    answers: { model: 'Answer', ...own },
    history: { model: 'AnswerHistory', among: { answerId: idsOf('Answer') } },
    waivers: { model: 'Waiver', ...own },
    threads: { model: 'Thread', ...own },
    comments: { model: 'Comment', among: { threadId: idsOf('Thread') } },
    commentEdits: { model: 'CommentEdit', among: { commentId: commentIds } },
    commentFiles: { model: 'Attachment', among: { commentId: commentIds } },
    attachments: { model: 'Attachment', ...own, isNull: ['removedAt'] },
    artwork: { model: 'Artwork', ...own, isNull: ['removedAt'] },
    artworkRoles: { model: 'ArtworkRole', ...own, isNull: ['withdrawnAt'] },
    declarations: { model: 'Declaration', ...own },
    conditions: { model: 'DeclarationCondition', among: { declarationId: idsOf('Declaration') } },
    reviewStatements: { model: 'ReviewStatement', ...own },
    acknowledgements: { model: 'DifferenceAcknowledgement', ...own, isNull: ['withdrawnAt'] },
    exclusions: { model: 'ReleaseExclusion', ...own },
    proposals: { model: 'Proposal', ...own },
    actions: { model: 'ReviewAction', ...own },
    signatures: { model: 'Signature', ...own },
    stageMoves: { model: 'StageMove', ...own },
    packages: { model: 'Package', ...own },
    releases: { model: 'Release', ...own },
    // Earlier ones stay where they are: each holds all results of its day.
    evaluations: { model: 'Evaluation', ...own, latest: { by: ['revisionId'], number: 'ordinal' } },
  } as const satisfies Readonly<Record<string, Part>>
}

function assemble(found: RowsOf<ReturnType<typeof listParts>>): RevisionRow[] {
  const history = group(found.history, 'answerId', ['version'])
  const conditions = group(found.conditions, 'declarationId', ['ordinal'])
  const commentEdits = group(found.commentEdits, 'commentId', ['version'])
  const commentFiles = group(found.commentFiles, 'commentId', ['createdAt', 'id'])
  const comments = group(
    found.comments.map((comment) => ({
      ...comment,
      edits: commentEdits(comment.id),
      attachments: commentFiles(comment.id),
    })),
    'threadId',
    ['ordinal'],
  )
  const memberships = group(found.memberships, 'projectId', ['createdAt', 'id'])
  const grants = group(found.grants, 'projectId', ['grantedAt', 'id'])
  const issues = new Map(found.issues.map((issue) => [issue.revisionId, { partNumber: issue.partNumber }]))
  const released = group(found.released, 'projectId', ['id'])
  const projects = new Map(
    found.projects.map((project) => {
      const revisions = [...released(project.id)]
        .sort((one, other) => other.stageSince.getTime() - one.stageSince.getTime())
        .map(({ id, label }) => ({ id, label, issue: issues.get(id) ?? null }))
      const { id } = project
      return [id, { ...project, memberships: memberships(id), capacityGrants: grants(id), revisions }] as const
    }),
  )
  const of = {
    edits: group(found.edits, 'revisionId', ['version', 'id']),
    shares: group(found.shares, 'revisionId', ['createdAt', 'id']),
    answers: group(
      found.answers.map((answer) => ({ ...answer, history: history(answer.id) })),
      'revisionId',
      ['itemId'],
    ),
    waivers: group(found.waivers, 'revisionId', ['proposedAt', 'id']),
    threads: group(
      found.threads.map((thread) => ({ ...thread, comments: comments(thread.id) })),
      'revisionId',
      ['openedAt', 'id'],
    ),
    attachments: group(found.attachments, 'revisionId', ['createdAt', 'id']),
    artwork: group(found.artwork, 'revisionId', ['createdAt', 'id']),
    artworkRoles: group(found.artworkRoles, 'revisionId', ['setAt', 'id']),
    declarations: group(
      found.declarations.map((declaration) => ({ ...declaration, conditions: conditions(declaration.id) })),
      'revisionId',
      ['madeAt', 'id'],
    ),
    reviewStatements: group(found.reviewStatements, 'revisionId', ['madeAt', 'id']),
    acknowledgements: group(found.acknowledgements, 'revisionId', ['acknowledgedAt', 'id']),
    exclusions: group(found.exclusions, 'revisionId', ['takenOffAt', 'id']),
    proposals: group(found.proposals, 'revisionId', ['proposedAt', 'id']),
    actions: group(found.actions, 'revisionId', ['number']),
    signatures: group(found.signatures, 'revisionId', ['signedAt', 'id']),
    stageMoves: group(found.stageMoves, 'revisionId', ['movedAt', 'id']),
    packages: group(found.packages, 'revisionId', ['id']),
    release: new Map(found.releases.map((release) => [release.revisionId, release])),
  }
  return found.revisions.flatMap((revision) => {
    const project = projects.get(revision.projectId)
    if (project === undefined) return []
    const { id } = revision
    return [
      {
        ...revision,
        project,
        edits: of.edits(id),
        shares: of.shares(id),
        answers: of.answers(id),
        waivers: of.waivers(id),
        threads: of.threads(id),
        attachments: of.attachments(id),
        artwork: of.artwork(id),
        artworkRoles: of.artworkRoles(id),
        declarations: of.declarations(id),
        reviewStatements: of.reviewStatements(id),
        acknowledgements: of.acknowledgements(id),
        exclusions: of.exclusions(id),
        proposals: of.proposals(id),
        actions: of.actions(id),
        signatures: of.signatures(id),
        stageMoves: of.stageMoves(id),
        packages: of.packages(id),
        release: of.release.get(id) ?? null,
      },
    ]
  })
}

/** Rows by a column, each list in the order of other columns, first ones first. */
function group<T extends object>(rows: readonly T[], key: keyof T, order: readonly (keyof T)[]): (id: string) => T[] {
  const groups = new Map<unknown, T[]>()
  for (const row of rows) {
    const list = groups.get(row[key])
    if (list === undefined) groups.set(row[key], [row])
    else list.push(row)
  }
  for (const list of groups.values()) list.sort((one, other) => compare(one, other, order))
  return (id) => groups.get(id) ?? []
}

function compare<T extends object>(one: T, other: T, order: readonly (keyof T)[]): number {
  for (const column of order) {
    const [a, b] = [one[column], other[column]] as readonly [string | number | Date, string | number | Date]
    if (a < b) return -1
    if (a > b) return 1
  }
  return 0
}
