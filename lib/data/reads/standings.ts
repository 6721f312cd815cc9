import 'server-only'
import { setImmediate as nextTurnOfLoop } from 'node:timers/promises'
import { getBuildName, log, now } from '@/lib/config'
import { ENGINE_VERSION } from '@/lib/engine'
import { findBlockers, listItemStates, OPEN_STAGES, type ReviewSnapshot } from '@/lib/review'
import type { Prisma } from '../generated/sqlite/client'
import { findRevisionScope, toRights } from '../records/authorization'
import { type LoadedRevision, loadRevisions } from '../records/loaded-revision'
import { makeSnapshot } from '../records/snapshot'
import { inReadTransaction, inTransaction, type TransactionClient } from '../store/client'
import { computing } from '../store/computations'
import { listRevisionWaits } from './revision-waits'
import type { Wait } from './wait'

/** A revision with its results takes about half a megabyte: so many at a time are held. Our choice. */
const MOST_AT_ONCE = 20
/** A standing that somebody's act moves on each time it is worked out is left to the next reader. */
const MOST_ROUNDS = 3

const OPEN: Prisma.RevisionWhereInput = { stage: { in: [...OPEN_STAGES] } }

const getMaker = (): string => `${ENGINE_VERSION} ${getBuildName()}`
const getToday = (): string => now().toISOString().slice(0, 10)

/** Standings that do not hold: never worked out, moved by an act, made by another build, or past their last day. */
function notHolding(): Prisma.RevisionWhereInput {
  return {
    OR: [
      { standing: null },
      {
        standing: {
          OR: [{ workedOutAt: null }, { madeBy: { not: getMaker() } }, { holdsThrough: { lt: getToday() } }],
        },
      },
    ],
  }
}

/** Open revisions among `where` whose standing has to be worked out before it is shown. */
export async function listOutdated(
  tx: TransactionClient,
  where: Prisma.RevisionWhereInput,
  take?: number,
): Promise<readonly string[]> {
  const rows = await tx.revision.findMany({
    where: { AND: [OPEN, where, notHolding()] },
    select: { id: true },
    orderBy: [{ stageSince: 'asc' }, { id: 'asc' }],
    ...(take === undefined ? {} : { take }),
  })
  return rows.map(({ id }) => id)
}

/** For the standing rows of revisions that hold now. */
export function holding(revision: Prisma.RevisionWhereInput): Prisma.RevisionStandingWhereInput {
  return {
    workedOutAt: { not: null },
    madeBy: getMaker(),
    OR: [{ holdsThrough: null }, { holdsThrough: { gte: getToday() } }],
    revision: { AND: [OPEN, revision] },
  }
}

/**
 * Works standings out and keeps them, a few at a time; what a revision needs is read as it stood at one moment, and kept only if
 * nothing was written meanwhile. One that cannot be worked out is logged and left, so that it ends nothing for the others.
 *
 * @param isTimeUp  asked between portions
 * @returns those that still do not hold
 */
export async function workOutStandings(
  revisionIds: readonly string[],
  isTimeUp: () => boolean = () => false,
): Promise<readonly string[]> {
  let left = revisionIds
  const failed: string[] = []
  for (let round = 0; round < MOST_ROUNDS && left.length > 0; round += 1) {
    const moved: string[] = []
    for (let from = 0; from < left.length; from += MOST_AT_ONCE) {
      if (isTimeUp()) return [...failed, ...moved, ...left.slice(from)]
      const some = left.slice(from, from + MOST_AT_ONCE)
      const outcome = await workOutSome(some)
      moved.push(...outcome.moved)
      failed.push(...outcome.failed)
    }
    left = moved
  }
  return [...failed, ...left]
}

interface Outcome {
  readonly moved: readonly string[]
  readonly failed: readonly string[]
}

