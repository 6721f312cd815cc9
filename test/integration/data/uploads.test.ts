import { createHash, randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { beforeAll, beforeEach, expect, it, vi } from 'vitest'
import { getSettings } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam, type Team } from '@/test/factories/people'
import { makeRevision, share } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

const disk = vi.hoisted(() => ({ isFull: false }))

vi.mock('node:fs/promises', async (importOriginal) => {
  const real = await importOriginal<typeof import('node:fs/promises')>()
  const writeFile: typeof real.writeFile = async (...args) => {
    if (!disk.isFull) return real.writeFile(...args)
    throw Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC' })
  }
  return { ...real, writeFile, default: { ...real, writeFile } }
})

const filesFolder = () => path.join(getSettings().dataFolder, 'files')
const placeOf = (sha256: string) => path.join(filesFolder(), sha256.slice(0, 2), sha256)
const sha256Of = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

/** Every file under `files`, whatever it is. */
function listKept(): string[] {
  if (!existsSync(filesFolder())) return []
  return readdirSync(filesFolder(), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => entry.name)
    .sort()
}

const makeText = () => new TextEncoder().encode(`G04 ${randomBytes(12).toString('hex')}*\n`)

/** Bytes as a slow sender gives them. */
async function* inPieces(bytes: Uint8Array, pause: () => Promise<void> = async () => {}, pieceBytes = 7) {
  for (let start = 0; start < bytes.length; start += pieceBytes) {
    await pause()
    yield bytes.subarray(start, start + pieceBytes)
  }
}

const DAY_MS = 86_400_000
function makeOld(file: string): void {
  const at = new Date(Date.now() - 3 * DAY_MS)
  utimesSync(file, at, at)
}

/** A file that nothing refers to, as an older version left behind. */
function leaveOrphan(bytes: Uint8Array): string {
  const file = placeOf(sha256Of(bytes))
  mkdirSync(path.dirname(file), { recursive: true })
  writeFileSync(file, bytes)
  makeOld(file)
  return file
}

