import { strToU8, zipSync } from 'fflate'
import { judgeStatus, readArchive, readStatusList, verifyFiles, verifyPackage } from '@/lib/package'
import { CAST, DEMO_PASSWORD } from '@/seed/sign-ins'
import { expect, test } from './fixtures'
import { type Answer, type HttpClient, openHttpClient } from './http-client'

/**
 * Each blocker of the release gate, attacked as a program would: acts are sent as they are, without a form that keeps anybody from
 * anything. What is refused leaves the record as it was.
 */

type Who = 'designer' | 'lead' | 'quality' | 'brackenfold' | 'ostrel'
const PEOPLE: readonly Who[] = ['designer', 'lead', 'quality', 'brackenfold', 'ostrel']

interface Scene {
  readonly projectId: string
  readonly revisionId: string
  readonly page: string
  readonly people: Readonly<Record<Who, HttpClient>>
}

const password = DEMO_PASSWORD
const { backstage, scene: getScene } = prepare()

/** Of each label one project, made by the first test that asks; reviews that await their signature. */
function prepare() {
  const scenes = new Map<string, Promise<Scene>>()
  type Fixtures = Parameters<Parameters<typeof test.beforeAll>[1]>[0]
  let fixtures: Pick<Fixtures, 'backstage' | 'browser' | 'server'>
  test.beforeAll(({ backstage, browser, server }) => {
    fixtures = { backstage, browser, server }
  })

  async function make(label: string, ofProject: string | null): Promise<Scene> {
    const { backstage, browser, server } = fixtures
    const [lead, by] = [CAST.lead.email, CAST.designer.email]
    const projectId =
      ofProject ??
      (await backstage.act('makeProject', {
        name: `Gate ${label} ${Date.now()}`,
        lead,
        team: { [by]: 'member', [CAST.quality.email]: 'quality' },
        fabricators: {
          [CAST.brackenfold.email]: 'Brackenfold Circuits',
          [CAST.ostrel.email]: 'Ostrel Flexible',
        },
      }))
    const revisionId = await backstage.act('makeRevision', { projectId, by, label, design: 'pipit-rev-a' })
    const people = [by, CAST.brackenfold.email]
    await backstage.act('shareAndAdvance', { revisionId, lead })
    await backstage.act('answerTheRest', { revisionId, people })
    await backstage.act('shareAndAdvance', { revisionId, lead })
    for (const fabricator of [CAST.brackenfold.email, CAST.ostrel.email]) {
      await backstage.act('declare', { revisionId, by: fabricator })
    }
    await backstage.act('answerTheRest', { revisionId, people })
    // The part lies outside of one fabricator's matrix, which its team accepts.
    await backstage.act('waiveTheRest', { revisionId, by, approver: CAST.quality.email })
    await backstage.act('shareAndAdvance', { revisionId, lead })
    await backstage.act('review', { revisionId, by: CAST.quality.email })
    const clients = PEOPLE.map(async (who) => {
      const context = await browser.newContext()
      const { email } = CAST[who]
      const value = await backstage.act('makeSession', { email })
      const { address: url } = server
      await context.addCookies([{ name: 'bendworthy-session', value, url, httpOnly: true, sameSite: 'Lax' }])
      const client = await openHttpClient(context, server)
      await context.close()
      return [who, client] as const
    })
    return {
      projectId,
      revisionId,
      page: `/projects/${projectId}/revisions/${revisionId}/sign-off`,
      people: Object.fromEntries(await Promise.all(clients)) as Scene['people'],
    }
  }

  return {
    backstage: () => fixtures.backstage,
    /** @param ofProject  of an earlier scene; null for a project of its own */
    scene: (label: string, ofProject: string | null = null): Promise<Scene> => {
      const known = scenes.get(label) ?? make(label, ofProject)
      scenes.set(label, known)
      return known
    },
  }
}

const read = ({ revisionId }: Scene, who: Who = 'lead') =>
  backstage().act('readRevision', { revisionId, as: CAST[who].email })

function refusalOf(answer: Answer) {
  if (answer.ok) throw new Error(`was carried out: ${JSON.stringify(answer.value)}`)
  return answer.refusal
}
const codesOf = (answer: Answer): string[] => {
  const refusal = refusalOf(answer)
  return refusal.kind === 'blocked' ? refusal.blockers.map(({ code }) => code) : []
}
const expectDone = (answer: Answer) => expect(answer, JSON.stringify(answer)).toMatchObject({ ok: true })

