import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import type { Design } from '@/lib/engine'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { answerEverything, makeRevision, share, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** The design with another inside radius at its first bend. */
function withRadius(design: Design, insideRadiusMm: number): Design {
  const [first, ...others] = design.bends
  if (first === undefined) throw new Error('the design has no bend')
  return { ...design, bends: [{ ...first, insideRadiusMm }, ...others] }
}

async function propose(actor: data.Actor, revisionId: string, change: (design: Design) => Design, companyId?: string) {
  const view = await data.getRevision(actor, revisionId)
  return expectDone(
    data.proposeChange(actor, {
      revisionId,
      seenVersion: view.designVersion,
      design: change(view.design),
      title: 'Wider bend',
      why: 'The press brake has no smaller tool.',
      kind: 'must-change',
      ...(companyId === undefined ? {} : { companyId }),
    }),
  )
}

async function accept(actor: data.Actor, proposalId: string) {
  const { designVersion: seenVersion } = await data.getProposal(actor, proposalId)
  return data.decideProposal(actor, { proposalId, seenVersion, decision: 'accept', reason: 'agreed' })
}

async function makeShared(team: Team): Promise<string> {
  const revisionId = await makeRevision(team)
  await share(team, revisionId)
  return revisionId
}

describeOnBothDatabases('a proposed change', (current) => {
  it('is kept as a patch with a thread of its own, and changes nothing yet', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const before = await data.getRevision(team.lead, revisionId)
    const { proposalId, threadId } = await propose(team.fabricator, revisionId, (design) => withRadius(design, 25))
    const after = await data.getRevision(team.lead, revisionId)
    expect(after).toMatchObject({ designHash: before.designHash, designVersion: before.designVersion })
    expect(after.proposals).toMatchObject([{ id: proposalId, state: 'proposed', threadId }])
    expect(after.threads.find(({ id }) => id === threadId)).toMatchObject({ kind: 'must-change', state: 'open' })
    const waits = async (actor: data.Actor) =>
      (await data.listWaits(actor)).filter((wait) => wait.revisionId === revisionId && wait.target.tab === 'proposals')
    expect(await waits(team.lead)).toMatchObject([{ nextAct: 'Accept or decline it', target: { id: proposalId } }])
    expect(await waits(team.fabricator)).toEqual([])
    const proposal = await data.getProposal(team.lead, proposalId)
    expect(proposal.comparison.changes).toHaveLength(1)
    expect(proposal.comparison.changes[0]?.sentence).toMatch(/inside radius .* mm to 25 mm$/)
    expect(proposal.patch.map(({ op }) => op)).toEqual(['test', 'test', 'replace'])
    expect(proposal).toMatchObject({ comparedWith: 'present', obstacles: [], may: { decide: true, withdraw: false } })
  })

  it('is applied when it is accepted: saved, evaluated, with its thread closed', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const { proposalId, threadId } = await propose(team.fabricator, revisionId, (design) => withRadius(design, 25))
    const { designVersion } = await expectDone(accept(team.lead, proposalId))
    const view = await data.getRevision(team.lead, revisionId)
    expect(view.design.bends[0]?.insideRadiusMm).toBe(25)
    expect(view.designVersion).toBe(designVersion)
    expect(view.evaluationRecord.staleBecause).toEqual([])
    expect(view.evaluation.bends[0]?.ratio.actual).toBeGreaterThan(0)
    expect(view.threads.find(({ id }) => id === threadId)?.state).toBe('closed')
    expect(await data.getProposal(team.fabricator, proposalId)).toMatchObject({
      state: 'accepted',
      decisionNote: 'agreed',
      madeVersion: designVersion,
      comparedWith: 'base',
      may: { decide: false, withdraw: false },
    })
    expect((await data.checkWholeTrail(team.admin)).firstBad).toBeNull()
  })

  it('applies to a design that has moved on elsewhere, and keeps what moved', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const { proposalId } = await propose(team.fabricator, revisionId, (design) => withRadius(design, 25))
    const { design, designVersion } = await data.getRevision(team.member, revisionId)
    const moved = { ...design, brief: { ...design.brief, quantityPerYear: 4321 } }
    await expectDone(data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design: moved }))
    await expectDone(accept(team.lead, proposalId))
    const after = await data.getRevision(team.lead, revisionId)
    expect(after.design.bends[0]?.insideRadiusMm).toBe(25)
    expect(after.design.brief.quantityPerYear).toBe(4321)
  })

  it('is refused where it no longer applies, saying which operation and why; nothing is written', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const { proposalId } = await propose(team.fabricator, revisionId, (design) => withRadius(design, 25))
    const { design, designVersion } = await data.getRevision(team.member, revisionId)
    const moved = withRadius(design, 16)
    await expectDone(data.saveDesign(team.member, { revisionId, seenVersion: designVersion, design: moved }))
    const shown = await data.getProposal(team.lead, proposalId)
    expect(shown.comparedWith).toBe('base')
    const refusal = await expectRefused(accept(team.lead, proposalId))
    expect(refusal.kind).toBe('clash')
    const issues = refusal.kind === 'clash' ? refusal.issues : []
    expect(issues).toHaveLength(1)
    expect(issues[0]?.message).toMatch(
      /^operation 2 of 3 \(test \/bends\/0\/insideRadiusMm\): [Bb]end .* inside radius: the proposal was made on .* mm, the design now has 16 mm$/,
    )
    expect(shown.obstacles).toEqual(issues.map(({ message }) => message))
    const after = await data.getRevision(team.lead, revisionId)
    expect(after.design.bends[0]?.insideRadiusMm).toBe(16)
    expect(after.proposals[0]?.state).toBe('proposed')
  })

  it('is refused where the result would not be a design: the part that it needs is gone', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const addBend = (design: Design): Design => {
      const first = design.bends[0]
      if (first === undefined) throw new Error('the design has no bend')
      return { ...design, bends: [...design.bends, { ...first, id: 'bend-extra', name: 'Extra' }] }
    }
    const { proposalId } = await propose(team.fabricator, revisionId, addBend)
    const { proposalId: same } = await propose(team.member, revisionId, addBend)
    await expectDone(accept(team.lead, proposalId))
    const refusal = await expectRefused(accept(team.lead, same))
    expect(['clash', 'invalid']).toContain(refusal.kind)
    expect(
      (await data.getRevision(team.lead, revisionId)).design.bends.filter(({ id }) => id === 'bend-extra'),
    ).toHaveLength(1)
  })

  it('voids a signature by being made, for the thread it opens, and the next one by being accepted', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const first = await sign(team.lead, revisionId)
    const view = await data.getRevision(team.fabricator, revisionId)
    const { proposalId } = await expectDone(
      data.proposeChange(team.fabricator, {
        revisionId,
        seenVersion: view.designVersion,
        design: withRadius(view.design, 25),
        title: 'Wider bend',
        why: 'It would be cheaper.',
        kind: 'note',
      }),
    )
    const signatureOf = async (id: string) =>
      (await data.getRevision(team.lead, revisionId)).signatures.find((signature) => signature.id === id)
    const made = await signatureOf(first)
    expect(made?.voidedAt).not.toBeNull()
    expect(made?.changes.join('\n')).toContain('"Wider bend"')
    expect(made?.changes.join('\n'), 'the design is as it was').not.toContain('25 mm')

    // Who signs again signs with the proposal open. The review was of design and artwork, and stands.
    const second = await sign(team.lead, revisionId)
    expect((await signatureOf(second))?.voidedAt).toBeNull()
    const accepted = await expectDone(accept(team.lead, proposalId))
    expect(accepted.voidedSignatures).toBe(1)
    expect((await signatureOf(second))?.changes.join('\n')).toContain('to 25 mm')
  }, 400_000)

  it('is declined with a reason that answers its thread', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const { proposalId, threadId } = await propose(team.fabricator, revisionId, (design) => withRadius(design, 25))
    const decline = { proposalId, seenVersion: 1, decision: 'decline' as const, reason: 'no room in the housing' }
    await expectDone(data.decideProposal(team.member, decline))
    const view = await data.getRevision(team.fabricator, revisionId)
    expect(view.proposals).toMatchObject([{ state: 'declined', decisionNote: 'no room in the housing' }])
    const thread = view.threads.find(({ id }) => id === threadId)
    expect(thread?.state).toBe('answered')
    expect(thread?.comments.at(-1)?.text).toContain('no room in the housing')
  })

  it('is withdrawn by its author alone, and then decided no more', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const { proposalId } = await propose(team.fabricator, revisionId, (design) => withRadius(design, 25))
    await expect(data.withdrawProposal(team.lead, { proposalId, reason: '' })).rejects.toThrow(data.NotAllowedError)
    await expectDone(data.withdrawProposal(team.fabricator, { proposalId, reason: 'found another tool' }))
    expect((await expectRefused(accept(team.lead, proposalId))).kind).toBe('clash')
  })

  it('is unknown to another fabricator, thread and trail included', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const { proposalId } = await propose(team.fabricator, revisionId, (design) => withRadius(design, 25))
    const rival = team.rivalFabricator
    await expect(data.getProposal(rival, proposalId)).rejects.toThrow(data.NotFoundError)
    const sides = { from: { kind: 'base', id: proposalId }, to: { kind: 'proposal', id: proposalId } } as const
    await expect(data.compareInProject(rival, { projectId: team.projectId, ...sides })).rejects.toThrow(
      data.NotFoundError,
    )
    const view = await data.getRevision(rival, revisionId)
    expect(JSON.stringify([view, await data.listComparable(rival, team.projectId)])).not.toContain('Wider bend')
    await expectDone(accept(team.lead, proposalId))
    const after = await data.getRevision(rival, revisionId)
    expect(JSON.stringify(after)).not.toMatch(/Wider bend|Brackenfold|press brake/)
    expect(after.design.bends[0]?.insideRadiusMm).toBe(25)
  })

  it('of the team stays within the team, unless a fabricator is named', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const own = await propose(team.member, revisionId, (design) => withRadius(design, 25))
    const shared = await propose(
      team.member,
      revisionId,
      (design) => withRadius(design, 26),
      team.companies.brackenfold,
    )
    await expect(data.getProposal(team.fabricator, own.proposalId)).rejects.toThrow(data.NotFoundError)
    expect((await data.getProposal(team.fabricator, shared.proposalId)).title).toBe('Wider bend')
  })

  it('changes construction, bends and features, and nothing else', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const view = await data.getRevision(team.fabricator, revisionId)
    const base = { revisionId, title: 'x', why: 'y', kind: 'note' as const, seenVersion: view.designVersion }
    const brief = { ...view.design, brief: { ...view.design.brief, quantityPerYear: 5 } }
    const refused = await expectRefused(data.proposeChange(team.fabricator, { ...base, design: brief }))
    expect(refused).toMatchObject({ kind: 'invalid', issues: [{ path: ['design', 'brief', 'quantityPerYear'] }] })
    expect((await expectRefused(data.proposeChange(team.fabricator, { ...base, design: view.design }))).kind).toBe(
      'invalid',
    )
    const late = { ...base, seenVersion: 99, design: withRadius(view.design, 25) }
    expect((await expectRefused(data.proposeChange(team.fabricator, late))).kind).toBe('stale')
    expect(await db().proposal.count({ where: { revisionId } })).toBe(0)
  })

  it('is accepted once, no matter who presses at the same moment, and once per request key', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const { proposalId } = await propose(team.fabricator, revisionId, (design) => withRadius(design, 25))
    const { designVersion } = await data.getProposal(team.lead, proposalId)
    const input = { proposalId, seenVersion: designVersion, decision: 'accept' as const, reason: 'agreed' }
    const outcomes = await Promise.all([
      data.decideProposal(team.lead, input),
      data.decideProposal(team.secondLead, input),
      data.decideProposal(team.member, { ...input, decision: 'decline' }),
    ])
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1)
    expect(outcomes.flatMap((outcome) => (outcome.ok ? [] : outcome.refusal.kind))).toEqual(['clash', 'clash'])
    const { state } = await data.getProposal(team.lead, proposalId)
    const view = await data.getRevision(team.lead, revisionId)
    expect(view.designVersion).toBe(state === 'accepted' ? designVersion + 1 : designVersion)

    const second = await propose(team.fabricator, revisionId, (design) => withRadius(design, 31))
    const { designVersion: seenVersion } = await data.getProposal(team.lead, second.proposalId)
    const keyed = { ...input, proposalId: second.proposalId, seenVersion, requestKey: 'accept-once-0001' }
    const twice = await Promise.all([data.decideProposal(team.lead, keyed), data.decideProposal(team.lead, keyed)])
    expect(twice[0]).toEqual(twice[1])
    expect((await data.getRevision(team.lead, revisionId)).designVersion).toBe(seenVersion + 1)
  }, 400_000)

  it('two proposals on the same number: the second to be accepted is told what is there now', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const one = await propose(team.fabricator, revisionId, (design) => withRadius(design, 25))
    const two = await propose(team.member, revisionId, (design) => withRadius(design, 30))
    const { designVersion: seenVersion } = await data.getRevision(team.lead, revisionId)
    const decide = (proposalId: string) =>
      data.decideProposal(team.lead, { proposalId, seenVersion, decision: 'accept', reason: 'agreed' })
    const outcomes = await Promise.all([decide(one.proposalId), decide(two.proposalId)])
    expect(outcomes.map((outcome) => (outcome.ok ? 'done' : outcome.refusal.kind)).sort()).toEqual(['done', 'stale'])
    const late = outcomes[0]?.ok === true ? two.proposalId : one.proposalId
    const refusal = await expectRefused(accept(team.lead, late))
    expect(refusal.kind === 'clash' && refusal.issues[0]?.message).toContain('the design now has')
  })
})

