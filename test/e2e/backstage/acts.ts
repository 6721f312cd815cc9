import { encode } from 'next-auth/jwt'
import { getSecrets, replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import type { OwnRole } from '@/lib/review'
import { CAST, DEMO_PASSWORD } from '@/seed/sign-ins'
import { expectDone, expectInvited } from '@/test/factories/act-results'
import { getActorOf } from '@/test/factories/people'
import { answer, readSeedDesign } from '@/test/factories/reviews'

/**
 * What browser tests have done for them besides the browser, by a process of its own on the server's database. Nearly all
 * of it goes through the functions that the screens call; what does not says why.
 */

const DAY_MS = 86_400_000
const SESSION_SECONDS = 3600

async function getActor(email: string): Promise<data.Actor> {
  const user = await db().user.findUniqueOrThrow({ where: { email }, select: { id: true } })
  return getActorOf(user.id)
}

/** An administrator of the company agrees to a project, shows its team everything, and joins it. */
async function agree(administrator: data.Actor, projectId: string, companyId: string): Promise<void> {
  const part = { companyId, projectId }
  await expectDone(
    data.decideParticipation(administrator, { ...part, decision: 'take-part', reason: '', seenVersion: 1 }),
  )
  const shown = { matrix: 'shown', shelf: 'shown', rates: 'shown' } as const
  await expectDone(data.setCompanySharing(administrator, { ...part, ...shown, seenVersion: 2 }))
  await expectDone(data.bringToProject(administrator, { ...part, userId: administrator.userId }))
}

type SeedDesign = Parameters<typeof readSeedDesign>[0]

export interface ProjectOrder {
  readonly name: string
  readonly lead: string
  /** E-mail addresses of people who have an account. */
  readonly team?: Readonly<Record<string, OwnRole>>
  readonly fabricators?: Readonly<Record<string, string>>
}

export const acts = {
  /** Value of the session cookie: the form itself is tested once, and takes a second of hashing each time. */
  async makeSession({ email }: { email: string }): Promise<string> {
    const { userId, name } = await getActor(email)
    const { sessionId } = await data.openSession(userId, 'invitation', { ...data.OWN_VISIT, device: 'a test' })
    const token = { sub: userId, name, email, sessionId }
    return encode({ token, secret: getSecrets().sessionSecret, maxAge: SESSION_SECONDS })
  },

  async findDemo(): Promise<
    Record<
      | 'skuaId'
      | 'skuaA'
      | 'skuaB'
      | 'pipitId'
      | 'pipitA'
      | 'brackenfoldId'
      | 'proposalId'
      | 'meetingId'
      | 'mailId'
      | 'artworkId'
      | 'attachmentId',
      string
    >
  > {
    const project = (name: string) => db().project.findFirstOrThrow({ where: { name }, include: { revisions: true } })
    const [skua, pipit] = [await project('Skua'), await project('Pipit')]
    const idOf = (revisions: readonly { id: string; label: string }[], label: string) =>
      revisions.find((revision) => revision.label === label)?.id ?? ''
    const proposal = await db().proposal.findFirstOrThrow({ where: { revisionId: idOf(skua.revisions, 'B') } })
    const meeting = await db().meeting.findFirstOrThrow({ where: { revisionId: idOf(skua.revisions, 'B') } })
    const mail = await db().mailMessage.findFirstOrThrow({ where: { kind: 'proposal' }, orderBy: { createdAt: 'asc' } })
    const artwork = await db().artwork.findFirstOrThrow({ where: { revisionId: idOf(pipit.revisions, 'A') } })
    const attachment = await db().attachment.findFirstOrThrow({
      where: { revisionId: artwork.revisionId, itemId: { not: null } },
    })
    const brackenfold = await db().company.findFirstOrThrow({ where: { name: 'Brackenfold Circuits' } })
    return {
      skuaId: skua.id,
      skuaA: idOf(skua.revisions, 'A'),
      skuaB: idOf(skua.revisions, 'B'),
      pipitId: pipit.id,
      pipitA: idOf(pipit.revisions, 'A'),
      brackenfoldId: brackenfold.id,
      proposalId: proposal.id,
      meetingId: meeting.id,
      mailId: mail.id,
      artworkId: artwork.id,
      attachmentId: attachment.id,
    }
  },

  async makeProject({ name, lead, team = {}, fabricators = {} }: ProjectOrder): Promise<string> {
    const leader = await getActor(lead)
    const { projectId } = await expectDone(data.createProject(leader, { name, description: '' }))
    for (const [email, role] of Object.entries(team)) {
      const { token } = await expectDone(data.createInvitation(leader, { projectId, email, role }))
      await expectDone(data.joinByInvitation(await getActor(email), { token }))
    }
    for (const [email, companyName] of Object.entries(fabricators)) {
      const asked = await expectDone(data.createInvitation(leader, { projectId, role: 'fabricator', companyName }))
      if (!asked.isAsked) throw new Error(`${companyName} is not known`)
      await agree(await getActor(email), projectId, asked.company.id)
    }
    // Nobody says of themselves in what capacity they sign.
    const capacity = { capacity: 'lead engineer', statement: 'Answers for the design as a whole.' }
    const admin = await getActor(CAST.admin.email)
    await expectDone(data.grantCapacity(admin, { projectId, userId: leader.userId, ...capacity }))
    return projectId
  },

  /** A new account; it joins the project by an invitation of its own. */
  async makeAccount(input: { projectId: string; lead: string; name: string; email: string; password: string }) {
    const { projectId, lead, ...person } = input
    const { token } = await expectDone(
      data.createInvitation(await getActor(lead), { projectId, role: 'member', email: person.email }),
    )
    await expectDone(data.acceptInvitation({ token, ...person }))
  },

  /** The link of an invitation that was made so many days ago. */
  async makeInvitation(input: { projectId: string; lead: string; daysAgo: number; companyName: string }) {
    const restore = replaceClock(() => new Date(Date.now() - input.daysAgo * DAY_MS))
    try {
      const { projectId, companyName } = input
      const order = { projectId, role: 'fabricator' as const, companyName }
      return (await expectInvited(data.createInvitation(await getActor(input.lead), order))).link
    } finally {
      restore()
    }
  },

  /** A limit of a fabricator's; null takes it away again. */
  async setCompanyLimit(input: { by: string; companyId: string; key: string; value: number | null }) {
    const { by, ...limit } = input
    const stored = await db().limit.findUnique({
      where: { ownerKey_key: { ownerKey: limit.companyId, key: limit.key } },
    })
    await expectDone(data.setLimit(await getActor(by), { ...limit, note: '', seenVersion: stored?.version ?? 0 }))
  },

  /** From a demo design, as it is or as before anybody drew it in plan. */
  async makeRevision(input: {
    projectId: string
    by: string
    label: string
    design: SeedDesign
    withoutPlan?: boolean
  }): Promise<string> {
    const { projectId, by, label, design, withoutPlan = false } = input
    const text = readSeedDesign(design)
    const designText = withoutPlan ? JSON.stringify({ ...JSON.parse(text), plan: null }) : text
    const origin = { kind: 'import' as const, designText }
    return (await expectDone(data.createRevision(await getActor(by), { projectId, label, origin }))).revisionId
  },

  /** Replaces the design of a revision by a demo design, as importing its file and saving does. */
  async importDesign(input: { revisionId: string; by: string; design: SeedDesign }): Promise<void> {
    const { design, ...order } = input
    await acts.importDesignText({ ...order, designText: readSeedDesign(design) })
  },

  async importDesignText(input: { revisionId: string; by: string; designText: string }): Promise<void> {
    const actor = await getActor(input.by)
    const { revisionId, designText } = input
    const { designVersion } = await data.getRevision(actor, revisionId)
    await expectDone(data.importDesign(actor, { revisionId, seenVersion: designVersion, designText }))
  },

  async shareAndAdvance(input: { revisionId: string; lead: string }): Promise<void> {
    const lead = await getActor(input.lead)
    const { project, sharedWith } = await data.getRevision(lead, input.revisionId)
    for (const { id: companyId } of await data.listFabricators(lead, project.id)) {
      if (sharedWith.some(({ id }) => id === companyId)) continue
      await expectDone(data.shareRevision(lead, { revisionId: input.revisionId, companyId }))
    }
    const { version: seenVersion } = await data.getRevision(lead, input.revisionId)
    await expectDone(data.advanceRevision(lead, { revisionId: input.revisionId, seenVersion }))
  },

  /**
   * Answers every item that is still open and that one of these people may answer. A checklist has some eighty items: a
   * journey fills a dozen by hand, and the rest by the same function as the form calls.
   */
  async answerTheRest(input: { revisionId: string; people: readonly string[] }): Promise<number> {
    let count = 0
    for (const email of input.people) {
      const actor = await getActor(email)
      for (const item of (await data.getRevision(actor, input.revisionId)).items) {
        if (item.state !== 'open' || !item.mayAnswer) continue
        await answer(actor, input.revisionId, item)
        count += 1
      }
    }
    return count
  },

  /** Has every failure that still asks for a waiver waived: proposed by one person, approved by another. */
  async waiveTheRest(input: { revisionId: string; by: string; approver: string }): Promise<number> {
    const { revisionId } = input
    const [actor, approver] = [await getActor(input.by), await getActor(input.approver)]
    const items = (await data.getRevision(actor, revisionId)).items.filter(({ needsWaiver }) => needsWaiver)
    for (const { itemId } of items) {
      const reason = 'accepted for the first build'
      const { waiverId } = await expectDone(data.proposeWaiver(actor, { revisionId, itemId, reason }))
      await expectDone(
        data.decideWaiver(approver, { waiverId, decision: 'approve', reason: '', password: DEMO_PASSWORD }),
      )
    }
    return items.length
  },

  async declare(input: { revisionId: string; by: string; password?: string }): Promise<void> {
    const actor = await getActor(input.by)
    const { version: seenVersion } = await data.getRevision(actor, input.revisionId)
    const { revisionId } = input
    await expectDone(
      data.declareBuildable(actor, {
        revisionId,
        seenVersion,
        verdict: 'buildable',
        note: '',
        conditions: [],
        password: input.password ?? DEMO_PASSWORD,
      }),
    )
  },

  /** Somebody who made none of it declares the content reviewed. */
  async review(input: { revisionId: string; by: string }): Promise<void> {
    const actor = await getActor(input.by)
    const { version: seenVersion } = await data.getRevision(actor, input.revisionId)
    const { revisionId } = input
    await expectDone(data.declareReviewed(actor, { revisionId, seenVersion, note: '', password: DEMO_PASSWORD }))
  },

  /** What the server holds of a revision, for comparison with what the screen says. */
  async readRevision(input: { revisionId: string; as: string }): Promise<data.RevisionView> {
    return data.getRevision(await getActor(input.as), input.revisionId)
  },

  async listRevisions(input: { projectId: string; as: string }): Promise<readonly data.RevisionSummary[]> {
    return (await data.getProject(await getActor(input.as), input.projectId)).revisions
  },

  async checkTrail(input: { as: string }): Promise<data.WholeTrailCheck> {
    return data.checkWholeTrail(await getActor(input.as))
  },
}

export type Acts = typeof acts
