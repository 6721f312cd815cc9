import 'server-only'
import { countOf } from '@/lib/engine/units'
import type { Prisma } from '../generated/sqlite/client'
import { type Actor, requireInWorkspace } from '../records/authorization'
import { readRole } from '../records/stored-words'
import { db } from '../store/client'
import type { AccountView, PersonView } from '../views'
import { read } from './read'

export function getOwnAccount(actor: Actor): Promise<AccountView> {
  return read(actor, async ({ tx, rights }) => {
    const user = await tx.user.findUniqueOrThrow({ where: { id: rights.userId }, include: ACCOUNT_PARTS })
    return toAccountView(user)
  })
}

/** For an admin. */
export function listAccounts(actor: Actor): Promise<readonly AccountView[]> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'account:manage')
    const users = await tx.user.findMany({ include: ACCOUNT_PARTS, orderBy: { email: 'asc' } })
    return users.map(toAccountView)
  })
}

/** A person of the demo scenario, for the sign-in page. */
export interface DemoAccount {
  readonly name: string
  readonly email: string
  /** `lead of Skua, Quillmoor Instruments` */
  readonly sentence: string
}

/** Of a person's projects in one line; the scenario's people are in two at most. Our choice. */
const MOST_PROJECTS_NAMED = 3

/** Empty in a real workspace. */
export async function listDemoAccounts(): Promise<readonly DemoAccount[]> {
  const users = await db().user.findMany({
    where: { isDemo: true, disabledAt: null },
    include: {
      memberships: { ...ACCOUNT_PARTS.memberships, take: MOST_PROJECTS_NAMED },
      _count: { select: { memberships: true } },
    },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  return users.map((user) => {
    const parts = user.memberships.map(({ role, project, company }) => `${role} of ${project.name}, ${company.name}`)
    const others = user._count.memberships - parts.length
    if (others > 0) parts.push(`and ${countOf(others, 'more project')}`)
    return {
      name: user.name,
      email: user.email,
      sentence: [...(user.isAdmin ? ['admin'] : []), ...parts].join('; '),
    }
  })
}

/** Team people of the projects in which the person is on the team: whom a lead can pick from. */
export function listPeople(actor: Actor): Promise<readonly PersonView[]> {
  return read(actor, async ({ tx, rights }) => {
    const projectIds = rights.memberships.filter(({ role }) => role !== 'fabricator').map(({ projectId }) => projectId)
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