/** Nothing of the revision moved, nothing was issued. */
async function expectUnchanged(scene: Scene, run: () => Promise<void>): Promise<void> {
  const before = await read(scene)
  await run()
  const after = await read(scene)
  expect([after.version, after.stage, after.signatures, after.contentHash]).toEqual([
    before.version,
    before.stage,
    before.signatures,
    before.contentHash,
  ])
  expect((await scene.people.lead.get(`/api/revisions/${scene.revisionId}/package`)).status).toBe(404)
}

async function sign(scene: Scene, who: Who, change: object = {}): Promise<Answer> {
  const { version, contentHash, statement } = await read(scene, who)
  const { revisionId, page, people } = scene
  const signed = { revisionId, seenVersion: version, contentHash, capacity: 'lead engineer', statement, password }
  return people[who].act('signRevision', page, { ...signed, ...change })
}

async function release(scene: Scene, who: Who, change: object = {}): Promise<Answer> {
  const { version } = await read(scene)
  const { revisionId, page, people } = scene
  const terms = { revisionId, seenVersion: version, purpose: 'prototypes', password }
  return people[who].act('releaseRevision', page, { ...terms, ...change })
}

async function declare(scene: Scene, who: 'brackenfold' | 'ostrel', said: object): Promise<void> {
  const { version } = await read(scene, who)
  const { revisionId, page, people } = scene
  const word = { revisionId, seenVersion: version, note: '', conditions: [], password, ...said }
  expectDone(await people[who].act('declareBuildable', page, word))
}

test('blocker 1: a condition is no yes, and one yes sets no other no aside', async () => {
  const scene = await getScene('H1')
  await declare(scene, 'brackenfold', {
    verdict: 'with-conditions',
    conditions: [{ text: 'Only with our own coverlay.', field: '', value: '' }],
  })
  await expectUnchanged(scene, async () => {
    expect(codesOf(await sign(scene, 'lead'))).toContain('condition-open')
    expect(codesOf(await release(scene, 'lead'))).toContain('condition-open')
  })
  await declare(scene, 'brackenfold', { verdict: 'not-buildable', note: 'Ours cracked at 6 mm.' })
  await declare(scene, 'ostrel', { verdict: 'buildable' })
  const { revisionId, page, people } = scene
  await expectUnchanged(scene, async () => {
    expect(codesOf(await release(scene, 'lead'))).toContain('declared-not-buildable')
    const { version: seenVersion } = await read(scene)
    const companyId = (await read(scene)).sharedWith.find(({ name }) => name === 'Brackenfold Circuits')?.id
    const off = { revisionId, companyId, seenVersion, reason: ' ' }
    expect(refusalOf(await people.lead.act('takeOffRelease', page, off))).toMatchObject({ kind: 'invalid' })
    // No fabricator takes another off.
    const byOstrel = await people.ostrel.act('takeOffRelease', page, { ...off, reason: 'rival' }).catch(String)
    expect(JSON.stringify(byOstrel)).not.toContain('"ok":true')
  })
  // Who refused gets no release by being hidden either.
  expect(JSON.stringify(await read(scene, 'ostrel'))).not.toContain('cracked at 6 mm')
  await declare(scene, 'brackenfold', { verdict: 'buildable' })
})

test('blocker 2: a number and letter that were issued are not issued again', async ({ demo }) => {
  const scene = await getScene('A')
  const { design } = await read(scene)
  const issued = await backstage().act('readRevision', { revisionId: demo.pipitA, as: CAST.lead.email })
  expect([design.brief.partNumber, 'A']).toEqual([issued.design.brief.partNumber, issued.label])
  await expectUnchanged(scene, async () => {
    const refused = await sign(scene, 'lead')
    expect(codesOf(refused)).toEqual(['number-issued'])
    expect(JSON.stringify(refused)).toContain('was issued')
    expect(codesOf(await release(scene, 'lead'))).not.toEqual([])
  })
})

