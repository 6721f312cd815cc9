import 'server-only'
import { now } from '@/lib/config'
import { type Design, readStoredDesign } from '@/lib/engine'
import type { ReleaseInput } from '@/lib/inputs'
import { runJob } from '@/lib/jobs'
import {
  assemblePackage,
  makeDrawingSource,
  makePackageParts,
  makeSignedPartFiles,
  type PackageContent,
  type PackageParts,
  signStatement,
} from '@/lib/package'
import {
  ACT_MEANINGS,
  compareDesigns,
  decideTransition,
  describeAction,
  describeTerms,
  findTermIssues,
  listItemStates,
  type ReleaseTerms,
  type TrailAction,
} from '@/lib/review'
import { readTrailRow } from '../../consequences/trail'
import { findEarlierAnswer, type WriteContext, write } from '../../consequences/write'
import { read } from '../../reads/read'
import { findPicture } from '../../records/artwork-picture'
import { type Actor, type PersonRights, requireRevisionInView } from '../../records/authorization'
import { listIssuedBefore, toRevisionEntry } from '../../records/issued-before'
import { findIssueBlockers, listReplaced, makeIssueKey } from '../../records/issued-revision'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { loadMeetings, loadNeeds } from '../../records/meeting-record'
import { loadCompanyIds } from '../../records/merged-companies'
import { loadSigningKeys, type SigningKeys } from '../../records/signing-keys'
import { makeSnapshot } from '../../records/snapshot'
import { getStandingContent } from '../../records/standing-content'
import { findPackedFlexTests } from '../../records/tested-lives'
import { askForTimeStamp } from '../../records/time-stamps'
import { listCheckpoints } from '../../records/trail-checkpoints'
import type { TransactionClient } from '../../store/client'
import { computing } from '../../store/computations'
import { outcomeOf, refuseBlocked, refuseClash, refuseInvalid } from '../../store/errors'
import { keepFile, readKeptFile } from '../../store/file-store'
import type { ActResult } from '../../views'
import { type ConfirmedBy, confirmPerson, requireConfirmed } from '../access/confirmation'
import { notingRefusals } from '../access/confirmed-write'
import { requireRevisionSeen, storeMove, unwrap } from './stage-moves'

export interface ReleasedRevision {
  readonly packageSha256: string
  readonly version: number
}

/** An edition before it holds the trail: all that takes its time. */
interface PreparedEdition {
  readonly audience: string
  readonly name: string
  readonly content: PackageContent
  readonly parts: PackageParts
  /** Companies whose records the edition's trail holds; null for all. */
  readonly ownCompanyIds: readonly string[] | null
}

interface Prepared {
  readonly contentHash: string
  readonly at: Date
  readonly terms: ReleaseTerms
  readonly replaces: Replaced | null
  readonly editions: readonly PreparedEdition[]
  /** That the editions name: it must still be the one in use when they are signed. */
  readonly keys: SigningKeys
}

interface Replaced {
  readonly id: string
  readonly label: string
}

/**
 * Releases a signed revision: builds the package, for the team and for each fabricator an edition of its own, moves the
 * revision, and supersedes what was in force under its part number.
 *
 * Documents take a second or so, longer than a transaction should hold everybody up. So the decision is taken twice: on
 * the content that is packed, and again in the transaction that releases exactly that content. There the trail is written
 * first and put into each package, which so holds its own release.
 */
export function releaseRevision(actor: Actor, input: ReleaseInput): Promise<ActResult<ReleasedRevision>> {
  return notingRefusals(actor, 'release', input, () => release(actor, input))
}

async function release(actor: Actor, input: ReleaseInput): Promise<ActResult<ReleasedRevision>> {
  const confirmed = await outcomeOf(() => confirmPerson(actor, input))
  if (!confirmed.ok) return confirmed
  const prepared = await outcomeOf(() => prepare(actor, input))
  if (!prepared.ok) return prepared
  const released: { sha256: string } = { sha256: '' }
  const result = await write<ReleaseInput, ReleasedRevision>(actor, 'release-revision', input, async (context) => {
    // Only an earlier request with the same key skips the preparation, and `write` has answered that one already.
    if (prepared.value === null) throw new Error('a release was asked for that was not prepared')
    const confirmedBy = await requireConfirmed(context, confirmed.value)
    return store(context, input, { ...prepared.value, confirmedBy }, released)
  })
  // The package's hash is known once the trail is written, after the act's own work.
  if (!result.ok || result.value.packageSha256 !== '') return result
  const packageSha256 = released.sha256 === '' ? await findPackageHash(actor, input.revisionId) : released.sha256
  return { ok: true, value: { ...result.value, packageSha256 } }
}

