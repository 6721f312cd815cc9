import { ensureSetupCode, getSettings } from '@/lib/config'
import {
  type Actor,
  acceptInvitation,
  bringToProject,
  confirmCompany,
  createFirstAdmin,
  createInvitation,
  createProject,
  decideParticipation,
  getCompany,
  grantCapacity,
  inviteToCompany,
  joinByInvitation,
  loadActor,
  markAccountsAsDemo,
  OWN_VISIT,
  removeMember,
  revokeInvitation,
  setAccountState,
  setCompanySharing,
  setLimit,
} from '@/lib/data'
import type { OwnRole } from '@/lib/review'
import { CAST, CONTRACTOR, type DemoSignIn } from './sign-ins'
import { type Stage, StoryError } from './stage'

export type CastName = keyof typeof CAST
export type People = Readonly<Record<CastName, Actor>>

export interface Workspace {
  readonly people: People
  readonly skuaId: string
  readonly pipitId: string
  readonly companies: { readonly brackenfold: string; readonly ostrel: string }
}

async function getActorOf(userId: string): Promise<Actor> {
  const actor = await loadActor(userId)
  if (actor === null) throw new StoryError('an account that was just made cannot act')
  return actor
}

/** The workspace, its two projects, and everybody in them, each by an invitation of their own. */
export async function gatherPeople(stage: Stage): Promise<Workspace> {
  const { carryOut, clock } = stage
  clock.goTo(123, 8)
  const founder = await carryOut('create the workspace', () =>
    createFirstAdmin(
      {
        workspaceName: 'Quillmoor Instruments',
        companyName: 'Quillmoor Instruments',
        projectName: 'Skua',
        name: CAST.admin.name,
        email: CAST.admin.email,
        password: CAST.admin.password,
        setupCode: ensureSetupCode(getSettings().dataFolder),
      },
      OWN_VISIT,
    ),
  )
  const admin = await getActorOf(founder.userId)
  const skuaId = founder.projectId

  const invite = async (by: Actor, projectId: string, person: DemoSignIn, role: OwnRole | { fabricator: string }) => {
    const invitation = await carryOut(`invite ${person.name}`, () =>
      createInvitation(by, {
        projectId,
        email: person.email,
        ...(typeof role === 'string' ? { role } : { role: 'fabricator', companyName: role.fabricator }),
      }),
    )
    if (invitation.isAsked) throw new StoryError(`${invitation.company.name} was asked in place of ${person.name}`)
    return invitation.token
  }
  const bring = async (by: Actor, person: DemoSignIn, role: OwnRole | { fabricator: string }): Promise<Actor> => {
    const token = await invite(by, skuaId, person, role)
    const { name, email, password } = person
    const { userId } = await carryOut(`${name} joins`, () => acceptInvitation({ token, name, email, password }))
    return getActorOf(userId)
  }
  const bringAlong = async (by: Actor, projectId: string, person: DemoSignIn, actor: Actor, role: OwnRole) => {
    const token = await invite(by, projectId, person, role)
    await carryOut(`${person.name} joins`, () => joinByInvitation(actor, { token }))
  }

  const lead = await bring(admin, CAST.lead, 'lead')
  const people: People = {
    admin,
    lead,
    quality: await bring(lead, CAST.quality, 'quality'),
    designer: await bring(lead, CAST.designer, 'member'),
    mechanical: await bring(lead, CAST.mechanical, 'member'),
    observer: await bring(lead, CAST.observer, 'observer'),
    auditor: await bring(lead, CAST.auditor, 'auditor'),
    brackenfold: await bring(lead, CAST.brackenfold, { fabricator: 'Brackenfold Circuits' }),
    ostrel: await bring(lead, CAST.ostrel, { fabricator: 'Ostrel Flexible' }),
  }
  const contractor = await bring(lead, CONTRACTOR, 'member')
  // Before anything else is done: from here on nobody beyond this machine gets in with the published password.
  await markAccountsAsDemo()
  // Anyone who runs the workspace has no say in a project by that.
  await carryOut('the admin leaves Skua', () => removeMember(lead, { projectId: skuaId, userId: admin.userId }))

  const { projectId: pipitId } = await carryOut('create Pipit', () =>
    createProject(lead, {
      name: 'Pipit',
      description: 'Chest patch: two-layer flexible circuit with three electrode arms, bent once round its housing.',
    }),
  )
  await bringAlong(lead, pipitId, CAST.quality, people.quality, 'quality')
  await bringAlong(lead, pipitId, CAST.designer, people.designer, 'member')
  await bringAlong(lead, pipitId, CAST.mechanical, people.mechanical, 'member')
  await bringAlong(lead, pipitId, CAST.observer, people.observer, 'observer')
  await bringAlong(lead, pipitId, CAST.auditor, people.auditor, 'auditor')
  await grantCapacities(stage, people, [skuaId, pipitId])
  const companyOf = async (actor: Actor) => {
    const { memberships } = await getActorOf(actor.userId)
    const companyId = memberships[0]?.companyId
    if (companyId === undefined) throw new StoryError('a fabricator has no company')
    return companyId
  }
  const companies = { brackenfold: await companyOf(people.brackenfold), ostrel: await companyOf(people.ostrel) }
  const workspace = { people, skuaId, pipitId, companies }
  await settleCompanies(stage, workspace)
  await playImpostor(stage, workspace, contractor)
  return workspace
}