async function workOutSome(ids: readonly string[]): Promise<Outcome> {
  try {
    return { moved: await workOutTogether(ids), failed: [] }
  } catch (error) {
    const [only, ...others] = ids
    if (only === undefined) return { moved: [], failed: [] }
    if (others.length === 0) {
      log.error('unexpected error', { doing: 'working out where a revision stands', revisionId: only, error })
      return { moved: [], failed: [only] }
    }
  }
  const moved: string[] = []
  const failed: string[] = []
  for (const id of ids) {
    const outcome = await workOutSome([id])
    moved.push(...outcome.moved)
    failed.push(...outcome.failed)
  }
  return { moved, failed }
}

/** @returns those that somebody's act moved meanwhile */
async function workOutTogether(ids: readonly string[]): Promise<readonly string[]> {
  await ensureRows(ids)
  const { seen, revisions, people } = await inReadTransaction((tx) => loadWhatTheyRestOn(tx, ids))
  const standings: WorkedOut[] = []
  for (const loaded of revisions) {
    const { id } = loaded.record
    // Computations of one revision take some milliseconds: others get their turn between two.
    await nextTurnOfLoop()
    const standing = await computing(() => makeStanding(loaded, people))
    standings.push({ id, seenChanges: seen.get(id) ?? 0, standing })
  }
  return inTransaction((tx) => keep(tx, standings))
}

/** A row has to be there before its revision is read: from then on every act counts it up. */
async function ensureRows(ids: readonly string[]): Promise<void> {
  await inTransaction(async (tx) => {
    const present = await tx.revisionStanding.findMany({
      where: { revisionId: { in: [...ids] } },
      select: { revisionId: true },
    })
    const known = new Set(present.map(({ revisionId }) => revisionId))
    const absent = ids.filter((id) => !known.has(id))
    if (absent.length > 0) await tx.revisionStanding.createMany({ data: absent.map((revisionId) => ({ revisionId })) })
  })
}

type People = Awaited<ReturnType<typeof loadPeople>>

async function loadWhatTheyRestOn(tx: TransactionClient, ids: readonly string[]) {
  const rows = await tx.revisionStanding.findMany({
    where: { revisionId: { in: [...ids] } },
    select: { revisionId: true, changes: true },
  })
  const revisions = await loadRevisions(tx, ids)
  const projectIds = [...new Set(revisions.map(({ record }) => record.projectId))]
  return {
    seen: new Map(rows.map(({ revisionId, changes }) => [revisionId, changes])),
    revisions,
    people: await loadPeople(tx, projectIds),
  }
}

/** Everybody of these projects, with what they are in them. */
async function loadPeople(tx: TransactionClient, projectIds: readonly string[]) {
  const inThese = { projectId: { in: [...projectIds] } }
  const users = await tx.user.findMany({
    where: { disabledAt: null, memberships: { some: inThese } },
    include: { memberships: { where: inThese }, companies: true },
  })
  return users.map(toRights)
}

interface Standing {
  readonly counts: Pick<
    Prisma.RevisionStandingUncheckedCreateInput,
    | 'openItems'
    | 'concerns'
    | 'statedConcerns'
    | 'judgedConcerns'
    | 'openQueries'
    | 'openMustChanges'
    | 'proposedWaivers'
    | 'blockers'
  >
  readonly holdsThrough: string | null
  readonly waits: readonly { readonly userId: string; readonly waits: readonly Wait[] }[]
}

function makeStanding(loaded: LoadedRevision, people: People): Standing {
  const { record } = loaded
  const getSnapshot = rememberSnapshots(loaded)
  const hasLiveSignature = record.signatures.some(({ voidedAt }) => voidedAt === null)
  const snapshot = getSnapshot(null)
  const itemStates = listItemStates(snapshot)
  const isOpen = ({ state }: { state: string }) => state === 'open'
  const threads = snapshot.threads.filter(isOpen)
  const waits = people.flatMap((rights) => {
    const scope = findRevisionScope(rights, record, hasLiveSignature)
    if (scope === null) return []
    const own = listRevisionWaits(loaded, getSnapshot(scope.fabricatorCompanyId), rights, scope)
    return own.length === 0 ? [] : [{ userId: rights.userId, waits: own }]
  })
  return {
    counts: {
      openItems: itemStates.filter(isOpen).length,
      concerns: itemStates.filter(({ state }) => state === 'concern').length,
      statedConcerns: itemStates.filter(({ state, basis }) => state === 'concern' && basis === 'stated').length,
      judgedConcerns: itemStates.filter(({ state, basis }) => state === 'concern' && basis === 'judgment').length,
      openQueries: threads.filter(({ kind }) => kind === 'engineering-query').length,
      openMustChanges: threads.filter(({ kind }) => kind === 'must-change').length,
      proposedWaivers: snapshot.waivers.filter(({ state }) => state === 'proposed').length,
      blockers: findBlockers(snapshot).length,
    },
    holdsThrough: findLastDay(snapshot, record.threads),
    waits,
  }
}

