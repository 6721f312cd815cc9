import { readFileSync } from 'node:fs'
import {
  type Actor,
  advanceRevision,
  answerItem,
  attachFile,
  createRevision,
  decideWaiver,
  declareBuildable,
  declareReviewed,
  getRevision,
  type ItemView,
  proposeWaiver,
  type RevisionView,
  releaseRevision,
  shareRevision,
  signRevision,
} from '@/lib/data'
import { needsLookedAt } from '@/lib/review'
import { expectDone } from './act-results'
import { PASSWORD, type Team } from './people'

/** A demo design's text: a constructed part, not a toy. */
export function readSeedDesign(name: 'skua-rev-a' | 'skua-rev-b' | 'pipit-rev-a'): string {
  return readFileSync(new URL(`../../seed/designs/${name}.json`, import.meta.url), 'utf8')
}

let count = 0

/** Labels given out so far. */
export const countLabels = (): number => count

/** Labels go on from here, in a database in which another process made revisions. */
export function goOnAfterRevisions(made: number): void {
  count = Math.max(count, made)
}

/** A revision in `preparing`, made by the member. */
export async function makeRevision(
  team: Team,
  design: Parameters<typeof readSeedDesign>[0] = 'pipit-rev-a',
): Promise<string> {
  count += 1
  const origin = { kind: 'import' as const, designText: readSeedDesign(design) }
  const input = { projectId: team.projectId, label: `R${count}`, origin }
  return (await expectDone(createRevision(team.member, input))).revisionId
}

/** Where a test may want a review to stand, in order. */
export const STAGES = ['early-review', 'fabricator-review', 'awaiting-signature', 'released'] as const
export type Stage = (typeof STAGES)[number]

/** From the stage before, by the people whose turn it is; shared with both fabricators. */
const BRING_TO: Readonly<Record<Stage, (team: Team, revisionId: string) => Promise<void>>> = {
  'early-review': async (team, revisionId) => {
    await share(team, revisionId)
    await advance(team, revisionId)
  },
  'fabricator-review': async (team, revisionId) => {
    await answerEverything(team, revisionId)
    await advance(team, revisionId)
  },
  'awaiting-signature': async (team, revisionId) => {
    await declareByBoth(team, revisionId)
    await answerEverything(team, revisionId)
    await advance(team, revisionId)
    await declareReview(team.quality, revisionId)
  },
  released: async (team, revisionId) => {
    await sign(team.lead, revisionId)
    await release(team, revisionId)
  },
}

export async function advance(team: Team, revisionId: string): Promise<void> {
  const { version } = await getRevision(team.lead, revisionId)
  await expectDone(advanceRevision(team.lead, { revisionId, seenVersion: version }))
}

/** From the stage before. */
export const bringTo = (stage: Stage, team: Team, revisionId: string) => BRING_TO[stage](team, revisionId)

/**
 * Act by act, some seconds of work. Where the acts on the way do not matter, `current().startFrom(stage)` has the same review out of a
 * copied database.
 */
export async function makeRevisionAt(team: Team, stage: Exclude<Stage, 'released'>): Promise<string> {
  const revisionId = await makeRevision(team)
  for (const next of STAGES.slice(0, STAGES.indexOf(stage) + 1)) await bringTo(next, team, revisionId)
  return revisionId
}

/** Somebody who made none of it declares the present content reviewed. */
export async function declareReview(actor: Actor, revisionId: string): Promise<void> {
  const { version } = await getRevision(actor, revisionId)
  await expectDone(declareReviewed(actor, { revisionId, seenVersion: version, note: '', password: PASSWORD }))
}

export async function share(team: Team, revisionId: string): Promise<void> {
  for (const companyId of [team.companies.brackenfold, team.companies.ostrel]) {
    await expectDone(shareRevision(team.lead, { revisionId, companyId }))
  }
}

