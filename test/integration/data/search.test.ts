import { beforeAll, expect, it } from 'vitest'
import {
  type Actor,
  editComment,
  getRevision,
  listLeadCounts,
  openThread,
  replyToThread,
  searchReviews,
} from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('search and counts', () => {
  let team: Team
  let revisionId: string
  let draftId: string

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    draftId = await makeRevision(team)
    await share(team, revisionId)
    await db().revision.update({ where: { id: revisionId }, data: { stage: 'fabricator-review' } })
    const open = (actor: Actor, title: string, text: string, companyId?: string) =>
      expectDone(
        openThread(actor, {
          revisionId,
          anchor: { kind: 'revision', id: '' },
          kind: actor === team.fabricator ? 'engineering-query' : 'must-change',
          title,
          text,
          ...(companyId === undefined ? {} : { companyId }),
        }),
      )
    const { threadId } = await open(team.fabricator, 'Foil of the hinge', 'Which WHIMBREL foil is meant?')
    await expectDone(replyToThread(team.member, { threadId, text: 'The thin one, see godwit.', isAnswer: false }))
    await open(team.rivalFabricator, 'Of the other', 'A whimbrel of ours')
    await open(team.member, 'Among ourselves', 'The whimbrel costs too much')
  }, 240_000)

  const titles = async (actor: Actor, text: string) =>
    (await searchReviews(actor, text)).hits
      .filter(({ kind }) => kind === 'thread')
      .map(({ title }) => title)
      .toSorted()

  it('finds threads by their comments, whatever the letter case, within what the person may see', async () => {
    const all = ['Among ourselves', 'Foil of the hinge', 'Of the other']
    expect(await titles(team.lead, 'Whimbrel')).toEqual(all)
    expect(await titles(team.observer, 'whimbrel')).toEqual(all)
    expect(await titles(team.fabricator, 'whimbrel')).toEqual(['Foil of the hinge'])
    expect(await titles(team.rivalFabricator, 'whimbrel')).toEqual(['Of the other'])
    expect(await titles(team.outsider, 'whimbrel')).toEqual([])
    expect(await titles(team.admin, 'whimbrel')).toEqual([])
  })

  it('wants every word, wherever in the thread', async () => {
    expect(await titles(team.lead, 'GODWIT  hinge')).toEqual(['Foil of the hinge'])
    expect(await titles(team.lead, 'godwit plover')).toEqual([])
    expect(await searchReviews(team.lead, '   ')).toMatchObject({ hits: [] })
  })

  it('finds a word by its beginning, within signs and digits, and what was said again and otherwise', async () => {
    const text = 'Cover/adhesive L2.gbr at 0.5 mm, rolled-annealed (Größe 25 µm) "quoted" 100% 2 oz/ft² 3 mm³'
    const { threadId } = await expectDone(
      openThread(team.lead, {
        revisionId,
        anchor: { kind: 'revision', id: '' },
        kind: 'note',
        title: 'Signs',
        text,
      }),
    )
    for (const word of [
      'adhes',
      'gbr',
      '0.5',
      'annealed',
      'rolled-ann',
      'grö',
      'GRÖSSE'.slice(0, 3),
      '"quoted"',
      '100%',
      'L2',
      '25 µm',
      '25 μm',
      'ft²',
      'ft2',
      'mm3',
    ]) {
      expect(await titles(team.lead, word), word).toContain('Signs')
    }
    // Words are found from their beginning; signs alone are none, and nothing of a query is taken for the database's own language.
    for (const word of [
      'dhesive',
      '%',
      '"',
      '" OR "',
      'zzz* OR signs',
      "'; DROP TABLE",
      'NEAR(cover)',
      ':* & |',
      '\\\\',
    ]) {
      expect(await titles(team.lead, word), word).not.toContain('Signs')
    }
    const comment = await db().comment.findFirstOrThrow({ where: { threadId } })
    const edited = { commentId: comment.id, text: 'Only plover', seenVersion: comment.version }
    await expectDone(editComment(team.lead, edited))
    expect(await titles(team.lead, 'adhesive')).not.toContain('Signs')
    expect(await titles(team.lead, 'plover')).toEqual(['Signs'])
  })

  it('knows a project by its new name and not by the one before', async () => {
    const project = await db().project.findUniqueOrThrow({ where: { id: team.projectId } })
    await db().project.update({ where: { id: project.id }, data: { name: 'Turnstone', description: 'a dotterel' } })
    expect((await searchReviews(team.lead, 'turnst dotter')).counts.project).toBe(1)
    expect((await searchReviews(team.lead, project.name)).counts.project).toBe(0)
    const { name, description } = project
    await db().project.update({ where: { id: project.id }, data: { name, description } })
    expect((await searchReviews(team.lead, 'turnst dotter')).counts.project).toBe(0)
  })

  it('looks at the newest where many hold the words, and says that there are more', async () => {
    const thread = await db().thread.findFirstOrThrow({ where: { revisionId, title: 'Foil of the hinge' } })
    const at = (n: number) => new Date(thread.openedAt.getTime() + 1000 * (n + 1))
    await db().thread.createMany({
      data: Array.from({ length: 60 }, (_, n) => ({
        ...thread,
        id: `many-${n}`,
        title: `Sandpiper ${n}`,
        openedAt: at(n),
      })),
    })
    const { hits, counts, atLeast } = await searchReviews(team.lead, 'sandpiper')
    expect(counts.thread).toBe(50)
    expect(atLeast).toEqual(['thread'])
    expect(hits.map(({ title }) => title)).toEqual(Array.from({ length: 30 }, (_, n) => `Sandpiper ${59 - n}`))
    expect((await searchReviews(team.rivalFabricator, 'sandpiper')).hits).toEqual([])
    await db().thread.deleteMany({ where: { id: { startsWith: 'many-' } } })
    expect(await searchReviews(team.lead, 'sandpiper')).toMatchObject({ hits: [], atLeast: [] })
  })

  it('finds items with the revision that they are answered in, and no draft for a fabricator', async () => {
    const { hits } = await searchReviews(team.lead, 'holes bend')
    const revisions = new Set(hits.filter(({ kind }) => kind === 'item').map((hit) => hit.revisionId))
    expect(revisions).toEqual(new Set([revisionId, draftId]))
    const seen = (await searchReviews(team.fabricator, 'holes bend')).hits
    expect(new Set(seen.map((hit) => hit.revisionId))).toEqual(new Set([revisionId]))
  })

  it('finds a project for its people alone', async () => {
    const name = (await db().project.findUniqueOrThrow({ where: { id: team.projectId } })).name
    expect((await searchReviews(team.observer, name.toUpperCase())).counts.project).toBe(1)
    expect((await searchReviews(team.outsider, name)).counts.project).toBe(0)
  })

  it('counts for a lead what is open in each revision, as the revision itself says, and for nobody else', async () => {
    const { rows } = await listLeadCounts(team.lead)
    expect(new Set(rows.map((row) => row.revisionId))).toEqual(new Set([revisionId, draftId]))
    const row = rows.find((candidate) => candidate.revisionId === revisionId)
    const view = await getRevision(team.lead, revisionId)
    expect(row).toMatchObject({
      openQueries: 1,
      openMustChanges: 2,
      openItems: view.items.filter(({ state }) => state === 'open').length,
      blockers: view.blockers.length,
    })
    for (const actor of [team.member, team.observer, team.fabricator, team.admin]) {
      expect(await listLeadCounts(actor)).toEqual({ rows: [], total: 0 })
    }
  })
})