const DAY_MS = 86_400_000

/**
 * The last day on which it holds as it is. Three things follow the calendar: waivers that lapse, dates of the brief that the
 * differences hold against today, and days by which questions are to be answered.
 */
function findLastDay(
  { waivers, design, today }: ReviewSnapshot,
  threads: LoadedRevision['record']['threads'],
): string | null {
  const { manufacturingReviewDate, layoutFreezeDate, needDate } = design.brief
  const days = waivers.flatMap(({ validUntil, isLapsed }) => (validUntil === null || isLapsed ? [] : [validUntil]))
  // A question is late from the day after.
  days.push(
    ...threads.flatMap(({ state, dueOn }) => (state === 'open' && dueOn !== null && dueOn >= today ? [dueOn] : [])),
  )
  for (const date of [manufacturingReviewDate, layoutFreezeDate, needDate]) {
    if (date === null || date < today) continue
    // Whether the day itself or the day before is the last, differs among them: the earlier one is never wrong.
    days.push(date === today ? date : new Date(Date.parse(date) - DAY_MS).toISOString().slice(0, 10))
  }
  return days.sort()[0] ?? null
}

/** Everybody of one side sees the same. */
function rememberSnapshots(loaded: LoadedRevision): (fabricatorCompanyId: string | null) => ReviewSnapshot {
  const made = new Map<string | null, ReviewSnapshot>()
  return (fabricatorCompanyId) => {
    const known = made.get(fabricatorCompanyId)
    if (known !== undefined) return known
    const { snapshot } = makeSnapshot(loaded, fabricatorCompanyId)
    made.set(fabricatorCompanyId, snapshot)
    return snapshot
  }
}

interface WorkedOut {
  readonly id: string
  /** How often it had been changed when it was read. */
  readonly seenChanges: number
  readonly standing: Standing
}

/** @returns those that were changed meanwhile; what was worked out from before is not kept */
async function keep(tx: TransactionClient, all: readonly WorkedOut[]): Promise<readonly string[]> {
  const moved: string[] = []
  const kept: WorkedOut[] = []
  for (const one of all) {
    const { counts, holdsThrough } = one.standing
    const { count } = await tx.revisionStanding.updateMany({
      where: { revisionId: one.id, changes: one.seenChanges },
      data: { ...counts, holdsThrough, madeBy: getMaker(), workedOutAt: one.seenChanges },
    })
    if (count === 0) moved.push(one.id)
    else kept.push(one)
  }
  await tx.revisionWait.deleteMany({ where: { revisionId: { in: kept.map(({ id }) => id) } } })
  const waits = kept.flatMap(({ id, standing }) =>
    standing.waits.map(({ userId, waits: own }) => ({ revisionId: id, userId, waitsJson: JSON.stringify(own) })),
  )
  if (waits.length > 0) await tx.revisionWait.createMany({ data: waits })
  return moved
}

/**
 * One portion of those that do not hold, of any person. For the server's own worker.
 * @returns how many were worked out; 0 where nothing is left, or what is left cannot be
 */
export async function workOutOutdated(): Promise<number> {
  const ids = await inReadTransaction((tx) => listOutdated(tx, {}, MOST_AT_ONCE))
  return ids.length - (await workOutStandings(ids)).length
}