/** Nobody says of themselves in what capacity they sign: the admin says it of the lead, and the lead of quality. */
async function grantCapacities({ carryOut }: Stage, people: People, projectIds: readonly string[]): Promise<void> {
  for (const projectId of projectIds) {
    await carryOut('let the lead sign', () =>
      grantCapacity(people.admin, {
        projectId,
        userId: people.lead.userId,
        capacity: 'lead engineer',
        statement: 'Answers for the design as a whole, and that the people it needed have looked at it.',
      }),
    )
    await carryOut('let quality sign', () =>
      grantCapacity(people.lead, {
        projectId,
        userId: people.quality.userId,
        capacity: 'quality engineer',
        statement: 'Answers for the review: that it was done by people who did not make the design.',
      }),
    )
  }
}

const EVERYTHING = { matrix: 'shown', shelf: 'shown', rates: 'shown' } as const

/** The admin confirms both names; each company's administrator lets the teams have its sheets. */
async function settleCompanies({ carryOut }: Stage, { people, skuaId, pipitId, companies }: Workspace): Promise<void> {
  for (const companyId of Object.values(companies)) {
    await carryOut('confirm a company', () => confirmCompany(people.admin, { companyId }))
  }
  const show = async (actor: Actor, companyId: string, projectId: string) => {
    const { inside } = await getCompany(actor, companyId)
    const seenVersion = inside?.participations.find((part) => part.projectId === projectId)?.version ?? 0
    await carryOut('show the sheets', () =>
      setCompanySharing(actor, { companyId, projectId, ...EVERYTHING, seenVersion }),
    )
  }
  await show(people.brackenfold, companies.brackenfold, skuaId)
  await show(people.ostrel, companies.ostrel, skuaId)
  await carryOut('ask Ostrel for Pipit', () =>
    createInvitation(people.lead, { projectId: pipitId, role: 'fabricator', companyName: 'Ostrel Flexible' }),
  )
  await carryOut('Ostrel takes part in Pipit', () =>
    decideParticipation(people.ostrel, {
      companyId: companies.ostrel,
      projectId: pipitId,
      decision: 'take-part',
      reason: '',
      seenVersion: 1,
    }),
  )
  await show(people.ostrel, companies.ostrel, pipitId)
  await carryOut('Ostrel names who joins Pipit', () =>
    bringToProject(people.ostrel, { companyId: companies.ostrel, projectId: pipitId, userId: people.ostrel.userId }),
  )
}

/** A contractor tries to become Brackenfold in a project of their own: Brackenfold is asked, declines, and it is on record. */
async function playImpostor(
  { carryOut }: Stage,
  { people, skuaId, companies }: Workspace,
  contractor: Actor,
): Promise<void> {
  const { projectId } = await carryOut('the contractor creates a project', () =>
    createProject(contractor, { name: 'Prices', description: '' }),
  )
  const asked = await carryOut('the contractor invites themselves as Brackenfold', () =>
    createInvitation(contractor, {
      projectId,
      role: 'fabricator',
      companyName: 'brackenfold  circuits',
      email: 'sales.desk@throwaway.example',
    }),
  )
  if (!asked.isAsked) throw new StoryError('somebody became a company by typing its name')
  await carryOut('Brackenfold declines', () =>
    decideParticipation(people.brackenfold, {
      companyId: companies.brackenfold,
      projectId,
      decision: 'decline',
      reason: 'We do not know this project, and the address is not ours.',
      seenVersion: 1,
    }),
  )
  await carryOut('the contractor leaves Skua', () =>
    removeMember(people.lead, { projectId: skuaId, userId: contractor.userId }),
  )
  await carryOut('the account is disabled', () =>
    setAccountState(people.admin, { userId: contractor.userId, isDisabled: true }),
  )
}

/** Limits of the workspace and of each fabricator: an item says whose it used. */
export async function setLimits({ carryOut, clock }: Stage, { people, companies }: Workspace): Promise<void> {
  clock.goTo(121, 9)
  const limits = [
    [
      people.admin,
      undefined,
      'bendToRigidMm',
      3,
      'House rule since a cable tore at the board edge in an earlier head.',
    ],
    [people.brackenfold, companies.brackenfold, 'coverlayWebMm', 0.25, 'Punched coverlay; narrower strips tear.'],
    [people.brackenfold, companies.brackenfold, 'conductorWidthMm', 0.1, 'On foil up to 18 µm.'],
    [people.ostrel, companies.ostrel, 'conductorSpaceMm', 0.12, 'On foil up to 18 µm.'],
    [people.ostrel, companies.ostrel, 'coverlayCaptureMm', 0.12, 'Lamination drift of our coverlay press.'],
  ] as const
  for (const [actor, companyId, key, value, note] of limits) {
    const owner = companyId === undefined ? {} : { companyId }
    await carryOut(`set ${key}`, () => setLimit(actor, { ...owner, key, value, note, seenVersion: 0 }))
  }
}

/** Invitations that nobody has used: one open, one withdrawn. */
export async function leaveInvitations({ carryOut }: Stage, { people, skuaId, companies }: Workspace): Promise<void> {
  await carryOut('Brackenfold invites a second engineer', () =>
    inviteToCompany(people.brackenfold, { companyId: companies.brackenfold, projectId: skuaId, role: 'sheet-writer' }),
  )
  const { invitation } = await carryOut('invite a wrong address', () =>
    createInvitation(people.lead, { projectId: skuaId, role: 'observer', email: 'perin.ashgrove@quillmoor.example' }),
  )
  await carryOut('withdraw that invitation', () => revokeInvitation(people.lead, { invitationId: invitation.id }))
}
