import BetterSqlite from 'better-sqlite3'
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { replaceClock } from '@/lib/config'
import * as data from '@/lib/data'
import { db, openDatabase, replaceDatabase } from '@/lib/data/store/client'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { expectDone } from '@/test/factories/act-results'
import { joinFabricator, makeTeam, makeUser, PASSWORD, type Team } from '@/test/factories/people'
import { answer, makeRevision, makeRevisionAt, share } from '@/test/factories/reviews'
import { createTestDatabase } from '@/test/setup/created-databases'

/**
 * Statements that a page or an act takes, on one fixed scene: a number to compare with, so that nobody asks the database
 * once for each person or thread, or loads a revision twice, without noticing. Anyone who needs more raises the number here.
 */
const PAGES: Readonly<Record<string, { most: number; ask: (scene: Scene) => Promise<unknown> }>> = {
  getRevision: { most: 15, ask: ({ team, revisionId }) => data.getRevision(team.lead, revisionId) },
  'getRevision, a fabricator': {
    most: 15,
    ask: ({ team, revisionId }) => data.getRevision(team.fabricator, revisionId),
  },
  getProject: { most: 19, ask: ({ team }) => data.getProject(team.lead, team.projectId) },
  listProjects: { most: 9, ask: ({ team }) => data.listProjects(team.lead) },
  listWaits: { most: 13, ask: ({ team }) => data.listWaits(team.lead) },
  getHome: { most: 18, ask: ({ team }) => data.getHome(team.lead) },
  listLeadCounts: { most: 8, ask: ({ team }) => data.listLeadCounts(team.lead) },
  listQuestions: { most: 10, ask: ({ team }) => data.listQuestions(team.lead) },
  searchReviews: { most: 17, ask: ({ team }) => data.searchReviews(team.lead, 'foil') },
  listThreadReaders: { most: 7, ask: ({ team, revisionId }) => data.listThreadReaders(team.lead, revisionId) },
  listRevisionTrail: { most: 5, ask: ({ team, revisionId }) => data.listRevisionTrail(team.lead, revisionId) },
  // Files, each with its comment and thread, proposals and threads: the revision has all of them.
  listLiveEvents: { most: 9, ask: ({ team, revisionId }) => data.listLiveEvents(team.lead, revisionId, 0) },
  getFabricationFit: { most: 15, ask: ({ team, revisionId }) => data.getFabricationFit(team.lead, revisionId) },
  getCosts: { most: 10, ask: ({ team, revisionId }) => data.getCosts(team.lead, revisionId) },
  getPanels: { most: 10, ask: ({ team, revisionId }) => data.getPanels(team.lead, revisionId) },
  getQuotation: { most: 15, ask: ({ team, revisionId }) => data.getQuotation(team.lead, revisionId, null) },
  getFabricatorStart: { most: 11, ask: ({ team }) => data.getFabricatorStart(team.fabricator, team.projectId) },
  getCompany: { most: 18, ask: ({ team }) => data.getCompany(team.fabricator, team.companies.brackenfold) },
  listAccounts: { most: 8, ask: ({ team }) => data.listAccounts(team.admin) },
  listComparable: { most: 8, ask: ({ team }) => data.listComparable(team.lead, team.projectId) },
}

const ACTS: Readonly<Record<string, { most: number; act: (scene: Scene) => Promise<unknown> }>> = {
  // Two of them drop the results that the save replaces.
  saveDesign: { most: 30, act: saveDesign },
  answerItem: { most: 29, act: answerOne },
  openThread: { most: 48, act: ({ team, revisionId }) => openThread(team, revisionId) },
  replyToThread: {
    most: 30,
    act: ({ team, threadId }) =>
      expectDone(data.replyToThread(team.lead, { threadId, text: 'It is rolled-annealed.', isAnswer: false })),
  },
  declareBuildable: {
    // The password is asked for: the attempt, its count, and the person again in the transaction.
    most: 58,
    act: async ({ team, revisionId }) => {
      const { version } = await data.getRevision(team.fabricator, revisionId)
      const word = { verdict: 'buildable' as const, note: '', conditions: [] }
      const declared = { revisionId, ...word, seenVersion: version, password: PASSWORD }
      return counted(() => expectDone(data.declareBuildable(team.fabricator, declared)))
    },
  },
  sendBackRevision: {
    most: 37,
    act: async ({ team, revisionId }) => {
      const { version } = await data.getRevision(team.lead, revisionId)
      const sent = await counted(() =>
        expectDone(data.sendBackRevision(team.lead, { revisionId, seenVersion: version, reason: 'once more' })),
      )
      const { version: then } = await data.getRevision(team.lead, revisionId)
      await expectDone(data.advanceRevision(team.lead, { revisionId, seenVersion: then }))
      return sent
    },
  },
}

