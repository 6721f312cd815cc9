import 'server-only'
import { now } from '@/lib/config'
import { db, inReadTransaction } from '../store/client'

/** Whether the database answers. For the route that a proxy asks; it reads nothing of anybody's. */
export async function isDatabaseThere(): Promise<boolean> {
  await db().workspace.count()
  return true
}

/** What happened since a record of the trail, for all pages that listen, asked once for all of them. */
export interface Pulse {
  readonly lastSequence: number
  /** Revisions that a record since then is about. */
  readonly revisionIds: ReadonlySet<string>
  /** Whether anything happened that is about no revision: somebody may have been taken off a project. */
  readonly isBeyondRevisions: boolean
  readonly openSessionIds: ReadonlySet<string>
}

/** More than that since the last time, and everybody looks for themselves. */
const MOST_RECORDS = 500

export function takePulse(sessionIds: readonly string[], after: number): Promise<Pulse> {
  return inReadTransaction(async (tx) => {
    const records = await tx.trailRecord.findMany({
      where: { sequence: { gt: after } },
      orderBy: { sequence: 'asc' },
      take: MOST_RECORDS,
      select: { sequence: true, revisionId: true },
    })
    const sessions = await tx.session.findMany({
      where: { id: { in: [...new Set(sessionIds)] }, endedAt: null, expiresAt: { gt: now() } },
      select: { id: true },
    })
    return {
      lastSequence: records.at(-1)?.sequence ?? after,
      revisionIds: new Set(records.flatMap(({ revisionId }) => revisionId ?? [])),
      isBeyondRevisions: records.some(({ revisionId }) => revisionId === null),
      openSessionIds: new Set(sessions.map(({ id }) => id)),
    }
  })
}