function findPackageHash(actor: Actor, revisionId: string): Promise<string> {
  return read(actor, async ({ tx }) => {
    const found = await tx.package.findUnique({ where: { revisionId_audience: { revisionId, audience: 'team' } } })
    return found?.sha256 ?? ''
  })
}

/** A package dated before its key was in use fails its own verification: a clock that was set back is seen here, not by who receives it. */
function requireKeyInUse(keys: SigningKeys, at: Date): SigningKeys {
  if (at.toISOString() < keys.since) {
    const [reads, since] = [at.toISOString(), keys.since].map((moment) => moment.replace('T', ' ').slice(0, 19))
    refuseClash(
      `The server's clock reads ${reads} UTC, and the signing key is in use since ${since} UTC. Set the clock right, then release.`,
    )
  }
  return keys
}

async function prepare(actor: Actor, input: ReleaseInput): Promise<Prepared | null> {
  const at = now()
  const found = await read(actor, async ({ tx, rights }) => {
    if ((await findEarlierAnswer(tx, actor.userId, 'release-revision', input)) !== null) return null
    const decided = await decide(tx, rights, input, at)
    const ownIds = await loadCompanyIds(
      tx,
      decided.snapshot.sharedWith.map(({ companyId }) => companyId),
    )
    const rows = await tx.trailRecord.findMany({
      where: { revisionId: decided.loaded.record.id, action: { in: [...CHRONICLED] } },
      orderBy: { sequence: 'asc' },
    })
    const earlier =
      decided.replaces === null
        ? null
        : await tx.revision.findUniqueOrThrow({ where: { id: decided.replaces.id }, select: { designJson: true } })
    return {
      ...decided,
      byName: rights.name,
      ownIds,
      rows,
      earlier: earlier?.designJson ?? null,
      before: await listIssuedBefore(
        tx,
        decided.loaded.record,
        decided.replaces?.id ?? decided.loaded.record.basedOnId,
      ),
      minutes: await loadMinutes(tx, decided.loaded.record.id),
      pictureSha256: await findPictureOf(tx, decided.loaded),
      keys: requireKeyInUse(await loadSigningKeys(tx), at),
    }
  })
  if (found === null) return null
  const { loaded, snapshot, byName, ownIds, terms, replaces, keys } = found
  const artwork = await Promise.all(
    snapshot.artwork.map(async ({ sha256 }) => ({ sha256, bytes: await readKeptFile(sha256) })),
  )
  const standing = getStandingContent(loaded, snapshot)
  const signedContent = standing.contentJson
  const signed = signStatement(
    { revisionId: loaded.record.id, contentHash: standing.contentHash, keyFingerprint: keys.fingerprint },
    keys.signingKeyPem,
  )
  const stamped = { ...signed, token: await askForTimeStamp(signed.signature) }
  const common = {
    workspaceName: loaded.workspace.name,
    release: {
      at: at.toISOString(),
      byName,
      byUserId: actor.userId,
      terms,
      replaces: replaces?.label ?? null,
      stamped,
    },
    artwork,
    artworkPicture:
      found.pictureSha256 === null
        ? null
        : {
            bytes: await readKeptFile(found.pictureSha256),
            registration: loaded.artwork.onPlan?.registration ?? null,
          },
    signedParts: makeSignedPartFiles(signedContent),
    drawing: makeDrawingSource(snapshot, loaded.workspace.name, at.toISOString(), actor.userId, [
      ...found.before,
      toRevisionEntry(loaded.record.label, { ...terms, releasedAt: at }, byName),
    ]),
    // Written in the transaction, when the trail holds the release.
    trail: [],
    checkpoints: [],
  }
  const make = async (edition: Omit<PreparedEdition, 'parts'>): Promise<PreparedEdition> => ({
    ...edition,
    parts: await makePackageParts(edition.content, keys, (order) => runJob('documents', order)),
  })
  const team: PackageContent = {
    ...common,
    ...makeHistory(found, null),
    snapshot,
    edition: { kind: 'team' },
    minutes: found.minutes,
    flexTests: findPackedFlexTests(loaded, null, snapshot.evaluation?.results ?? null),
    signedContent,
  }
  const editions = [await make({ audience: 'team', name: 'the team', content: team, ownCompanyIds: null })]
  for (const { companyId, companyName } of snapshot.sharedWith) {
    // It gets no package of a release that it was taken off.
    if (snapshot.takenOff.some((off) => off.companyId === companyId)) continue
    const own = await computing(() => makeSnapshot(loaded, companyId).snapshot)
    const content: PackageContent = {
      ...common,
      ...makeHistory(found, companyId),
      snapshot: own,
      edition: { kind: 'fabricator', companyId, companyName },
      minutes: null,
      flexTests: findPackedFlexTests(loaded, companyId, own.evaluation?.results ?? null),
      signedContent: null,
    }
    const ownCompanyIds = ownIds.get(companyId) ?? []
    editions.push(await make({ audience: companyId, name: companyName, content, ownCompanyIds }))
  }
  return { contentHash: standing.contentHash, at, terms, replaces, editions, keys }
}

