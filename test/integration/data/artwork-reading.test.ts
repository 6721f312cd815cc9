import { readFileSync } from 'node:fs'
import { zipSync } from 'fflate'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { readPicture } from '@/lib/artwork-picture'
import * as data from '@/lib/data'
import { JobStoppedError, runJobsInPlace } from '@/lib/jobs'
import { replaceJobRunner } from '@/lib/jobs/runner'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, readSeedDesign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const NAMES = ['pipit-profile.gbr', 'pipit-drill-plated.drl', 'pipit-drill-unplated.drl'] as const
const readText = (name: string): string => readFileSync(`seed/artwork/${name}`, 'utf8')
const toBytes = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(new TextEncoder().encode(text))

describeOnBothDatabases('artwork of a revision', (current) => {
  let team: Team
  let revisionId: string

  beforeEach(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    const { designVersion } = await data.getRevision(team.lead, revisionId)
    const design = JSON.parse(readSeedDesign('pipit-rev-a'))
    await expectDone(data.saveDesign(team.lead, { revisionId, seenVersion: designVersion, design }))
  }, 120_000)

  afterEach(() => runJobsInPlace())

  const jobs = () =>
    current().database.client.job.findMany({ where: { revisionId, kind: 'artwork' }, orderBy: { createdAt: 'asc' } })
  const upload = (fileName: string, text: string) =>
    expectDone(data.addArtwork(team.lead, { revisionId, fileName, bytes: toBytes(text) }))
  let setCount = 0
  /** Files that say what the demo's say, and that nobody has read yet. */
  const uploadAll = async () => {
    setCount += 1
    for (const name of NAMES) await upload(name, readText(name).replace('M02*', `G04 set ${setCount}*\nM02*`))
  }
  const runDue = async (): Promise<number> => {
    let count = 0
    for (const job of await jobs()) if (job.state === 'waiting' && (await data.runKeptJob(job.id))) count += 1
    return count
  }
  const read = () => data.getArtworkReading(team.lead, revisionId)
  const agreement = async () => {
    const { items } = await data.getRevision(team.lead, revisionId)
    const item = items.find(({ itemId }) => itemId === 'artwork-agreement')
    if (item === undefined) throw new Error('the item is not asked')
    return item.result
  }
  const contradictions = async () =>
    (await agreement()).outcomes.flatMap((outcome) =>
      outcome.kind === 'decided' && outcome.verdict === 'fails' ? [outcome.summary] : [],
    )

  it('is read by one job for the files as they came to be, and a changed file is found in checklist and results', async () => {
    await uploadAll()
    expect((await jobs()).map(({ state }) => state).sort()).toEqual(['stopped', 'stopped', 'waiting'])
    expect(await read()).toMatchObject({ state: 'waiting', facts: null })
    expect((await agreement()).verdict).toBe('needs-judgment')
    expect(await runDue()).toBe(1)
    const { state, facts } = await read()
    expect(state).toBe('read')
    expect(facts?.files.map(({ name, role }) => [name, role.role])).toEqual([
      ['pipit-profile.gbr', 'profile'],
      ['pipit-drill-plated.drl', 'holes'],
      ['pipit-drill-unplated.drl', 'holes'],
    ])
    expect(await contradictions()).toEqual([])
    // The file that replaces it has one hole less: nothing is known of it until it is read, then the contradiction stands.
    await upload('pipit-drill-plated.drl', readText('pipit-drill-plated.drl').replace('X4.875Y35.000\n', ''))
    expect(await read()).toMatchObject({ state: 'waiting', facts: null })
    expect(await contradictions()).toEqual([])
    expect(await runDue()).toBe(1)
    expect(await contradictions()).toEqual([
      'Number of holes of 0.25 mm: 12 in pipit-drill-plated.drl, 13 in "Vias at the island" in the plan.',
      'Places of Vias at the island: 12 of 13 where the plan has them, none at (4.875, 35) mm in the drill files, 13 in the plan.',
    ])
    const { entries } = await data.listRevisionTrail(team.lead, revisionId)
    expect(entries.filter(({ action }) => action === 'artwork-read')).toHaveLength(2)
  })

  it('is drawn when it is read, for those who may fetch the files, and the picture is kept as long as the reading', async () => {
    await uploadAll()
    expect((await read()).hasPicture).toBe(false)
    await expect(data.getArtworkPicture(team.lead, revisionId)).rejects.toBeInstanceOf(data.NotFoundError)
    await runDue()
    expect((await read()).hasPicture).toBe(true)
    await data.sweepFiles({ graceMs: -60_000 })
    const { bytes } = await data.getArtworkPicture(team.member, revisionId)
    const layers = readPicture(bytes)
    expect(layers.map(({ head }) => [head.fileName, head.role])).toEqual([
      ['pipit-drill-plated.drl', 'holes'],
      ['pipit-drill-unplated.drl', 'holes'],
      ['pipit-profile.gbr', 'profile'],
    ])
    expect(layers.every(({ corners }) => corners.length > 0)).toBe(true)
    // A reading that was kept before there were pictures is made again where somebody asks.
    await current().database.client.artworkReading.deleteMany({ where: { part: 'picture' } })
    expect(await read()).toMatchObject({ state: 'read', hasPicture: false })
    await expectDone(data.readArtworkAgain(team.lead, { revisionId }))
    await runDue()
    expect((await read()).hasPicture).toBe(true)
    await expect(data.getArtworkPicture(team.outsider, revisionId)).rejects.toBeInstanceOf(data.NotFoundError)
  })

  it('that was read once is known again by its hashes, in the same revision and in another', async () => {
    await uploadAll()
    await runDue()
    const changed = readText('pipit-profile.gbr')
      .replace('M02*', `G04 set ${setCount}*\nM02*`)
      .replaceAll('109000000', '110000000')
    await upload('pipit-profile.gbr', changed)
    await runDue()
    expect(await contradictions()).not.toEqual([])
    const rows = await current().database.client.artworkReading.count()
    await upload('pipit-profile.gbr', changed.replaceAll('110000000', '109000000'))
    expect(await read()).toMatchObject({ state: 'read' })
    expect(await contradictions()).toEqual([])
    expect(await runDue()).toBe(0)
    expect(await current().database.client.artworkReading.count()).toBe(rows)
    const copy = await expectDone(
      data.createRevision(team.lead, {
        projectId: team.projectId,
        label: 'B',
        origin: { kind: 'copy', revisionId },
      }),
    )
    expect(await data.getArtworkReading(team.lead, copy.revisionId)).toMatchObject({ state: 'read' })
  })

  it('in a ZIP is the same set, and a role that a person gives counts for these bytes', async () => {
    const layer = '%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,0.2*%\nD10*\nX1000000Y5000000D02*\nX90000000Y5000000D01*\nM02*\n'
    const zip = (text: string) =>
      zipSync({
        ...Object.fromEntries(NAMES.map((name) => [name, toBytes(readText(name))])),
        'layer-a.pho': toBytes(text),
      })
    const send = (text: string) =>
      expectDone(data.addArtwork(team.lead, { revisionId, fileName: 'package.zip', bytes: new Uint8Array(zip(text)) }))
    await send(layer)
    await runDue()
    const find = async () => (await read()).facts?.files.find(({ name }) => name === 'layer-a.pho')
    const before = await find()
    expect(before?.role.role).toBeNull()
    const said = {
      revisionId,
      fileName: 'layer-a.pho',
      sha256: before?.sha256 ?? '',
      role: 'copper',
      side: 'top',
    } as const
    await expectDone(data.setArtworkRole(team.lead, { ...said, layerNumber: 1 }))
    expect(await read()).toMatchObject({ state: 'waiting' })
    await runDue()
    expect((await find())?.role).toMatchObject({ role: 'copper', side: 'top', layerNumber: 1, from: 'person' })
    expect((await contradictions()).join()).toContain(
      'Number of conductor layers: 1 in layer-a.pho, 2 in the construction.',
    )
    await expectRefused(data.setArtworkRole(team.lead, { ...said, sha256: 'b'.repeat(64), layerNumber: 1 }))
    // Other bytes under the name are another file: nobody has said what that is for.
    await send(layer.replace('90000000', '80000000'))
    await runDue()
    expect((await find())?.role.role).toBeNull()
  })

  it('is not read to its end where somebody stops it, and again where somebody asks', async () => {
    await uploadAll()
    replaceJobRunner(async (name) => {
      await expectDone(data.stopArtworkReading(team.lead, { revisionId }))
      throw new JobStoppedError(name)
    })
    await runDue()
    runJobsInPlace()
    expect(await read()).toMatchObject({ state: 'stopped', facts: null })
    expect((await agreement()).verdict).toBe('needs-judgment')
    await expectDone(data.readArtworkAgain(team.lead, { revisionId }))
    expect(await runDue()).toBe(1)
    expect(await read()).toMatchObject({ state: 'read' })
  })

  it('is read once more where the process that read it died, and kept once', async () => {
    await uploadAll()
    const [job] = (await jobs()).filter(({ state }) => state === 'waiting')
    const { client } = current().database
    const id = job?.id ?? ''
    await client.job.update({
      where: { id },
      data: { state: 'running', claimToken: 'of a process that died', claimedUntil: new Date(0), attempts: 1 },
    })
    expect(await data.listDueJobs()).toContain(id)
    expect(await data.runKeptJob(id)).toBe(true)
    expect(await read()).toMatchObject({ state: 'read' })
    await client.job.update({ where: { id }, data: { state: 'waiting', claimToken: null } })
    expect(await data.runKeptJob(id)).toBe(true)
    expect(await client.artworkReading.count()).toBeGreaterThan(0)
    const { entries } = await data.listRevisionTrail(team.lead, revisionId)
    expect(entries.filter(({ action }) => action === 'artwork-read')).toHaveLength(1)
  })
})
