import 'server-only'
import { isLoopbackOnly, now } from '@/lib/config'
import type {
  AccountStateInput,
  AdminRightInput,
  ChangePasswordInput,
  FirstAdminInput,
  SignInInput,
} from '@/lib/inputs'
import { type Actor, loadStanding, requireInWorkspace } from './authorization'
import { db, type TransactionClient } from './client'
import { NotFoundError, outcomeOf, refuseClash, refuseField } from './errors'
import type { Prisma } from './generated/sqlite/client'
import { foldName } from './names'
import { hashPassword, isPasswordRight, spendPasswordTime } from './passwords'
import { read } from './read'
import { DEFAULT_SETTINGS, WORKSPACE_ID } from './settings-record'
import { forgetAttempts, takeAttempt } from './sign-in-throttle'
import { readRole } from './snapshot'
import { appendToTrail } from './trail'
import type { AccountView, Outcome, PersonView } from './views'
import { inWriteTransaction, write } from './write'

export async function isWorkspaceEmpty(): Promise<boolean> {
  return (await db().user.findFirst({ select: { id: true } })) === null
}

/**
 * First visit to an empty installation: workspace, first admin, their team and their first project, of which they are
 * the lead. Refused once anybody exists, and unless the server listens on the loopback address only: otherwise the first
 * stranger to find it would own it.
 */
export async function createFirstAdmin(
  input: FirstAdminInput,
): Promise<Outcome<{ userId: string; projectId: string }>> {
  const passwordHash = await hashPassword(input.password)
  return outcomeOf(() => {
    if (!isLoopbackOnly()) {
      refuseClash('The first account can be created from this machine only: start the server on 127.0.0.1 for it.')
    }
    return inWriteTransaction(async (tx) => {
      if ((await tx.user.findFirst({ select: { id: true } })) !== null) {
        refuseClash('The workspace already has its first account. Sign in instead.')
      }
      const at = now()
      await tx.workspace.create({
        data: {
          id: WORKSPACE_ID,
          name: input.workspaceName,
          settingsJson: JSON.stringify(DEFAULT_SETTINGS),
          createdAt: at,
        },
      })
      const user = await tx.user.create({
        data: { email: input.email, name: input.name, passwordHash, isAdmin: true, createdAt: at },
      })
      const company = await tx.company.create({
        data: { kind: 'team', name: input.companyName, nameKey: foldName(input.companyName), createdAt: at },
      })
      const project = await tx.project.create({
        data: {
          name: input.projectName,
          nameKey: foldName(input.projectName),
          description: '',
          createdById: user.id,
          createdAt: at,
        },
      })
      await tx.membership.create({
        data: { userId: user.id, projectId: project.id, companyId: company.id, role: 'lead', createdAt: at },
      })
      const actor = { userId: user.id, name: user.name }
      await appendToTrail(tx, at, actor, {
        action: 'workspace-created',
        subject: { kind: 'workspace', id: WORKSPACE_ID },
        details: { name: input.workspaceName },
      })
      await appendToTrail(tx, at, actor, {
        action: 'project-created',
        subject: { kind: 'project', id: project.id },
        projectId: project.id,
        details: { name: project.name },
      })
      return { userId: user.id, projectId: project.id }
    })
  })
}

const WRONG = 'This address and password do not belong together, or the account is disabled.'

/**
 * The same refusal, after the same time, for a wrong password, an unknown address and a disabled account. Demo accounts,
 * whose passwords everybody can read, are refused when the server can be reached from other machines.
 */
export async function authenticate(
  input: SignInInput,
): Promise<Outcome<{ userId: string; name: string; email: string; sessionVersion: number }>> {
  const waitMinutes = await inWriteTransaction((tx) => takeAttempt(tx, input.email, now()))
  if (waitMinutes !== null) {
    return outcomeOf(async () =>
      refuseClash(`There were too many failed attempts for this address. Try again in ${waitMinutes} min.`),
    )
  }
  const user = await db().user.findUnique({ where: { email: input.email } })
  if (user === null) await spendPasswordTime(input.password)
  const isRight = user !== null && (await isPasswordRight(input.password, user.passwordHash))
  return outcomeOf(async () => {
    if (user === null || !isRight || user.disabledAt !== null) refuseField('password', 'wrong', WRONG)
    if (user.isDemo && !isLoopbackOnly()) {
      refuseClash('Demo accounts cannot be used on a server that other machines can reach.')
    }
    await inWriteTransaction((tx) => forgetAttempts(tx, input.email))
    return { userId: user.id, name: user.name, email: user.email, sessionVersion: user.sessionVersion }
  })
}

