import 'server-only'
import { getSecrets, now } from '@/lib/config'
import type { ReleaseInput } from '@/lib/inputs'
import { runJob } from '@/lib/jobs'
import { buildPackage, makeDrawingSource, type PackageContent } from '@/lib/package'
import { ACT_MEANINGS, decideTransition, hashSignedContent, type ReviewSnapshot } from '@/lib/review'
import { readTrailRow } from '../../consequences/trail'
import { findEarlierAnswer, type WriteContext, write } from '../../consequences/write'
import { read } from '../../reads/read'
import { type Actor, type PersonRights, requireRevisionInView } from '../../records/authorization'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { loadCompanyIds } from '../../records/merged-companies'
import { makeSnapshot } from '../../records/snapshot'
import { findPackedFlexTests } from '../../records/tested-lives'
import { listCheckpoints } from '../../records/trail-checkpoints'
import type { TransactionClient } from '../../store/client'
import { computing } from '../../store/computations'
import { outcomeOf, refuseClash } from '../../store/errors'
import { keepFile, readKeptFile } from '../../store/file-store'
import type { ActResult } from '../../views'
import { type ConfirmedBy, confirmPerson, requireConfirmed } from '../access/confirmation'
import { notingRefusals } from '../access/confirmed-write'
import { requireRevisionSeen, storeMove, unwrap } from './stage-moves'

export interface ReleasedRevision {
  readonly packageSha256: string
  readonly version: number
}

interface Edition {
  readonly audience: string
  readonly sha256: string
  readonly sizeBytes: number
}

interface Prepared {
  readonly contentHash: string
  readonly at: Date
  readonly editions: readonly Edition[]
}

/**
 * Releases a signed revision: builds the package, for the team and for each fabricator an edition of its own, moves the
 * revision, and supersedes earlier releases of the project.
 *
 * Building takes a second or so, longer than a transaction should hold everybody up. So the decision is taken twice: on
 * the content that is packed, and again in the transaction that releases exactly that content.
 */
export function releaseRevision(actor: Actor, input: ReleaseInput): Promise<ActResult<ReleasedRevision>> {
  return notingRefusals(actor, 'release', input, () => release(actor, input))
}

async function release(actor: Actor, input: ReleaseInput): Promise<ActResult<ReleasedRevision>> {
  const confirmed = await outcomeOf(() => confirmPerson(actor, input))
  if (!confirmed.ok) return confirmed
  const prepared = await outcomeOf(() => prepare(actor, input))
  if (!prepared.ok) return prepared
  return write(actor, 'release-revision', input, async (context) => {
    // Only an earlier request with the same key skips the preparation, and `write` has answered that one already.
    if (prepared.value === null) throw new Error('a release was asked for that was not prepared')
    const confirmedBy = await requireConfirmed(context, confirmed.value)
    return store(context, input, { ...prepared.value, confirmedBy })
  })
}

async function prepare(actor: Actor, input: ReleaseInput): Promise<Prepared | null> {
  const found = await read(actor, async ({ tx, rights }) => {
    if ((await findEarlierAnswer(tx, actor.userId, 'release-revision', input)) !== null) return null
    const { loaded, snapshot } = await decide(tx, rights, input)
    const rows = await tx.trailRecord.findMany({
      where: { revisionId: loaded.record.id },
      orderBy: { sequence: 'asc' },
    })
    // The newest vouches for all before it; the whole list would tell how busy the workspace is.
    const checkpoints = (await listCheckpoints(tx)).slice(-1)
    const ownIds = await loadCompanyIds(
      tx,
      snapshot.sharedWith.map(({ companyId }) => companyId),
    )
    return { loaded, snapshot, byName: rights.name, trail: rows.map(readTrailRow), checkpoints, ownIds }
  })
  if (found === null) return null
  const { loaded, snapshot, byName, trail, checkpoints, ownIds } = found
  const at = now()
  const artwork = await Promise.all(
    snapshot.artwork.map(async ({ sha256 }) => ({ sha256, bytes: await readKeptFile(sha256) })),
  )
  const common = {
    workspaceName: loaded.workspace.name,
    release: { at: at.toISOString(), byName, byUserId: actor.userId },
    artwork,
    checkpoints,
    drawing: makeDrawingSource(snapshot, loaded.workspace.name, at.toISOString(), actor.userId),
  }
  const team: PackageContent = {
    ...common,
    snapshot,
    edition: { kind: 'team' },
    flexTests: findPackedFlexTests(loaded, null, snapshot.evaluation?.results ?? null),
    signedContent: findSignedContent(loaded),
    trail,
  }
  const editions = [await build('team', team)]
  for (const { companyId, companyName } of snapshot.sharedWith) {
    // It gets no package of a release that it was taken off.
    if (snapshot.takenOff.some((off) => off.companyId === companyId)) continue
    const own = await computing(() => makeSnapshot(loaded, companyId).snapshot)
    const content: PackageContent = {
      ...common,
      snapshot: own,
      edition: { kind: 'fabricator', companyId, companyName },
      flexTests: findPackedFlexTests(loaded, companyId, own.evaluation?.results ?? null),
      signedContent: null,
      trail: trail.filter(
        ({ subject }) => subject.companyId === null || ownIds.get(companyId)?.includes(subject.companyId) === true,
      ),
    }
    editions.push(await build(companyId, content))
  }
  return { contentHash: hashSignedContent(snapshot), at, editions }
}

