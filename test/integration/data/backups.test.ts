import { execFile } from 'node:child_process'
import { createHash } from 'node:crypto'
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { promisify } from 'node:util'
import { expect, inject, it } from 'vitest'
import * as data from '@/lib/data'
import { takeAllAsFound } from '@/lib/data/acts/workspace/adopt-state'
import { inWriteTransaction } from '@/lib/data/consequences/write'
import { db, openDatabase, replaceDatabase } from '@/lib/data/store/client'
import { copyDatabase } from '@/lib/data/store/copy-database'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { makeTeam } from '@/test/factories/people'
import { makeRevision, makeRevisionAt, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

function listFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
    .toSorted()
}

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

describeOnBothDatabases('a backup', (current, kind) => {
  if (kind === 'postgresql') {
    it('is the database server’s own to make: refused, with the tool and the folder to copy', async () => {
      const team = await makeTeam()
      const refusal = await expectRefused(data.createBackup(team.admin))
      expect(refusal).toMatchObject({
        kind: 'clash',
        message: expect.stringMatching(/npm run backup.*pg_dump.*copy of the folder .*files/),
      })
      expect(await db().trailRecord.count({ where: { action: 'backup-made' } })).toBe(0)
    })

    it('is dumped by the tool of PostgreSQL, whole', async () => {
      const revisionId = await makeRevision(await makeTeam())
      const folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-dump-'))
      try {
        const { database, url } = current()
        const file = await copyDatabase(database, url, folder)
        const run = async (...args: string[]) => (await promisify(execFile)('pg_restore', args)).stdout
        expect(await run('--list', file)).toMatch(/TABLE DATA public TrailRecord /)
        expect(await run('--data-only', '--table=Revision', '--file=-', file)).toContain(revisionId)
        expect(statSync(file).mode & 0o077, 'for its owner alone').toBe(0)
        const other = Object.assign(new URL(url), { pathname: '/bendworthy_none' }).href
        await expect(copyDatabase(database, other, folder)).rejects.toThrow(/pg_dump failed: .*does not exist/)
      } finally {
        rmSync(folder, { recursive: true, force: true })
      }
    })
    return
  }

  it('is made by the command too, and older ones than are to be kept go', async () => {
    await makeTeam()
    const first = await data.makeBackup(null)
    const second = await data.makeBackup(2)
    const { folder } = await data.makeBackup(2)
    expect(readdirSync(path.dirname(folder)).toSorted()).toEqual([path.basename(second.folder), path.basename(folder)])
    expect(path.basename(first.folder) < path.basename(second.folder)).toBe(true)
    expect(await db().trailRecord.count({ where: { action: 'backup-made' } })).toBe(3)
  })

  it('holds database and files as they were, no secret, and opens as a data folder of its own', async () => {
    const team = await makeTeam()
    // Accounts and companies of the tests are made outside the application: taken as found, as an older database is.
    await inWriteTransaction(takeAllAsFound)
    const revisionId = await makeRevisionAt(team, 'awaiting-signature')
    const bytes = new TextEncoder().encode('G04 top*\nM02*\n')
    const artwork = await expectDone(data.addArtwork(team.member, { revisionId, fileName: 'top.gbr', bytes }))
    const drafted = await makeRevision(team)
    const before = await data.getRevision(team.lead, revisionId)

    const { folder, sizeBytes } = await expectDone(data.createBackup(team.admin))
    expect(readdirSync(folder).toSorted()).toEqual(['bendworthy.db', 'files'])
    expect(sizeBytes).toBe(statSync(path.join(folder, 'bendworthy.db')).size)
    expect(statSync(folder).mode & 0o077, 'for its owner alone').toBe(0)
    const dataFolder = process.env.BENDWORTHY_DATA_FOLDER ?? ''
    const [kept, copied] = [path.join(dataFolder, 'files'), path.join(folder, 'files')]
    expect(listFiles(copied)).toEqual(listFiles(kept))
    const hashes = listFiles(copied).map((name) => sha256(readFileSync(path.join(copied, name))))
    expect(hashes).toContain(sha256(bytes))
    const secrets = listFiles(path.join(dataFolder, 'secrets')).map((name) => path.basename(name))
    expect(secrets).toContain('signing-key.pem')
    for (const name of listFiles(folder)) expect(secrets).not.toContain(path.basename(name))
    expect((await db().trailRecord.findFirstOrThrow({ orderBy: { sequence: 'desc' } })).action).toBe('backup-made')

    // What happens afterwards is not in it.
    await expectDone(data.removeArtwork(team.member, { fileId: artwork.id }))
    const restored = mkdtempSync(path.join(tmpdir(), 'bendworthy-restored-'))
    const present = current().database
    try {
      cpSync(folder, restored, { recursive: true })
      const reopened = openDatabase(`file:${path.join(restored, 'bendworthy.db')}`)
      replaceDatabase(reopened)
      try {
        const after = await data.getRevision(team.lead, revisionId)
        expect(after).toEqual(before)
        expect((await data.getRevision(team.lead, drafted)).stage).toBe('preparing')
        expect(await db().$queryRawUnsafe('PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }])
      } finally {
        replaceDatabase(present)
        await reopened.close()
      }
      // The secrets are kept apart: without them the trail's checkpoints are somebody else's, with them all of it fits.
      const check = async () => {
        const program = ['--conditions=react-server', path.join(inject('commandsFolder'), 'trail-check.mjs')]
        const env = { ...process.env, BENDWORTHY_DATA_FOLDER: restored, DATABASE_URL: undefined }
        const { stdout } = await promisify(execFile)(process.execPath, program, { env })
        return stdout
      }
      await expect(check()).rejects.toMatchObject({ stderr: expect.stringContaining('does not bear the signature') })
      rmSync(path.join(restored, 'secrets'), { recursive: true, force: true })
      cpSync(path.join(dataFolder, 'secrets'), path.join(restored, 'secrets'), { recursive: true })
      expect(await check()).toMatch(/trail: \d+ records fit/)
    } finally {
      replaceDatabase(present)
      rmSync(restored, { recursive: true, force: true })
    }
    // Back to the content that was reviewed: the lead, who made none of it, signs in the database that goes on.
    await sign(team.lead, revisionId)
  }, 400_000)

  it('is an admin’s to make, and leaves nothing half made behind', async () => {
    const team = await makeTeam()
    await expect(data.createBackup(team.lead)).rejects.toThrow(data.NotAllowedError)
    const { folder } = await expectDone(data.createBackup(team.admin))
    expect(readdirSync(path.dirname(folder)).filter((name) => name.endsWith('.partial'))).toEqual([])
  })
})