/** Null when the account is gone or disabled, or when the session was ended. */
export async function findActor(userId: string, sessionVersion: number): Promise<Actor | null> {
  const user = await db().user.findUnique({ where: { id: userId }, include: { memberships: true } })
  if (user === null || user.disabledAt !== null || user.sessionVersion !== sessionVersion) return null
  if (user.isDemo && !isLoopbackOnly()) return null
  return {
    userId: user.id,
    name: user.name,
    email: user.email,
    isAdmin: user.isAdmin,
    memberships: user.memberships.map(({ projectId, role, companyId }) => ({ projectId, role, companyId })),
  }
}

/**
 * Compares the password of the person who is acting, before a transaction that then checks the hash is still the same.
 * @returns the stored hash that the password fits
 */
export async function confirmPassword(actor: Actor, password: string, field: string): Promise<string> {
  const user = await db().user.findUnique({ where: { id: actor.userId } })
  if (user === null || user.disabledAt !== null) throw new NotFoundError('account')
  const waitMinutes = await inWriteTransaction((tx) => takeAttempt(tx, user.email, now()))
  if (waitMinutes !== null) {
    refuseClash(`There were too many failed attempts. Try again in ${waitMinutes} min.`)
  }
  if (!(await isPasswordRight(password, user.passwordHash))) refuseField(field, 'wrong', 'is not your password')
  await inWriteTransaction((tx) => forgetAttempts(tx, user.email))
  return user.passwordHash
}

export async function requireSamePassword(tx: TransactionClient, userId: string, hash: string): Promise<void> {
  const user = await tx.user.findUniqueOrThrow({ where: { id: userId }, select: { passwordHash: true } })
  if (user.passwordHash !== hash) refuseClash('Your password was changed at this moment. Try again with the new one.')
}

/** Ends every other session; the caller's goes on with the session version that is returned. */
export function changePassword(actor: Actor, input: ChangePasswordInput): Promise<Outcome<{ sessionVersion: number }>> {
  return outcomeOf(async () => {
    const oldHash = await confirmPassword(actor, input.currentPassword, 'currentPassword')
    if (input.currentPassword === input.newPassword) {
      refuseField('newPassword', 'unchanged', 'is the same as the old one')
    }
    const passwordHash = await hashPassword(input.newPassword)
    return inWriteTransaction(async (tx) => {
      const standing = await loadStanding(tx, actor.userId)
      await requireSamePassword(tx, actor.userId, oldHash)
      const { sessionVersion } = await tx.user.update({
        where: { id: actor.userId },
        data: { passwordHash, sessionVersion: { increment: 1 } },
      })
      await appendToTrail(tx, now(), standing, {
        action: 'password-changed',
        subject: { kind: 'account', id: actor.userId },
      })
      return { sessionVersion }
    })
  })
}

/** Ends all sessions; the one that goes on takes the session version that is returned. */
export function signOutEverywhere(actor: Actor): Promise<Outcome<{ sessionVersion: number }>> {
  return write(actor, 'sign-out-everywhere', {}, async ({ tx, record }) => {
    const { sessionVersion } = await tx.user.update({
      where: { id: actor.userId },
      data: { sessionVersion: { increment: 1 } },
    })
    await record({ action: 'sessions-ended', subject: { kind: 'account', id: actor.userId } })
    return { sessionVersion }
  })
}

export function getOwnAccount(actor: Actor): Promise<AccountView> {
  return read(actor, async ({ tx, standing }) => {
    const user = await tx.user.findUniqueOrThrow({ where: { id: standing.userId }, include: ACCOUNT_PARTS })
    return toAccountView(user)
  })
}

/** For an admin. */
export function listAccounts(actor: Actor): Promise<readonly AccountView[]> {
  return read(actor, async ({ tx, standing }) => {
    requireInWorkspace(standing, 'account:manage')
    const users = await tx.user.findMany({ include: ACCOUNT_PARTS, orderBy: { email: 'asc' } })
    return users.map(toAccountView)
  })
}

