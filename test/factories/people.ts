import { scryptSync } from 'node:crypto'
import { type Actor, loadActor } from '@/lib/data'
import { foldName } from '@/lib/data/records/names'
import { replacePasswordCost } from '@/lib/data/records/passwords'
import { DEFAULT_SETTINGS, WORKSPACE_ID } from '@/lib/data/records/settings-record'
import { toSharingColumns } from '@/lib/data/records/sharing-columns'
import { db } from '@/lib/data/store/client'
import type { CompanyRole, Sharing } from '@/lib/review'

/** Everybody's password in tests. */
export const PASSWORD = 'plover-sandpiper-42'

/**
 * A hash of the least cost: the cost is part of the stored hash, so it is compared as any other. Tests of the cost itself
 * make their accounts through the application.
 */
const PASSWORD_HASH = (() => {
  const salt = Buffer.from('a fixed salt....')
  const key = scryptSync(PASSWORD, salt, 32, { N: 2 ** 10, r: 8, p: 1 })
  return ['scrypt', 10, 8, 1, salt.toString('base64url'), key.toString('base64url')].join('$')
})()

/** With passwords at the cost that is shipped, which other tests do without. */
export async function atFullPasswordCost<T>(work: () => Promise<T>): Promise<T> {
  const restore = replacePasswordCost(null)
  try {
    return await work()
  } finally {
    restore()
  }
}

let count = 0

/** Unique within the process: databases are shared by the tests of a file. */
function next(): number {
  count += 1
  return count
}

/** How many names were given out, for another process that goes on in a copy of the database. */
export const countNames = (): number => count

export function goOnAfterNames(given: number): void {
  count = Math.max(count, given)
}

export async function makeUser(name: string, options: { isAdmin?: boolean } = {}): Promise<string> {
  const email = `${name.toLowerCase().replaceAll(/[^a-z]+/g, '.')}.${next()}@example.org`
  const user = await db().user.create({
    data: { email, name, passwordHash: PASSWORD_HASH, isAdmin: options.isAdmin ?? false },
  })
  return user.id
}

export async function makeCompany(kind: 'team' | 'fabricator', name: string): Promise<string> {
  const unique = `${name} ${next()}`
  const company = await db().company.create({ data: { kind, name: unique, nameKey: foldName(unique) } })
  return company.id
}

export async function makeProject(name: string, createdById: string): Promise<string> {
  const unique = `${name} ${next()}`
  const project = await db().project.create({
    data: { name: unique, nameKey: foldName(unique), description: '', createdById },
  })
  return project.id
}

async function join(userId: string, projectId: string, companyId: string, role: string): Promise<Actor> {
  await db().membership.create({ data: { userId, projectId, companyId, role } })
  return getActorOf(userId)
}

/** Lets somebody sign in a capacity. */
export async function grant(userId: string, projectId: string, capacity: string, grantedById: string): Promise<void> {
  const statement = 'answers for the content of the design'
  await db().capacityGrant.create({
    data: { projectId, userId, capacity, statement, grantedById, grantedAt: new Date() },
  })
}

/** In the project for a fabricator that admitted the person; null is somebody whom nobody of the company admitted. */
export async function joinFabricator(
  userId: string,
  projectId: string,
  companyId: string,
  role: CompanyRole | null,
): Promise<Actor> {
  if (role !== null) await db().companyPerson.create({ data: { companyId, userId, role } })
  return join(userId, projectId, companyId, 'fabricator')
}

/** The company takes part in the project and lets its team have everything, unless said otherwise. */
export async function takePart(projectId: string, companyId: string, sharing: Partial<Sharing> = {}): Promise<void> {
  const columns = toSharingColumns({ matrix: 'shown', shelf: 'shown', rates: 'shown', ...sharing })
  await db().participation.upsert({
    where: { companyId_projectId: { companyId, projectId } },
    create: { companyId, projectId, state: 'takes-part', ...columns },
    update: { state: 'takes-part', ...columns },
  })
}

/** The actor as a session of now has it. */
export async function getActorOf(userId: string): Promise<Actor> {
  const actor = await loadActor(userId)
  if (actor === null) throw new Error('the account has no session')
  return actor
}