interface Scene {
  readonly team: Team
  readonly revisionId: string
  readonly threadId: string
}

let statements = 0

/** The statements of one part of an act, where the rest of it only prepares. */
let counting: number | null = null
async function counted(run: () => Promise<unknown>): Promise<void> {
  const before = statements
  await run()
  counting = statements - before
}

async function count(run: () => Promise<unknown>): Promise<number> {
  counting = null
  const before = statements
  await run()
  return counting ?? statements - before
}

async function saveDesign({ team, revisionId }: Scene): Promise<void> {
  const { design, designVersion } = await data.getRevision(team.lead, revisionId)
  const changed = { ...design, name: `${design.name}.` }
  await counted(() =>
    expectDone(data.saveDesign(team.lead, { revisionId, seenVersion: designVersion, design: changed })),
  )
}

async function answerOne({ team, revisionId }: Scene): Promise<void> {
  const { items } = await data.getRevision(team.member, revisionId)
  const item = items.find(({ itemId }) =>
    CATALOGUE.some(({ id, answeredBy }) => id === itemId && answeredBy.includes('member')),
  )
  if (item === undefined) throw new Error('no item was answered by the team')
  await counted(() => answer(team.member, revisionId, item))
}

function openThread(team: Team, revisionId: string) {
  return expectDone(
    data.openThread(team.fabricator, {
      revisionId,
      anchor: { kind: 'revision', id: revisionId },
      kind: 'engineering-query',
      title: 'Foil of L2',
      text: 'Is it rolled-annealed? @Imke Dahl',
    }),
  )
}

/** Many more people and threads; nothing else. */
async function grow({ team, revisionId }: Scene): Promise<void> {
  for (let n = 0; n < 6; n += 1) {
    const userId = await makeUser('Further Member')
    const place = { userId, projectId: team.projectId, companyId: team.companies.team, role: 'member' }
    await db().membership.create({ data: place })
    await joinFabricator(await makeUser('Further Colleague'), team.projectId, team.companies.brackenfold, 'member')
    await openThread(team, revisionId)
  }
}

/** Copies of the scene's revision with its newest results, as rows: 400 acts would take minutes. */
async function addRevisions({ revisionId }: Scene, many: number): Promise<void> {
  const revision = await db().revision.findUniqueOrThrow({ where: { id: revisionId } })
  const results = await db().evaluation.findFirstOrThrow({ where: { revisionId }, orderBy: { ordinal: 'desc' } })
  const ids = Array.from({ length: many }, (_, at) => `copy-${at}`)
  await db().revision.createMany({ data: ids.map((id) => ({ ...revision, id, label: id, labelKey: id })) })
  const evaluations = ids.map((id) => ({ ...results, id: `${id}-results`, revisionId: id }))
  await db().evaluation.createMany({ data: evaluations })
}