test('blocker 3: nobody approves their own work, nor in a capacity of their own making', async () => {
  const scene = await getScene('H1')
  const { projectId, page, people } = scene
  const capacities = `/projects/${projectId}/capacities`
  const { id: designerId } = (await read(scene)).team.find(({ name }) => name === CAST.designer.name) ?? {}
  const grant = { projectId, userId: designerId, capacity: 'circuit designer', statement: 'Answers for the circuit.' }
  expectDone(await people.lead.act('grantCapacity', capacities, grant))
  await expectUnchanged(scene, async () => {
    expect(codesOf(await sign(scene, 'designer', { capacity: 'circuit designer' }))).toEqual(['author-signs'])
    expect(refusalOf(await sign(scene, 'lead', { capacity: 'Chief Medical Officer' })).kind).toBe('clash')
    expect(refusalOf(await sign(scene, 'lead', { password: 'plover-estuary-3mm' })).kind).toBe('invalid')
    expect(codesOf(await release(scene, 'lead'))).toEqual(['signature-missing'])
    const byDesigner = await release(scene, 'designer').catch(String)
    expect(JSON.stringify(byDesigner)).not.toContain('"ok":true')
  })
  // The refusals are in the trail, with who tried.
  const trail = await (await people.quality.get(`/api/revisions/${scene.revisionId}/trail?format=csv`)).text()
  expect(trail.match(/refused/g)?.length).toBeGreaterThan(3)

  // Of a waiver neither its proposer nor who answered the item is the approver.
  const other = await getScene('A')
  const item = (await read(other, 'designer')).items.find(
    ({ state, mayAnswer, legalStates }) => state === 'meets' && mayAnswer && legalStates.includes('concern'),
  )
  const { revisionId } = other
  const checklist = other.page.replace('sign-off', 'checklist')
  const itemId = item?.itemId
  const answer = { revisionId, itemId, seenVersion: item?.answerVersion, state: 'concern', reason: 'too near' }
  expectDone(await other.people.designer.act('answerItem', checklist, answer))
  const proposal = { revisionId, itemId, reason: 'accepted for this build' }
  const proposed = await other.people.lead.act('proposeWaiver', checklist, proposal)
  expectDone(proposed)
  const waiverId = proposed.ok ? (proposed.value as { waiverId: string }).waiverId : ''
  const approve = { waiverId, decision: 'approve', reason: '', password }
  await expectUnchanged(other, async () => {
    const byProposer = refusalOf(await other.people.lead.act('decideWaiver', checklist, approve))
    expect(byProposer.message).toContain('the proposer of a waiver cannot approve it')
    const byAnswerer = await other.people.designer.act('decideWaiver', checklist, approve).catch(String)
    expect(JSON.stringify(byAnswerer)).not.toContain('"ok":true')
  })
  expect(page).not.toBe(other.page)
})

test('blocker 5: a must-change is not closed without a reason and what was done, nor by naming what did not change', async () => {
  const scene = await getScene('H1')
  const { revisionId, people } = scene
  const threads = scene.page.replace('sign-off', 'threads')
  const anchor = { kind: 'revision', id: '' }
  const thread = { revisionId, anchor, kind: 'must-change', title: 'The radius must be 8 mm', text: 'It cracked.' }
  expectDone(await people.brackenfold.act('openThread', threads, thread))
  const { id: threadId, version: seenVersion } = (await read(scene)).threads.at(-1) ?? {}
  const close = (change: object) =>
    people.lead.act('closeThread', threads, { threadId, seenVersion, reason: 'taken over', ...change })
  await expectUnchanged(scene, async () => {
    for (const change of [
      { reason: '' },
      {},
      { done: { kind: 'fields', places: ['bends.install-bend.insideRadiusMm'] } },
      { done: { kind: 'proposal', proposalId: 'none' } },
      { done: { kind: 'file', sha256: 'a'.repeat(64) } },
      { done: { kind: 'no-change' } },
    ]) {
      expect(refusalOf(await close(change)), JSON.stringify(change)).toMatchObject({ kind: 'invalid' })
    }
    expect(codesOf(await sign(scene, 'lead'))).toContain('thread-open')
  })
  const withdrawn = { threadId, seenVersion, reason: 'Read wrongly.', done: { kind: 'no-change' } }
  expectDone(await people.brackenfold.act('closeThread', threads, withdrawn))
})

test('blocker 6: words that differ from what is known keep everybody from signing', async () => {
  const scene = await getScene('H1')
  const { revisionId, people } = scene
  const actions = scene.page.replace('sign-off', 'actions')
  const { id: ownerId } = (await read(scene)).team.find(({ name }) => name === CAST.designer.name) ?? {}
  const action = {
    revisionId,
    origin: { kind: 'revision', id: '' },
    text: 'Check the fold against note 7 of the drawing.',
    ownerId,
    due: 'before-series',
    dueOn: '',
  }
  expectDone(await people.lead.act('takeOnAction', actions, action))
  await expectUnchanged(scene, async () => {
    expect(codesOf(await sign(scene, 'lead'))).toEqual(['words-differ'])
    expect(codesOf(await release(scene, 'lead'))).toContain('words-differ')
  })
  const { id: actionId, version: seenVersion } = (await read(scene)).actions.at(-1) ?? {}
  expectDone(await people.lead.act('dropAction', actions, { actionId, seenVersion, reason: 'named wrongly' }))
})

