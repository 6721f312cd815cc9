import 'server-only'
import { now } from '@/lib/config'
import type { AccountStateInput, AdminRightInput, ChangePasswordInput } from '@/lib/inputs'
import { type Actor, loadStanding, requireInWorkspace } from './authorization'
import { db } from './client'
import { NotFoundError, outcomeOf, refuseField } from './errors'
import type { Prisma } from './generated/sqlite/client'
import { confirmPassword, requireSamePassword } from './password-confirmation'
import { requireGoodPassword } from './password-rules'
import { hashPassword } from './passwords'
import { read } from './read'
import { endSessions } from './sessions'
import { readRole } from './snapshot'
import { appendToTrail } from './trail'
import type { AccountView, Outcome, PersonView } from './views'
import { inWriteTransaction, write } from './write'

/** Ends every other session; the caller's goes on. */
export function changePassword(actor: Actor, input: ChangePasswordInput): Promise<Outcome<null>> {
  return outcomeOf(async () => {
    const oldHash = await confirmPassword(actor, input.currentPassword, 'currentPassword')
    if (input.currentPassword === input.newPassword) {
      refuseField('newPassword', 'unchanged', 'is the same as the old one')
    }
    requireGoodPassword('newPassword', input.newPassword, actor)
    const passwordHash = await hashPassword(input.newPassword, 'known')
    return inWriteTransaction(async (tx) => {
      const standing = await loadStanding(tx, actor.userId)
      await requireSamePassword(tx, actor.userId, oldHash)
      const at = now()
      await tx.user.update({ where: { id: actor.userId }, data: { passwordHash } })
      await endSessions(tx, actor.userId, at, actor.sessionId)
      await appendToTrail(tx, at, standing, {
        action: 'password-changed',
        subject: { kind: 'account', id: actor.userId },
      })
      return null
    })
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
    await tx.user.update({ where: { id: user.id }, data: { disabledAt: input.isDisabled ? at : null } })
    await endSessions(tx, user.id, at)
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
  passkeys: { select: { id: true } },
  memberships: { include: { project: true, company: true }, orderBy: { createdAt: 'asc' } },
} as const satisfies Prisma.UserInclude

function toAccountView(user: Prisma.UserGetPayload<{ include: typeof ACCOUNT_PARTS }>): AccountView {
  return {
    id: user.id,
    email: user.email,
    name: user.name,
    isAdmin: user.isAdmin,
    isDisabled: user.disabledAt !== null,
    hasSecondFactor: user.totpSealed !== null || user.passkeys.length > 0,
    createdAt: user.createdAt.toISOString(),
    memberships: user.memberships.map(({ project, company, role }) => ({
      projectId: project.id,
      projectName: project.name,
      role: readRole(role),
      companyName: company.name,
    })),
  }
}