const findPictureOf = async (tx: TransactionClient, { artwork: { key } }: LoadedRevision): Promise<string | null> =>
  key === null ? null : findPicture(tx, key)

async function loadMinutes(tx: TransactionClient, revisionId: string): Promise<NonNullable<PackageContent['minutes']>> {
  return { meetings: await loadMeetings(tx, revisionId), needs: await loadNeeds(tx, revisionId) }
}

/** Acts that the report's chronology names. */
const CHRONICLED = [
  'revision-created',
  'revision-shared',
  'revision-unshared',
  'stage-moved',
  'sign-off-policy-moved',
  'sign-off-policy-followed',
  'declared-buildable',
  'declared-with-conditions',
  'declared-not-buildable',
  'condition-taken-over',
  'condition-declined',
  'condition-made-action',
  'taken-off-release',
  'put-back-on-release',
  'waiver-approved',
  'waiver-declined',
  'proposal-accepted',
  'proposal-declined',
  'meeting-recorded',
  'action-taken-on',
  'action-closed',
  'action-dropped',
  'difference-let-stand',
  'difference-taken-up',
  'declared-reviewed',
  'review-withdrawn',
  'revision-signed',
  'signature-voided',
] as const satisfies readonly TrailAction[]

interface Found {
  readonly loaded: LoadedRevision
  readonly rows: readonly {
    readonly at: string
    readonly actorName: string
    readonly action: string
    readonly detailsJson: string
    readonly companyId: string | null
  }[]
  readonly ownIds: ReadonlyMap<string, readonly string[]>
  readonly earlier: string | null
}

/** What changed, who was there and what happened, as far as the readers of an edition may know. */
function makeHistory({ loaded, rows, ownIds, earlier }: Found, companyId: string | null) {
  const { record, design } = loaded
  const own = companyId === null ? null : (ownIds.get(companyId) ?? [])
  return {
    changes: {
      sinceIssue: earlier === null ? null : listChanges(earlier, design),
      sinceLooked: record.shares
        .filter((share) => companyId === null || share.companyId === companyId)
        .map(({ company, lookedJson }) => ({
          company: company.name,
          changes: lookedJson === null ? null : listChanges(lookedJson, design),
        })),
    },
    members: record.project.memberships
      .filter((member) => companyId === null || member.companyId === companyId)
      .map(({ userId, company, role }) => ({
        userId,
        name: record.people.get(userId) ?? '',
        companyName: company.name,
        role,
      })),
    chronology: rows
      .filter((row) => own === null || row.companyId === null || own.includes(row.companyId))
      .map(({ at, actorName, action, detailsJson }) => ({
        at,
        who: actorName,
        what: describeAction(action, detailsJson),
      })),
  }
}

const listChanges = (beforeJson: string, after: Design) =>
  compareDesigns(readStoredDesign(beforeJson), after).map(({ sentence }) => sentence)

/** The revision, when it can be released now by this person who saw it as it is, on these terms. */
async function decide(tx: TransactionClient, rights: PersonRights, input: ReleaseInput, at: Date) {
  const { revision, fabricatorCompanyId } = await requireRevisionInView(tx, rights, input.revisionId)
  const loaded = await loadRevision(tx, revision.id)
  const { snapshot } = makeSnapshot(loaded, null)
  const change = unwrap(decideTransition(snapshot, rights, { move: 'advance' }))
  if (!change.isRelease) refuseClash('A revision is released from the stage "awaiting signature".')
  requireRevisionSeen(loaded, input.seenVersion, fabricatorCompanyId)
  const issued = await findIssueBlockers(tx, loaded, rights)
  if (issued.length > 0) refuseBlocked(issued, 'This part number and revision was issued before.')
  const terms = readTerms(input)
  const replaces = listReplaced(loaded)[0] ?? null
  const waivers = listItemStates(snapshot).flatMap(({ state, waiver }) =>
    state === 'waived' && waiver !== null ? [waiver] : [],
  )
  const issues = findTermIssues(terms, waivers, {
    day: at.toISOString().slice(0, 10),
    replaces: replaces?.label ?? null,
    actions: snapshot.actions,
  })
  if (issues.length > 0) {
    refuseInvalid(
      issues.map(({ field, message }) => ({ code: 'terms', path: [field], message })),
      'The revision cannot be released on these terms.',
    )
  }
  return { loaded, snapshot, terms, replaces }
}