test('blocker 7: a loosened policy takes a reason, reaches no open revision by itself, and shows in its trail', async () => {
  const scene = await getScene('H1')
  const { projectId, revisionId, page, people } = scene
  const policyPage = `/projects/${projectId}/sign-off-policy`
  const policy = {
    projectId,
    seenVersion: 0,
    waiverBlocking: 'no-author',
    waiverMajor: 'no-author',
    waiverMinor: 'second-person',
    review: 'none',
    authorSigns: 'yes',
    authorReleases: 'yes',
    differences: 'listed',
    requiredSignatures: 1,
    requiredCapacities: [],
  }
  const loosen = (reason: string) => people.lead.act('setSignOffPolicy', policyPage, { ...policy, reason })
  await expectUnchanged(scene, async () => {
    expect(refusalOf(await loosen(' '))).toMatchObject({ kind: 'invalid' })
    const byDesigner = await people.designer
      .act('setSignOffPolicy', policyPage, { ...policy, reason: 'x' })
      .catch(String)
    expect(JSON.stringify(byDesigner)).not.toContain('"ok":true')
    expectDone(await loosen('The team is small.'))
    expect(codesOf(await sign(scene, 'designer', { capacity: 'circuit designer' }))).toEqual(['author-signs'])
    const { version } = await read(scene)
    const follow = { revisionId, seenVersion: version, toVersion: 1, reason: 'now' }
    const followed = await people.designer.act('followSignOffPolicy', page, follow).catch(String)
    expect(JSON.stringify(followed)).not.toContain('"ok":true')
  })
  const trail = await (await people.quality.get(`/api/revisions/${revisionId}/trail?format=csv`)).text()
  expect(trail).toContain('The team is small.')
})