describeOnBothDatabases('answers on a copied revision', () => {
  it('are taken over while their inputs are the same, and reopened where they changed, saying which', async () => {
    const team = await makeTeam()
    const source = await makeShared(team)
    await answerEverything(team, source)
    const origin = { kind: 'copy' as const, revisionId: source }
    const { revisionId } = await expectDone(
      data.createRevision(team.member, { projectId: team.projectId, label: 'copy', origin }),
    )
    await share(team, revisionId)
    const first = await data.getRevision(team.lead, source)
    const copy = await data.getRevision(team.lead, revisionId)
    const given = first.items.filter(({ answer }) => answer !== null && answer.state !== 'open')
    // What somebody saw on the sheets of the other revision is asked again.
    const seen = given.filter(({ answer }) => answer?.lookedAt != null)
    expect(seen.length).toBeGreaterThan(3)
    for (const { itemId } of seen) {
      const asked = copy.items.find((item) => item.itemId === itemId)
      expect(asked, itemId).toMatchObject({ answer: null, carriedFrom: null })
      expect(asked?.state, itemId).not.toBe('meets')
    }
    const byPerson = given.filter(({ answer }) => answer?.lookedAt == null)
    expect(byPerson.length).toBeGreaterThan(3)
    for (const item of byPerson) {
      const taken = copy.items.find(({ itemId }) => itemId === item.itemId)
      expect(taken?.answer).toMatchObject({ state: item.answer?.state, by: item.answer?.by, at: item.answer?.at })
      expect(taken).toMatchObject({ carriedFrom: first.label, changedInputs: [] })
    }
    const packing = copy.items.find(({ itemId }) => itemId === 'packing')
    expect(packing).toMatchObject({ state: 'meets', setAside: '' })

    const design = { ...copy.design, brief: { ...copy.design.brief, packingAndHandling: 'sealed bags, flat trays' } }
    await expectDone(data.saveDesign(team.member, { revisionId, seenVersion: copy.designVersion, design }))
    const after = await data.getRevision(team.lead, revisionId)
    const reopened = after.items.find(({ itemId }) => itemId === 'packing')
    expect(reopened).toMatchObject({ state: 'open', carriedFrom: first.label })
    expect(reopened?.setAside).toContain('inputs that have changed')
    expect(reopened?.changedInputs).toEqual([expect.stringContaining('to sealed bags, flat trays')])
    // What the fabricator has seen of the design is the one other item that rests on the brief as a whole.
    const moved = after.items.filter(({ changedInputs }) => changedInputs.length > 0).map(({ itemId }) => itemId)
    expect(moved.filter((itemId) => itemId !== 'fabricator-currency')).toEqual(['packing'])

    const compared = await data.compareInProject(team.lead, {
      projectId: team.projectId,
      from: { kind: 'revision', id: source },
      to: { kind: 'revision', id: revisionId },
    })
    expect(compared.comparison.answers.find(({ itemId }) => itemId === 'packing')).toMatchObject({
      state: 'meets',
      now: 'open',
      because: [expect.stringContaining('packing and handling')],
    })

    const again = { revisionId, itemId: 'packing', seenVersion: reopened?.answerVersion ?? 0, reason: 'still right' }
    await expectDone(data.answerItem(team.member, { ...again, state: 'meets' }))
    const settled = (await data.getRevision(team.lead, revisionId)).items.find(({ itemId }) => itemId === 'packing')
    expect(settled).toMatchObject({ state: 'meets', carriedFrom: null, changedInputs: [], setAside: '' })
  }, 400_000)

  it('of a fabricator count once the copy is shared with that company, and say nothing to another', async () => {
    const team = await makeTeam()
    const source = await makeShared(team)
    await answerEverything(team, source)
    const origin = { kind: 'copy' as const, revisionId: source }
    const { revisionId } = await expectDone(
      data.createRevision(team.member, { projectId: team.projectId, label: 'copy', origin }),
    )
    const given = await db().answer.findFirstOrThrow({ where: { revisionId: source, companyId: { not: null } } })
    const find = async (actor: data.Actor) =>
      (await data.getRevision(actor, revisionId)).items.find(({ itemId }) => itemId === given.itemId)
    expect(await find(team.lead)).toMatchObject({ state: 'open' })
    expect((await find(team.lead))?.setAside).toContain('does not see this revision')
    await expectDone(data.shareRevision(team.lead, { revisionId, companyId: team.companies.ostrel }))
    expect(JSON.stringify(await data.getRevision(team.rivalFabricator, revisionId))).not.toMatch(
      /Brackenfold|Bram Tolley/,
    )
    await expectDone(data.shareRevision(team.lead, { revisionId, companyId: team.companies.brackenfold }))
    expect(await find(team.lead)).toMatchObject({ state: given.state, setAside: '' })
  }, 400_000)
})

