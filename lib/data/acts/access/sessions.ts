import 'server-only'
import { now } from '@/lib/config'
import type { EndSessionInput } from '@/lib/inputs'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction } from '../../consequences/write'
import { type Actor, loadRights } from '../../records/authorization'
import type { Visit } from '../../records/visit'
import { db, type TransactionClient } from '../../store/client'
import { NotFoundError, outcomeOf } from '../../store/errors'
import { readTogether } from '../../store/read-together'
import type { ActResult } from '../../views'
import { noteSignIn } from './access-notes'

/** A working day: who leaves a machine signed in overnight finds it signed out. */
export const SESSION_SECONDS = 12 * 3600
/** A page that is open asks often; when somebody was last here need not be known to the second. */
const SEEN_STEP_MS = 5 * 60_000
/** Ended sessions are listed nowhere; the trail says when they began and ended. */
const KEEP_ENDED_MS = 30 * 86_400_000

/** How somebody showed who they are. */
export type SignInMethod = 'password' | 'code' | 'recovery-code' | 'passkey' | 'provider' | 'invitation' | 'set-up'

/** What a sign-in comes to: the session's id is what the cookie carries. */
export interface SignedIn {
  readonly userId: string
  readonly name: string
  readonly email: string
  readonly sessionId: string
}

interface SessionOrder {
  readonly user: { readonly id: string; readonly name: string; readonly email: string }
  readonly method: SignInMethod
  readonly visit: Visit
  readonly at: Date
}

/** One row for each browser that somebody signs in with, and a record of it. */
export async function beginSession(
  tx: TransactionClient,
  { user, method, visit, at }: SessionOrder,
): Promise<SignedIn> {
  await tx.session.deleteMany({ where: { userId: user.id, expiresAt: { lt: new Date(at.getTime() - KEEP_ENDED_MS) } } })
  const session = await tx.session.create({
    data: {
      userId: user.id,
      method,
      device: visit.device,
      createdAt: at,
      seenAt: at,
      expiresAt: new Date(at.getTime() + SESSION_SECONDS * 1000),
    },
  })
  await noteSignIn(tx, user, { kind: 'signed-in', what: method, visit, at })
  await appendToTrail(
    tx,
    at,
    { userId: user.id, name: user.name },
    { action: 'signed-in', subject: { kind: 'session', id: session.id }, details: { method, device: visit.device } },
  )
  return { userId: user.id, name: user.name, email: user.email, sessionId: session.id }
}

/** Signs in somebody who has just made an account, without asking for the password that they have just typed. */
export function openSession(userId: string, method: 'invitation' | 'set-up', visit: Visit): Promise<SignedIn> {
  return inWriteTransaction(async (tx) => {
    const user = await tx.user.findUniqueOrThrow({ where: { id: userId } })
    return beginSession(tx, { user, method, visit, at: now() })
  })
}

/** Null when the account is gone or disabled, when the session was ended or is over, and for a demo account from afar. */
export async function findActor(sessionId: string, visit: Pick<Visit, 'isThisMachine'>): Promise<Actor | null> {
  const at = now()
  // Asked on every request, by people in thousands of projects too: one statement, and of their places what is shown alone.
  const ofSession = { model: 'Session', column: 'userId', where: { among: { id: [sessionId] } } } as const
  const found = await readTogether(db(), {
    sessions: { model: 'Session', only: ['endedAt', 'expiresAt', 'seenAt'], among: { id: [sessionId] } },
    users: {
      model: 'User',
      only: ['id', 'name', 'email', 'isAdmin', 'isDemo', 'disabledAt'],
      among: { id: ofSession },
    },
    memberships: { model: 'Membership', only: ['projectId', 'role', 'companyId'], among: { userId: ofSession } },
    companies: { model: 'CompanyPerson', only: ['companyId', 'role'], among: { userId: ofSession } },
  } as const)
  const [session, user] = [found.sessions[0], found.users[0]]
  if (session === undefined || user === undefined || session.endedAt !== null || session.expiresAt <= at) return null
  if (user.disabledAt !== null || (user.isDemo && !visit.isThisMachine)) return null
  if (at.getTime() - session.seenAt.getTime() > SEEN_STEP_MS) {
    await db().session.updateMany({ where: { id: sessionId, endedAt: null }, data: { seenAt: at } })
  }
  return { ...toActor({ ...user, memberships: found.memberships, companies: found.companies }), sessionId }
}