/** Disabling ends the person's sessions at once. An admin cannot disable the own account. */
export function setAccountState(actor: Actor, input: AccountStateInput): Promise<Outcome<null>> {
  return write(actor, 'set-account-state', input, async ({ tx, standing, at, record }) => {
    requireInWorkspace(standing, 'account:manage')
    const user = await tx.user.findUnique({ where: { id: input.userId } })
    if (user === null) throw new NotFoundError('account')
    if (user.id === standing.userId) refuseField('userId', 'own-account', 'is your own account')
    if ((user.disabledAt !== null) === input.isDisabled) return null
    await tx.user.update({
      where: { id: user.id },
      data: { disabledAt: input.isDisabled ? at : null, sessionVersion: { increment: 1 } },
    })
    await record({
      action: input.isDisabled ? 'account-disabled' : 'account-enabled',
      subject: { kind: 'account', id: user.id },
      details: { name: user.name },
    })
    return null
  })
}

/** An admin cannot take the right from the own account, so there is always one left. */
export function setAdminRight(actor: Actor, input: AdminRightInput): Promise<Outcome<null>> {
  return write(actor, 'set-admin-right', input, async ({ tx, standing, record }) => {
    requireInWorkspace(standing, 'account:manage')
    const user = await tx.user.findUnique({ where: { id: input.userId } })
    if (user === null) throw new NotFoundError('account')
    if (user.id === standing.userId) refuseField('userId', 'own-account', 'is your own account')
    if (user.isAdmin === input.isAdmin) return null
    await tx.user.update({ where: { id: user.id }, data: { isAdmin: input.isAdmin } })
    await record({
      action: input.isAdmin ? 'admin-right-given' : 'admin-right-taken',
      subject: { kind: 'account', id: user.id },
      details: { name: user.name },
    })
    return null
  })
}

/**
 * Marks every account there is as one of the demo data, whose passwords everybody can read. For the program that fills an
 * empty database with the demo scenario.
 */
export async function markAccountsAsDemo(): Promise<void> {
  await db().user.updateMany({ data: { isDemo: true } })
}

/** A person of the demo scenario, for the sign-in page. */
export interface DemoAccount {
  readonly name: string
  readonly email: string
  /** `lead of Skua, Quillmoor Instruments` */
  readonly sentence: string
}

/** Empty in a real workspace. */
export async function listDemoAccounts(): Promise<readonly DemoAccount[]> {
  const users = await db().user.findMany({
    where: { isDemo: true, disabledAt: null },
    include: ACCOUNT_PARTS,
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  return users.map((user) => {
    const parts = user.memberships.map(({ role, project, company }) => `${role} of ${project.name}, ${company.name}`)
    return {
      name: user.name,
      email: user.email,
      sentence: [...(user.isAdmin ? ['admin'] : []), ...parts].join('; '),
    }
  })
}

/** Team people of the projects in which the person is on the team: whom a lead can pick from. */
export function listPeople(actor: Actor): Promise<readonly PersonView[]> {
  return read(actor, async ({ tx, standing }) => {
    const projectIds = standing.memberships
      .filter(({ role }) => role !== 'fabricator')
      .map(({ projectId }) => projectId)
    const users = await tx.user.findMany({
      where: {
        disabledAt: null,
        memberships: { some: { projectId: { in: projectIds }, role: { not: 'fabricator' } } },
      },
      select: { id: true, name: true },
      orderBy: { name: 'asc' },
    })
    return users
  })
}

const ACCOUNT_PARTS = {
  memberships: { include: { project: true, company: true }, orderBy: { createdAt: 'asc' } },
} as const satisfies Prisma.UserInclude

function toAccountView(user: Prisma.UserGetPayload<{ include: typeof ACCOUNT_PARTS }>): AccountView {
  return {
    id: user.id,
    email: user.email,
    name: user.name,
    isAdmin: user.isAdmin,
    isDisabled: user.disabledAt !== null,
    createdAt: user.createdAt.toISOString(),
    memberships: user.memberships.map(({ project, company, role }) => ({
      projectId: project.id,
      projectName: project.name,
      role: readRole(role),
      companyName: company.name,
    })),
  }
}
