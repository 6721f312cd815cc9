import { chmodSync, existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { openDatabase } from '@/lib/data/store/client'
import { applyMigrations, migrationPlaces } from '@/lib/data/store/migration'

/** With the rights that most systems give a new file when nobody says otherwise. */
const USUAL_MASK = 0o022

let folder = ''
let maskBefore = 0
beforeEach(() => {
  maskBefore = process.umask(USUAL_MASK)
  folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-rights-'))
})
afterEach(() => {
  process.umask(maskBefore)
  rmSync(folder, { recursive: true, force: true })
})

const rightsOf = (file: string) => (statSync(file).mode & 0o777).toString(8)

it('a new database, its log and its shared memory are readable by their owner alone', async () => {
  const file = path.join(folder, 'bendworthy.db')
  await applyMigrations(`file:${file}`, migrationPlaces(process.cwd()))
  const database = openDatabase(`file:${file}`)
  try {
    await database.client.user.count()
    const ends = ['', '-wal', '-shm'].filter((end) => existsSync(`${file}${end}`))
    expect(ends).toContain('-wal')
    expect(ends.map((end) => rightsOf(`${file}${end}`))).toEqual(ends.map(() => '600'))
  } finally {
    await database.close()
  }
})

it('one that an older version left open to others is closed to them, and keeps its data', async () => {
  const file = path.join(folder, 'bendworthy.db')
  writeFileSync(file, '')
  chmodSync(file, 0o644)
  await applyMigrations(`file:${file}`, migrationPlaces(process.cwd()))
  expect(rightsOf(file)).toBe('600')
})