/** The revision, when it can be released now by this person who saw it as it is. */
async function decide(
  tx: TransactionClient,
  rights: PersonRights,
  input: ReleaseInput,
): Promise<{ loaded: LoadedRevision; snapshot: ReviewSnapshot }> {
  const { revision, fabricatorCompanyId } = await requireRevisionInView(tx, rights, input.revisionId)
  const loaded = await loadRevision(tx, revision.id)
  const { snapshot } = makeSnapshot(loaded, null)
  const change = unwrap(decideTransition(snapshot, rights, { move: 'advance' }))
  if (!change.isRelease) refuseClash('A revision is released from the stage "awaiting signature".')
  requireRevisionSeen(loaded, input.seenVersion, fabricatorCompanyId)
  return { loaded, snapshot }
}

function findSignedContent({ record }: LoadedRevision): string | null {
  return record.signatures.find(({ voidedAt }) => voidedAt === null)?.contentJson ?? null
}

async function build(audience: string, content: PackageContent): Promise<Edition> {
  const { signingKeyPem, verifyingKeyPem } = getSecrets()
  const keys = { signingKeyPem, verifyingKeyPem }
  return {
    audience,
    ...(await keepFile(await buildPackage(content, keys, (order) => runJob('documents', order)))),
  }
}

async function store(
  context: WriteContext,
  input: ReleaseInput,
  prepared: Prepared & { readonly confirmedBy: ConfirmedBy },
): Promise<ReleasedRevision> {
  const { tx, rights, record } = context
  const { loaded, snapshot } = await decide(tx, rights, input)
  const { id: revisionId, projectId, label } = loaded.record
  if (hashSignedContent(snapshot) !== prepared.contentHash) {
    throw new Error('the content changed under the same version')
  }
  for (const { audience, sha256, sizeBytes } of prepared.editions) {
    await tx.package.create({
      data: {
        revisionId,
        audience,
        sha256,
        sizeBytes,
        contentHash: prepared.contentHash,
        releasedById: rights.userId,
        releasedAt: prepared.at,
      },
    })
  }
  const packageSha256 = prepared.editions.find(({ audience }) => audience === 'team')?.sha256 ?? ''
  const { version } = await storeMove(context, loaded, { from: snapshot.stage, to: 'released', reason: '' })
  await record({
    action: 'revision-released',
    subject: { kind: 'revision', id: revisionId },
    projectId,
    revisionId,
    details: {
      contentHash: prepared.contentHash,
      packageSha256,
      meaning: ACT_MEANINGS.release,
      confirmedBy: prepared.confirmedBy,
    },
  })
  await supersedeEarlier(context, { revisionId, projectId, label })
  return { packageSha256, version }
}

async function supersedeEarlier(
  context: WriteContext,
  released: { readonly revisionId: string; readonly projectId: string; readonly label: string },
): Promise<void> {
  const { tx } = context
  const earlier = await tx.revision.findMany({
    where: { projectId: released.projectId, stage: 'released', id: { not: released.revisionId } },
    select: { id: true },
    orderBy: { createdAt: 'asc' },
  })
  for (const { id } of earlier) {
    await storeMove(context, await loadRevision(tx, id), {
      from: 'released',
      to: 'superseded',
      reason: `revision ${released.label} was released`,
    })
    await tx.revision.update({ where: { id }, data: { supersededById: released.revisionId } })
  }
}