describe('statements', () => {
  let scene: Scene
  let close: () => Promise<void>
  const first = new Map<string, number>()

  beforeAll(async () => {
    const created = await createTestDatabase('sqlite')
    const database = openDatabase(created.url)
    replaceDatabase(database)
    close = async () => {
      replaceDatabase(null)
      await database.close()
      await created.remove()
    }
    const team = await makeTeam()
    const revisionId = await makeRevisionAt(team, 'fabricator-review')
    const { threadId } = await openThread(team, revisionId)
    scene = { team, revisionId, threadId }
    // Everything was done once: what is there for the first time, such as an answer on an older design, is no growth.
    for (const { act } of Object.values(ACTS)) await act(scene)
    // From the second save on there are results that a save replaces.
    await saveDesign(scene)
    // A fabricator's first look at that design is recorded, which is no growth either.
    await data.getRevision(team.fabricator, revisionId)
    // So are the standings: what an act moved is worked out once, by the next reader or by the server itself.
    await data.getHome(team.lead)
  }, 120_000)

  // Mocks are taken off after each test.
  beforeEach(() => {
    const { prepare } = BetterSqlite.prototype
    vi.spyOn(BetterSqlite.prototype, 'prepare').mockImplementation(function (this: BetterSqlite.Database, sql) {
      statements += 1
      return prepare.call(this, sql)
    })
  })

  afterAll(() => close())

  const rows = [
    ...Object.entries(PAGES).map(([name, { most, ask }]) => ({ name, most, run: ask })),
    ...Object.entries(ACTS).map(([name, { most, act }]) => ({ name, most, run: act })),
  ]

  it.each(rows)('$name takes at most $most', async ({ name, most, run }) => {
    const taken = await count(() => run(scene))
    first.set(name, taken)
    expect(taken).toBeGreaterThan(0)
    expect(taken).toBeLessThanOrEqual(most)
  })

  describe('with six more members, colleagues of a fabricator and threads', () => {
    beforeAll(async () => {
      await grow(scene)
      await data.getHome(scene.team.lead)
    }, 120_000)

    it.each(rows)('$name takes no more', async ({ name, run }) => {
      expect(await count(() => run(scene))).toBeLessThanOrEqual(first.get(name) ?? 0)
    })

    describe('and three more open revisions', () => {
      beforeAll(async () => {
        for (let n = 0; n < 3; n += 1) await share(scene.team, await makeRevision(scene.team))
      }, 120_000)

      it.each(['listWaits', 'listLeadCounts', 'getHome'] as const)(
        '%s takes no more once that is worked out',
        async (name) => {
          await data.getHome(scene.team.lead)
          expect(await count(() => PAGES[name]?.ask(scene) ?? Promise.resolve())).toBeLessThanOrEqual(
            first.get(name) ?? 0,
          )
          expect((await data.listLeadCounts(scene.team.lead)).total).toBeGreaterThanOrEqual(4)
        },
      )

      it('the day’s digest does not ask for each person', async () => {
        const digest = async (day: string) => {
          const restoreClock = replaceClock(() => new Date(`${day}T07:00:00Z`))
          try {
            await data.getHome(scene.team.lead)
            return await count(async () => expect(await data.queueDigests()).toBeGreaterThan(10))
          } finally {
            restoreClock()
          }
        }
        const taken = await digest('2098-01-01')
        expect(taken).toBeLessThanOrEqual(70)
        for (let n = 0; n < 4; n += 1) {
          const place = { projectId: scene.team.projectId, companyId: scene.team.companies.team, role: 'member' }
          await db().membership.create({ data: { ...place, userId: await makeUser('Latest Member') } })
        }
        expect(await digest('2098-01-02')).toBeLessThanOrEqual(taken)
      })

      it('home takes at most 20 at 400 open revisions, and search and the list of projects no more than before', async () => {
        await addRevisions(scene, 400)
        // Worked out once, which no page waits for longer than some seconds.
        while ((await data.getHome(scene.team.lead)).notWorkedOut > 0);
        const asked: Record<string, number> = {}
        for (const name of ['getHome', 'searchReviews', 'listProjects'] as const) {
          asked[name] = await count(() => PAGES[name]?.ask(scene) ?? Promise.resolve())
          expect(asked[name]).toBeLessThanOrEqual(first.get(name) ?? 0)
        }
        expect(asked.getHome).toBeLessThanOrEqual(20)
        const { leadCounts } = await data.getHome(scene.team.lead)
        expect(leadCounts.rows).toHaveLength(50)
        expect(leadCounts.total).toBeGreaterThanOrEqual(400)
      }, 120_000)
    })
  })
})