describeOnBothDatabases('a comparison', (current) => {
  it('of a revision with what was signed shows what changed since', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const signatureId = await sign(team.lead, revisionId)
    const { design, designVersion } = await data.getRevision(team.lead, revisionId)
    const tight = withRadius(design, 1)
    const inService = { radiusToleranceMm: 0.01, use: 'dynamic' as const, requiredCycles: 1e6 }
    const changed = { ...tight, bends: tight.bends.map((bend) => ({ ...bend, ...inService })) }
    await expectDone(data.saveDesign(team.lead, { revisionId, seenVersion: designVersion, design: changed }))
    const sides = { from: { kind: 'signature', id: signatureId }, to: { kind: 'revision', id: revisionId } } as const
    const { comparison, from } = await data.compareInProject(team.observer, { projectId: team.projectId, ...sides })
    expect(from.label).toContain('as signed by Imke Dahl')
    expect(comparison.changes.map(({ sentence }) => sentence).join('\n')).toMatch(/inside radius .* mm to 1 mm/)
    const strain = comparison.verdicts.find(({ itemId }) => itemId === 'fatigue-life')
    expect(strain?.after).toMatchObject({ verdict: 'fails', value: { unit: 'cycles' }, limit: { unit: 'cycles' } })
    const forFabricator = await data.compareInProject(team.fabricator, { projectId: team.projectId, ...sides })
    expect(JSON.stringify(forFabricator)).not.toContain('Ostrel')
    expect(forFabricator.comparison.changes).toEqual(comparison.changes)
  }, 400_000)

  it('reaches no revision that is not shared, and none of another project', async () => {
    const team = await makeTeam()
    const revisionId = await makeShared(team)
    const hidden = await makeRevision(team)
    const ask = (actor: data.Actor, id: string, projectId = team.projectId) =>
      data.compareInProject(actor, {
        projectId,
        from: { kind: 'revision', id: revisionId },
        to: { kind: 'revision', id },
      })
    await expect(ask(team.fabricator, hidden)).rejects.toThrow(data.NotFoundError)
    // The same design twice: what tells them apart is the label, which stands in the brief too.
    const { from, to, comparison } = await ask(team.member, hidden)
    expect(comparison.changes).toEqual([
      expect.objectContaining({
        area: 'brief',
        sentence: expect.stringMatching(/^brief: revision label R\d+ to R\d+$/),
      }),
    ])
    expect([from.label, to.label].join()).toContain(String(comparison.changes[0]?.after))
    const [other] = team.outsider.memberships
    await expect(ask(team.outsider, revisionId, other?.projectId)).rejects.toThrow(data.NotFoundError)
    const refs = (await data.listComparable(team.fabricator, team.projectId)).map(({ ref }) => ref)
    expect(refs).toContain(`revision:${revisionId}`)
    expect(refs).not.toContain(`revision:${hidden}`)
  })
})
