import 'server-only'
import { z } from 'zod'
import { REVISION_TABS } from '@/lib/addresses'
import { readStoredJson } from '@/lib/engine'
import type { Prisma } from '../generated/sqlite/client'
import { type Actor, type PersonRights, readStage } from '../records/authorization'
import type { TransactionClient } from '../store/client'
import type { WaitView } from '../views'
import { listActionWaits } from './action-waits'
import { isInView } from './projects'
import { type ReadContext, read } from './read'
import { holding, listOutdated, workOutStandings } from './standings'
import type { Wait } from './wait'

/** What waits for this person, over all projects, oldest first, each with its reason and the one next act. */
export async function listWaits(actor: Actor): Promise<readonly WaitView[]> {
  return readStandings(actor, async ({ tx, rights }) => {
    const waits = await listWaitsOfPeople(tx, [rights])
    return waits.get(rights.userId) ?? []
  })
}

/** Revisions of these people's projects. */
function ofPeople(userIds: readonly string[]): Prisma.RevisionWhereInput {
  return { project: { memberships: { some: { userId: { in: [...userIds] } } } } }
}

/**
 * A read that rests on the standings of the person's revisions. Mostly all of them hold; those that do not are worked out between two reads.
 *
 * @param work  is told how many revisions could not be brought up to date
 * @param isTimeUp  asked between portions of them
 */
export async function readStandings<T>(
  actor: Actor,
  work: (context: ReadContext, notWorkedOut: number) => Promise<T>,
  isTimeUp: () => boolean = () => false,
): Promise<T> {
  const first = await read(actor, async (context) => {
    const outdated = await listOutdated(context.tx, ofPeople([context.rights.userId]))
    return outdated.length > 0 ? { outdated } : { value: await work(context, 0) }
  })
  if (first.outdated === undefined) return first.value
  const left = await workOutStandings(first.outdated, isTimeUp)
  return read(actor, (context) => work(context, left.length))
}

/** Open revisions of these people's projects whose standing does not hold. */
export function listOutdatedOf(tx: TransactionClient, userIds: readonly string[]): Promise<readonly string[]> {
  return listOutdated(tx, ofPeople(userIds))
}

/**
 * The same for several people, by their ids, out of the standings that hold: what is asked of the database grows neither with them
 * nor with their revisions.
 */
export async function listWaitsOfPeople(
  tx: TransactionClient,
  people: readonly PersonRights[],
): Promise<ReadonlyMap<string, readonly WaitView[]>> {
  const userIds = people.map(({ userId }) => userId)
  const rows = await tx.revisionWait.findMany({
    where: { userId: { in: userIds }, standing: holding(ofPeople(userIds)) },
    select: {
      userId: true,
      waitsJson: true,
      standing: {
        select: {
          revision: {
            select: {
              id: true,
              projectId: true,
              label: true,
              stage: true,
              project: { select: { name: true } },
              shares: { select: { companyId: true } },
            },
          },
        },
      },
    },
    orderBy: [{ standing: { revision: { createdAt: 'asc' } } }, { revisionId: 'asc' }],
  })
  const waits = new Map<string, WaitView[]>(people.map(({ userId }) => [userId, []]))
  const rightsOf = new Map(people.map((rights) => [rights.userId, rights]))
  for (const { userId, waitsJson, standing } of rows) {
    const { revision } = standing
    const rights = rightsOf.get(userId)
    if (rights === undefined || !isInView(rights, revision)) continue
    const place = {
      revisionId: revision.id,
      projectId: revision.projectId,
      projectName: revision.project.name,
      revisionLabel: revision.label,
      stage: readStage(revision.stage),
    }
    waits.get(userId)?.push(...readWaits(waitsJson).map((wait) => ({ ...place, ...wait })))
  }
  for (const [userId, own] of await listActionWaits(tx, people)) waits.get(userId)?.push(...own)
  for (const list of waits.values()) list.sort((a, b) => (a.since < b.since ? -1 : a.since > b.since ? 1 : 0))
  return waits
}

const waitsSchema: z.ZodType<readonly Wait[]> = z.array(
  z.object({
    since: z.string(),
    reason: z.string(),
    nextAct: z.string(),
    target: z.object({ tab: z.enum(REVISION_TABS), id: z.string().nullable() }),
  }),
)

/** Written by `standings.ts` of the same build, which `holding` asks for. */
function readWaits(waitsJson: string): readonly Wait[] {
  return readStoredJson('what waits for a person', waitsSchema, waitsJson)
}