/** Whether the session by which somebody acts still counts: for what goes on after the request that asked it. */
export async function isSessionOpen({ sessionId }: Pick<Actor, 'sessionId'>): Promise<boolean> {
  if (sessionId === null) return true
  const session = await db().session.findUnique({
    where: { id: sessionId },
    select: { endedAt: true, expiresAt: true },
  })
  return session !== null && session.endedAt === null && session.expiresAt > now()
}

type UserRow = Omit<Actor, 'userId' | 'sessionId'> & { readonly id: string }

function toActor(user: UserRow): Actor {
  return {
    userId: user.id,
    name: user.name,
    email: user.email,
    isAdmin: user.isAdmin,
    memberships: user.memberships.map(({ projectId, role, companyId }) => ({ projectId, role, companyId })),
    companies: user.companies.map(({ companyId, role }) => ({ companyId, role })),
    sessionId: null,
  }
}

/** Somebody with an account, for programs that act without a session: the demo scenario and commands. */
export async function loadActor(userId: string): Promise<Actor | null> {
  const user = await db().user.findUnique({ where: { id: userId }, include: { memberships: true, companies: true } })
  return user === null || user.disabledAt !== null ? null : toActor(user)
}

/** @returns how many were ended */
export async function endSessions(
  tx: TransactionClient,
  userId: string,
  at: Date,
  except: string | null = null,
): Promise<number> {
  const { count } = await tx.session.updateMany({
    where: { userId, endedAt: null, ...(except === null ? {} : { id: { not: except } }) },
    data: { endedAt: at },
  })
  return count
}

/** Ends the session of this browser, and no other. */
export async function signOut(sessionId: string): Promise<void> {
  await inWriteTransaction(async (tx) => {
    const at = now()
    const session = await tx.session.findUnique({ where: { id: sessionId }, include: { user: true } })
    if (session === null || session.endedAt !== null) return
    await tx.session.update({ where: { id: sessionId }, data: { endedAt: at } })
    const { user } = session
    await appendToTrail(
      tx,
      at,
      { userId: user.id, name: user.name },
      { action: 'signed-out', subject: { kind: 'session', id: sessionId }, details: { device: session.device } },
    )
  })
}

/** Signs one other device of the person out. */
export function endSession(actor: Actor, input: EndSessionInput): Promise<ActResult<null>> {
  return outcomeOf(() =>
    inWriteTransaction(async (tx) => {
      const rights = await loadRights(tx, actor.userId)
      const at = now()
      const session = await tx.session.findUnique({ where: { id: input.sessionId } })
      if (session === null || session.userId !== rights.userId) throw new NotFoundError('session')
      if (session.endedAt !== null) return null
      await tx.session.update({ where: { id: session.id }, data: { endedAt: at } })
      await appendToTrail(tx, at, rights, {
        action: 'session-ended',
        subject: { kind: 'session', id: session.id },
        details: { device: session.device },
      })
      return null
    }),
  )
}

/** Signs out every device of the person, this one too unless it is to go on. */
export function signOutEverywhere(actor: Actor, { exceptHere }: { exceptHere: boolean }): Promise<ActResult<null>> {
  return outcomeOf(() =>
    inWriteTransaction(async (tx) => {
      const rights = await loadRights(tx, actor.userId)
      const at = now()
      const count = await endSessions(tx, rights.userId, at, exceptHere ? actor.sessionId : null)
      await appendToTrail(tx, at, rights, {
        action: 'sessions-ended',
        subject: { kind: 'account', id: rights.userId },
        details: { count, exceptHere },
      })
      return null
    }),
  )
}