describeOnBothDatabases('files on their way in', () => {
  let team: Team
  let revisionId: string
  let before: string[]

  beforeAll(async () => {
    team = await makeTeam()
    revisionId = await makeRevision(team)
    await share(team, revisionId)
  })
  beforeEach(() => {
    before = listKept()
  })
  const add = (actor: data.Actor, bytes: Uint8Array | AsyncIterable<Uint8Array>, fileName = 'a.gbr') =>
    data.addArtwork(actor, { revisionId, fileName, bytes })

  it('arrive in pieces, whole and under their hash', async () => {
    const bytes = makeText()
    const file = await expectDone(add(team.member, inPieces(bytes), 'pieces.gbr'))
    expect(file.sha256).toBe(sha256Of(bytes))
    expect([...(await data.getArtworkFile(team.member, file.id)).bytes]).toEqual([...bytes])
    expect(listKept()).toEqual([...before, file.sha256].sort())
  })

  it('are not read at all from somebody who may not send them', async () => {
    let isRead = false
    const bytes = inPieces(makeText(), async () => {
      isRead = true
    })
    await expect(add(team.outsider, bytes)).rejects.toThrow(data.NotFoundError)
    await expect(add(team.observer, bytes)).rejects.toThrow(data.NotAllowedError)
    await expect(add(team.fabricator, bytes)).rejects.toThrow(data.NotAllowedError)
    const { items } = await data.getRevision(team.lead, revisionId)
    const itemId = items.find(({ mayAnswer }) => mayAnswer)?.itemId ?? ''
    const target = { kind: 'item' as const, itemId }
    const attach = (actor: data.Actor) => data.attachFile(actor, { revisionId, target, fileName: 'a.txt', bytes })
    await expect(attach(team.observer)).rejects.toThrow(data.NotAllowedError)
    expect(isRead).toBe(false)
    expect(listKept()).toEqual(before)
  })

  it('leave nothing when they are refused, for what they are or because they are there already', async () => {
    const [first, other] = [makeText(), makeText()]
    await expectDone(add(team.member, first, 'twice.gbr'))
    const kept = listKept()
    const elsewhere = await makeRevision(team)
    const refused = [
      await expectRefused(add(team.member, first, 'twice.gbr')),
      await expectRefused(add(team.member, new Uint8Array())),
      await expectRefused(add(team.member, new Uint8Array([0, 1, 2, 255]))),
      await expectRefused(add(team.member, inPieces(new Uint8Array(data.MAX_FILE_BYTES + 1), undefined, 1 << 20))),
    ]
    expect(refused.map((refusal) => 'issues' in refusal && refusal.issues[0]?.code)).toEqual([
      'already-there',
      'empty',
      'unknown-content',
      'too-large',
    ])
    await db().revision.update({ where: { id: elsewhere }, data: { stage: 'withdrawn' } })
    const late = data.addArtwork(team.member, { revisionId: elsewhere, fileName: 'late.gbr', bytes: other })
    expect((await expectRefused(late)).kind).toBe('clash')
    expect(listKept()).toEqual(kept)
  })

  it('that have too many bytes are not read to their end', async () => {
    let pieces = 0
    const endless = async function* () {
      for (;;) {
        pieces += 1
        yield new Uint8Array(1 << 20).fill(0x41)
      }
    }
    expect(await expectRefused(add(team.member, endless()))).toMatchObject({ issues: [{ code: 'too-large' }] })
    expect(pieces).toBe(26)
    expect(listKept()).toEqual(before)
  })

  it('whose connection breaks leave nothing', async () => {
    const broken = async function* () {
      yield makeText()
      expect(listKept().length).toBe(before.length + 1)
      throw new Error('the connection was reset')
    }
    await expect(add(team.member, broken())).rejects.toThrow('the connection was reset')
    expect(listKept()).toEqual(before)
  })

  it('are refused in plain words by a full disk, and leave nothing', async () => {
    disk.isFull = true
    try {
      const refusal = await expectRefused(add(team.member, makeText()))
      expect(refusal).toMatchObject({ kind: 'busy', message: expect.stringContaining('disk of this server is full') })
      expect(refusal.message).not.toContain('ENOSPC')
    } finally {
      disk.isFull = false
    }
    expect(listKept()).toEqual(before)
  })

  it('sent twice under one key are kept once', async () => {
    const bytes = makeText()
    const input = { revisionId, fileName: 'key.gbr', requestKey: `key-${randomBytes(8).toString('hex')}` }
    const [first, second] = [
      await expectDone(data.addArtwork(team.member, { ...input, bytes: inPieces(bytes) })),
      await expectDone(data.addArtwork(team.member, { ...input, bytes: inPieces(bytes) })),
    ]
    expect(second).toEqual(first)
    expect(await expectRefused(data.addArtwork(team.member, { ...input, bytes: makeText() }))).toMatchObject({
      kind: 'clash',
    })
    expect(listKept()).toEqual([...before, first.sha256].sort())
  })

  it('that nothing refers to are swept once they are old, and no other', async () => {
    const { sha256 } = await expectDone(add(team.member, makeText(), 'used.gbr'))
    makeOld(placeOf(sha256))
    const removed = await expectDone(add(team.member, makeText(), 'removed.gbr'))
    await expectDone(data.removeArtwork(team.member, { fileId: removed.id }))
    makeOld(placeOf(removed.sha256))
    // What another database of these tests left in the same folder.
    await data.sweepFiles()
    const [orphan, young] = [leaveOrphan(makeText()), leaveOrphan(makeText())]
    utimesSync(young, new Date(), new Date())
    const incoming = path.join(filesFolder(), 'incoming')
    const [left, arriving] = [path.join(incoming, 'left-by-a-crash'), path.join(incoming, 'still-arriving')]
    for (const file of [left, arriving]) writeFileSync(file, 'half of a file')
    makeOld(left)
    expect((await data.sweepFiles()).fileCount).toBe(2)
    expect([orphan, left].map((file) => existsSync(file))).toEqual([false, false])
    expect([young, arriving, placeOf(sha256), placeOf(removed.sha256)].map((file) => existsSync(file))).toEqual([
      true,
      true,
      true,
      true,
    ])
    await data.sweepFiles({ graceMs: -1 })
    expect([young, arriving].map((file) => existsSync(file))).toEqual([false, false])
  })

  it('survive a sweep that runs while they arrive, even where an old copy of the same bytes is swept', async () => {
    for (let round = 0; round < 12; round++) {
      const bytes = makeText()
      leaveOrphan(bytes)
      const sweeps: Promise<unknown>[] = []
      const pause = async () => {
        sweeps.push(data.sweepFiles())
        if (round % 3 === 0) await sweeps.at(-1)
      }
      const adding = expectDone(add(team.member, inPieces(bytes, pause), `race-${round}.gbr`))
      sweeps.push(data.sweepFiles())
      const { id } = await adding
      await Promise.all([...sweeps, data.sweepFiles()])
      expect([...(await data.getArtworkFile(team.member, id)).bytes]).toEqual([...bytes])
    }
  })
})

it('every model that names a file by its hash is asked by the sweep', () => {
  const models = readFileSync('prisma/models.prisma', 'utf8')
  const named = [...models.matchAll(/^model (\w+) \{([^}]*)\}/gm)]
    .filter(([, , fields]) => /^\s+sha256\s/m.test(fields ?? ''))
    .map(([, name]) => name)
  const sweep = readFileSync('lib/data/acts/workspace/file-sweep.ts', 'utf8')
  expect(named.length).toBeGreaterThan(2)
  for (const name of named) {
    const field = `${name?.charAt(0).toLowerCase()}${name?.slice(1)}`
    expect(sweep).toContain(`tx.${field}.findMany(query)`)
  }
})