export async function declareByBoth(team: Team, revisionId: string): Promise<void> {
  for (const actor of [team.fabricator, team.rivalFabricator]) {
    const { version } = await getRevision(actor, revisionId)
    await expectDone(
      declareBuildable(actor, {
        revisionId,
        seenVersion: version,
        verdict: 'buildable',
        note: '',
        conditions: [],
        password: PASSWORD,
      }),
    )
  }
}

/**
 * Answers every open item that somebody may answer, and waives what failed: by the second lead, or the lead where the second one made the
 * design. `mayStayOpen`: where both made it, or a waiver waits for its decision already, it stays as it is.
 */
export async function answerEverything(team: Team, revisionId: string, { mayStayOpen = false } = {}): Promise<void> {
  for (const actor of [team.member, team.fabricator]) {
    for (const item of (await getRevision(actor, revisionId)).items) {
      if (item.state === 'open' && item.mayAnswer) await answer(actor, revisionId, item)
    }
  }
  for (const item of (await getRevision(team.lead, revisionId)).items) {
    if (!item.needsWaiver) continue
    const reason = 'accepted for this build'
    const proposal = await proposeWaiver(team.member, { revisionId, itemId: item.itemId, reason })
    if (!proposal.ok && mayStayOpen) continue
    const { waiverId } = await expectDone(Promise.resolve(proposal))
    const approval = { waiverId, decision: 'approve' as const, reason: '', password: PASSWORD }
    const bySecond = await decideWaiver(team.secondLead, approval)
    const decided = bySecond.ok ? bySecond : await decideWaiver(team.lead, approval)
    if (!mayStayOpen) await expectDone(Promise.resolve(decided))
  }
}

export async function answer(actor: Actor, revisionId: string, item: ItemView): Promise<void> {
  const state = item.legalStates.includes('meets') ? 'meets' : 'concern'
  const isStatement = needsLookedAt(item.result, state)
  await expectDone(
    answerItem(actor, {
      revisionId,
      itemId: item.itemId,
      seenVersion: item.answerVersion,
      state,
      reason: 'looked at on the drawing',
      ...(isStatement
        ? { lookedAt: { sheet: 'Sheet 1', layer: 'L1', sha256: await attachPlot(actor, revisionId, item) } }
        : {}),
    }),
  )
}

/** A plot beside the item, which a statement may rest on; the one that is there already, where there is one. */
export async function attachPlot(
  actor: Actor,
  revisionId: string,
  { itemId, viewableFiles }: ItemView,
): Promise<string> {
  const [present] = viewableFiles
  if (present !== undefined) return present.sha256
  const bytes = new TextEncoder().encode(`Plot of the layers, looked at for ${itemId}\n`)
  const target = { kind: 'item' as const, itemId }
  return (await expectDone(attachFile(actor, { revisionId, target, fileName: 'plot.txt', bytes }))).sha256
}

/** What the sign-off page sends for this person and this view. */
export function makeSignInput(view: RevisionView) {
  return {
    revisionId: view.id,
    seenVersion: view.version,
    contentHash: view.contentHash,
    capacity: 'lead engineer',
    statement: view.statement,
    password: PASSWORD,
  }
}

export async function sign(actor: Actor, revisionId: string): Promise<string> {
  const view = await getRevision(actor, revisionId)
  return (await expectDone(signRevision(actor, makeSignInput(view)))).signatureId
}

/** @param reason  why it replaces the earlier release: asked for where the project has one */
export async function release(team: Team, revisionId: string, reason?: string): Promise<void> {
  const { version } = await getRevision(team.lead, revisionId)
  const why = reason === undefined ? {} : { reason }
  await expectDone(
    releaseRevision(team.lead, { revisionId, seenVersion: version, purpose: 'prototypes', password: PASSWORD, ...why }),
  )
}

/** As `makeRevisionAt`, and released. */
export async function makeReleasedRevision(team: Team, reason?: string): Promise<string> {
  const revisionId = await makeRevisionAt(team, 'awaiting-signature')
  await sign(team.lead, revisionId)
  await release(team, revisionId, reason)
  return revisionId
}