/** One project with everybody who can be in it, and people who are not. */
export interface Team {
  readonly projectId: string
  readonly companies: { readonly team: string; readonly brackenfold: string; readonly ostrel: string }
  readonly admin: Actor
  readonly lead: Actor
  readonly secondLead: Actor
  readonly member: Actor
  readonly observer: Actor
  readonly quality: Actor
  readonly auditor: Actor
  /** Of Brackenfold Circuits, and its administrator. */
  readonly fabricator: Actor
  /** Of Ostrel Flexible, in the same project. */
  readonly rivalFabricator: Actor
  /** Lead of another project. */
  readonly outsider: Actor
}

/** Further people of Brackenfold in the same project, one for each role in a company, and one who has none. */
export interface CompanyPeople {
  readonly sheetWriter: Actor
  readonly companyMember: Actor
  /** In the project under Brackenfold's name; nobody of the company admitted them. */
  readonly impostor: Actor
}

export type WholeTeam = Team & CompanyPeople
export type PersonName = Exclude<keyof WholeTeam, 'projectId' | 'companies'>
export type TeamPersonName = Exclude<keyof Team, 'projectId' | 'companies'>

export const PEOPLE: readonly PersonName[] = [
  'admin',
  'lead',
  'secondLead',
  'member',
  'observer',
  'quality',
  'auditor',
  'fabricator',
  'sheetWriter',
  'companyMember',
  'impostor',
  'rivalFabricator',
  'outsider',
]

export async function makeTeam(): Promise<Team> {
  await db().workspace.upsert({
    where: { id: WORKSPACE_ID },
    create: { id: WORKSPACE_ID, name: 'Quillmoor Instruments', settingsJson: JSON.stringify(DEFAULT_SETTINGS) },
    update: {},
  })
  const companies = {
    team: await makeCompany('team', 'Quillmoor Instruments'),
    brackenfold: await makeCompany('fabricator', 'Brackenfold Circuits'),
    ostrel: await makeCompany('fabricator', 'Ostrel Flexible'),
  }
  const admin = await makeUser('Wendel Oram', { isAdmin: true })
  const lead = await makeUser('Imke Dahl')
  const projectId = await makeProject('Skua', lead)
  const otherLead = await makeUser('Tove Ruane')
  const otherProject = await makeProject('Turnstone', otherLead)
  await takePart(projectId, companies.brackenfold)
  await takePart(projectId, companies.ostrel)
  const bring = async (name: string, companyId: string) =>
    joinFabricator(await makeUser(name), projectId, companyId, 'administrator')
  const secondLead = await makeUser('Sunniva Pell')
  const quality = await makeUser('Runa Sollis')
  for (const userId of [lead, secondLead]) await grant(userId, projectId, 'lead engineer', admin)
  await grant(quality, projectId, 'quality engineer', admin)
  return {
    projectId,
    companies,
    admin: await getActorOf(admin),
    lead: await join(lead, projectId, companies.team, 'lead'),
    secondLead: await join(secondLead, projectId, companies.team, 'lead'),
    quality: await join(quality, projectId, companies.team, 'quality'),
    auditor: await join(await makeUser('Evert Moran'), projectId, companies.team, 'auditor'),
    member: await join(await makeUser('Jorun Vey'), projectId, companies.team, 'member'),
    observer: await join(await makeUser('Casper Lund'), projectId, companies.team, 'observer'),
    fabricator: await bring('Bram Tolley', companies.brackenfold),
    rivalFabricator: await bring('Odile Farr', companies.ostrel),
    outsider: await join(otherLead, otherProject, companies.team, 'lead'),
  }
}

export const makeWholeTeam = async (): Promise<WholeTeam> => addCompanyPeople(await makeTeam())

export async function addCompanyPeople(team: Team): Promise<WholeTeam> {
  const bring = async (name: string, role: CompanyRole | null) =>
    joinFabricator(await makeUser(name), team.projectId, team.companies.brackenfold, role)
  return {
    ...team,
    sheetWriter: await bring('Signe Rooke', 'sheet-writer'),
    companyMember: await bring('Anders Quill', 'member'),
    impostor: await bring('Lorne Vask', null),
  }
}