test('blockers 4 and 8: what leaves proves itself, and says what became of it', async () => {
  const scene = await getScene('H1')
  const { revisionId, page, people } = scene
  await test.step('an old page signs nothing', async () => {
    await expectUnchanged(scene, async () => {
      const stale = refusalOf(await sign(scene, 'lead', { contentHash: 'f'.repeat(64) }))
      expect(stale.kind).toBe('stale')
      const { version } = await read(scene)
      expect(refusalOf(await sign(scene, 'lead', { seenVersion: version - 1 })).kind).toBe('stale')
    })
  })
  expectDone(await sign(scene, 'lead'))
  await test.step('a condition said after the signature voids it, and nothing is released until it is settled and signed again', async () => {
    await declare(scene, 'brackenfold', {
      verdict: 'with-conditions',
      conditions: [{ text: 'Only if the radius is 8 mm.', field: '', value: '' }],
    })
    const { signatures } = await read(scene)
    expect(signatures.map(({ voidedAt }) => voidedAt === null)).toEqual([false])
    expect(codesOf(await release(scene, 'lead'))).toEqual(
      expect.arrayContaining(['condition-open', 'signature-missing']),
    )
    await declare(scene, 'brackenfold', { verdict: 'buildable' })
    expect(codesOf(await release(scene, 'lead'))).toEqual(['signature-missing'])
    expectDone(await sign(scene, 'lead'))
  })
  expectDone(await release(scene, 'lead'))
  const url = `/api/revisions/${revisionId}/package`
  const fetchPackage = async (who: Who) => new Uint8Array(await (await people[who].get(url)).arrayBuffer())
  const archive = await fetchPackage('ostrel')
  const verified = verifyPackage(archive)
  if (!verified.ok) throw new Error(verified.issues[0]?.message)
  const opened = readArchive(archive)
  if (!opened.ok) throw new Error(opened.issues[0]?.message)
  const files = opened.value
  const jsonOf = (path: string) => {
    const file = files.find((one) => one.path === path)
    return JSON.parse(new TextDecoder().decode(file?.bytes))
  }
  await test.step('the edition holds the record of its own release', () => {
    const actions = jsonOf('trail.json').records.map(({ action }: { action: string }) => action)
    expect(actions).toContain('revision-released')
  })
  await test.step('another design in a fabricator’s edition is not the signed one', () => {
    const design = jsonOf('design.json')
    design.brief.quantityPerYear = 9
    const forged = files.map((file) =>
      file.path === 'design.json' ? { ...file, bytes: strToU8(JSON.stringify(design)) } : file,
    )
    const told = verifyFiles(forged, 'unpacked')
    expect(told.ok ? [] : told.issues.map(({ path }) => path[0])).toContain('design.json')
    const packed = verifyPackage(zipSync(Object.fromEntries(forged.map(({ path, bytes }) => [path, bytes]))))
    expect(packed.ok).toBe(false)
  })
  const { keyPem, manifest } = verified.value
  const readList = async (who: Who) => {
    const text = await (await people[who].get('/api/status')).text()
    const list = readStatusList(text, keyPem)
    return { text, list: list.ok ? list.value : null }
  }
  const judge = (list: Parameters<typeof judgeStatus>[1]) =>
    judgeStatus(revisionId, list, new Date(), manifest.releasedAt).word
  await test.step('withdrawn, it is fetched by no fabricator, and the list says so', async () => {
    const inForce = await readList('ostrel')
    expect(judge(inForce.list)).toBe('in force')
    expect(judge(null)).toBe('unknown')
    const { version } = await read(scene)
    const withdrawal = { revisionId, seenVersion: version, reason: 'Cracks in test.', password }
    expect(refusalOf(await people.lead.act('withdrawRevision', page, { ...withdrawal, password: 'x' })).kind).toBe(
      'invalid',
    )
    expectDone(await people.lead.act('withdrawRevision', page, withdrawal))
    for (const who of ['ostrel', 'brackenfold'] as const) {
      expect((await people[who].get(url)).status, who).toBeGreaterThanOrEqual(400)
    }
    const { list, text } = await readList('lead')
    expect(judge(list)).toBe('withdrawn')
    // A list that somebody changed is no list.
    expect(readStatusList(text.replace(/"withdrawn"/g, '"released"'), keyPem).ok).toBe(false)
    // The team's own copy is marked as what it is, and is not the package that was issued.
    const marked = readArchive(await fetchPackage('lead'))
    expect(JSON.stringify(marked.ok ? marked.value.map(({ path }) => path) : marked.issues)).toContain('OBSOLETE.txt')
  })
})

test('blocker 4: a package that was replaced says so to everybody who fetches it, and in the list', async () => {
  const first = await getScene('H2')
  expectDone(await sign(first, 'lead'))
  expectDone(await release(first, 'lead'))
  const packageOf = ({ revisionId }: Scene, who: Who) => first.people[who].get(`/api/revisions/${revisionId}/package`)
  const fetched = await packageOf(first, 'brackenfold')
  expect(fetched.headers.get('content-disposition')).not.toContain('OBSOLETE')
  const verified = verifyPackage(new Uint8Array(await fetched.arrayBuffer()))
  if (!verified.ok) throw new Error(verified.issues[0]?.message)
  const { keyPem, manifest } = verified.value
  const wordOf = async ({ revisionId }: Scene) => {
    const list = readStatusList(await (await first.people.ostrel.get('/api/status')).text(), keyPem)
    return list.ok ? judgeStatus(revisionId, list.value, new Date(), manifest.releasedAt).word : list.issues[0]?.message
  }
  expect(await wordOf(first)).toBe('in force')

  const second = await getScene('H3', first.projectId)
  expectDone(await sign(second, 'lead'))
  await expectUnchanged(second, async () => {
    expect(refusalOf(await release(second, 'lead'))).toMatchObject({ kind: 'invalid' })
  })
  expect(await wordOf(first)).toBe('in force')
  expectDone(await release(second, 'lead', { reason: 'The arm was too short.' }))
  expect([await wordOf(first), await wordOf(second)]).toEqual(['superseded', 'in force'])
  for (const who of ['lead', 'brackenfold'] as const) {
    const answer = await packageOf(first, who)
    expect(answer.headers.get('content-disposition'), who).toContain('OBSOLETE-')
    const marked = readArchive(new Uint8Array(await answer.arrayBuffer()))
    if (!marked.ok) throw new Error(marked.issues[0]?.message)
    const note = marked.value.find(({ path }) => path === 'OBSOLETE.txt')
    expect(new TextDecoder().decode(note?.bytes), who).toContain('SUPERSEDED')
  }
})