function readTerms(input: ReleaseInput): ReleaseTerms {
  return {
    isConditional: input.isConditional ?? false,
    purpose: input.purpose,
    quantityLimit: input.quantityLimit ?? null,
    validUntil: (input.validUntil ?? '') === '' ? null : (input.validUntil ?? null),
    conditions: input.conditions ?? '',
    changeNumber: input.changeNumber ?? '',
    reason: input.reason ?? '',
    effectivity: input.effectivity ?? '',
  }
}

async function store(
  context: WriteContext,
  input: ReleaseInput,
  prepared: Prepared & { readonly confirmedBy: ConfirmedBy },
  released: { sha256: string },
): Promise<ReleasedRevision> {
  const { tx, rights, record } = context
  const { terms, replaces, at } = prepared
  const { loaded, snapshot, replaces: stillReplaces } = await decide(tx, rights, input, at)
  const { id: revisionId, projectId, label } = loaded.record
  if (getStandingContent(loaded, snapshot).contentHash !== prepared.contentHash) {
    throw new Error('the content changed under the same version')
  }
  if (stillReplaces?.id !== replaces?.id)
    refuseClash('Another revision was released meanwhile. Look at it, and release again.')
  if ((await loadSigningKeys(tx)).fingerprint !== prepared.keys.fingerprint)
    refuseClash('The signing key was changed meanwhile. Release again.')
  const { version } = await storeMove(context, loaded, { from: snapshot.stage, to: 'released', reason: '' })
  await tx.release.create({
    data: {
      revisionId,
      partNumber: snapshot.design.brief.partNumber,
      label,
      ...terms,
      replacesId: replaces?.id ?? null,
      contentHash: prepared.contentHash,
      releasedById: rights.userId,
      releasedAt: at,
    },
  })
  await record(
    {
      action: 'revision-released',
      subject: { kind: 'revision', id: revisionId },
      projectId,
      revisionId,
      details: {
        contentHash: prepared.contentHash,
        meaning: ACT_MEANINGS.release,
        confirmedBy: prepared.confirmedBy,
        releasedAt: at.toISOString(),
        isConditional: terms.isConditional,
        terms: describeTerms(terms),
        conditions: terms.conditions,
        changeNumber: terms.changeNumber,
        reason: terms.reason,
        effectivity: terms.effectivity,
        replaces: replaces?.label ?? null,
      },
    },
    async () => {
      released.sha256 = await issuePackages(context, prepared, { revisionId, projectId })
    },
  )
  await tx.issuedRevision.create({
    data: {
      issueKey: makeIssueKey(loaded.design, label),
      partNumber: loaded.design.brief.partNumber,
      label,
      revisionId,
      contentHash: prepared.contentHash,
      packageSha256: released.sha256,
      issuedById: rights.userId,
      issuedAt: at,
    },
  })
  await supersedeEarlier(context, loaded)
  return { packageSha256: '', version }
}

/** Puts the trail, which ends with the release, into each edition. @returns the hash of the team's */
async function issuePackages(
  { tx, rights, record }: WriteContext,
  { at, contentHash, editions, keys }: Prepared,
  { revisionId, projectId }: { readonly revisionId: string; readonly projectId: string },
): Promise<string> {
  const rows = await tx.trailRecord.findMany({ where: { revisionId }, orderBy: { sequence: 'asc' } })
  const trail = rows.map(readTrailRow)
  // The newest vouches for all before it; the whole list would tell how busy the workspace is.
  const checkpoints = (await listCheckpoints(tx)).slice(-1)
  let teamSha256 = ''
  for (const { audience, name, content, parts, ownCompanyIds } of editions) {
    const isOwn = (companyId: string | null) =>
      ownCompanyIds === null || companyId === null || ownCompanyIds.includes(companyId)
    const own = { ...content, trail: trail.filter(({ subject }) => isOwn(subject.companyId)), checkpoints }
    const file = await keepFile(assemblePackage(parts, own, keys))
    const { id } = await tx.package.create({
      data: { revisionId, audience, ...file, contentHash, releasedById: rights.userId, releasedAt: at },
    })
    if (audience === 'team') teamSha256 = file.sha256
    await record({
      action: 'package-issued',
      subject: { kind: 'package', id },
      projectId,
      revisionId,
      companyId: audience === 'team' ? null : audience,
      details: { edition: name, ...file },
    })
  }
  return teamSha256
}

/** What was in force under the same part number. Another part of the project stays released. */
async function supersedeEarlier(context: WriteContext, released: LoadedRevision): Promise<void> {
  const { tx } = context
  const { id: revisionId, label } = released.record
  for (const { id } of listReplaced(released)) {
    await storeMove(context, await loadRevision(tx, id), {
      from: 'released',
      to: 'superseded',
      reason: `revision ${label} was released`,
    })
    await tx.revision.update({ where: { id }, data: { supersededById: revisionId } })
  }
}
