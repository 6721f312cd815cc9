import { type ChildProcess, fork } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { expect, inject, it } from 'vitest'
import { openDatabase } from '@/lib/data/store/client'
import { describeOnBothDatabases } from '../../setup/databases'
import { COUNTED } from './plain-rows'

const COUNTING_PROGRAM = path.join(inject('commandsFolder'), 'counting-program.mjs')
const INSERTING_PROGRAM = path.join(inject('commandsFolder'), 'inserting-program.mjs')

/** Another process with a connection of its own to the same database. */
function startProgram(file: string, url: string, ...rest: string[]): ChildProcess {
  return fork(file, [url, ...rest], { execArgv: ['--conditions=react-server'] })
}

describeOnBothDatabases(
  'what was acknowledged',
  (current, kind) => {
    const times = kind === 'sqlite' ? 300 : 90

    it('was written through to the disk, on the first connection and on every later one', async () => {
      if (kind === 'postgresql') {
        const rows = await current().database.client.$queryRawUnsafe(
          `SELECT current_setting('synchronous_commit') AS commit, current_setting('fsync') AS fsync`,
        )
        expect(rows).toEqual([{ commit: 'on', fsync: 'on' }])
        return
      }
      await current().database.client.company.count()
      const reopened = openDatabase(current().url)
      try {
        for (const { client } of [current().database, reopened]) {
          const pragma = async (name: string) => {
            const [row] = await client.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${name}`)
            const value = Object.values(row ?? {})[0]
            return typeof value === 'bigint' ? Number(value) : value
          }
          expect(await pragma('journal_mode')).toBe('wal')
          // 2 is FULL (documentation of SQLite, PRAGMA synchronous).
          expect(await pragma('synchronous')).toBe(2)
          expect(await pragma('foreign_keys')).toBe(1)
          // Pragmas outlast a transaction.
          await client.$transaction(async (tx) => tx.company.count())
          expect(await pragma('synchronous')).toBe(2)
        }
      } finally {
        await reopened.close()
      }
    })

    it(`is counted once when two processes read and then write the same row ${times} times each`, async () => {
      const { client } = current().database
      await client.mailMessage.create({ data: COUNTED })
      const programs = [1, 2].map(() => startProgram(COUNTING_PROGRAM, current().url, String(times)))
      const answers = await Promise.all(programs.map(async (program) => (await once(program, 'message'))[0]))
      await Promise.all(programs.map((program) => program.exitCode ?? once(program, 'exit')))
      expect(answers).toEqual([
        { done: times, failures: [] },
        { done: times, failures: [] },
      ])
      const { attempts } = await client.mailMessage.findUniqueOrThrow({ where: { id: COUNTED.id } })
      expect(attempts).toBe(2 * times)
    }, 400_000)

    it('is whole when the disk is full, and writing goes on once there is room', async () => {
      // PostgreSQL is told of a full disk by its own machine alone, which a test cannot fill.
      if (kind === 'postgresql') return
      const { client, inTransaction } = current().database
      const pragma = async (text: string) =>
        Number(Object.values((await client.$queryRawUnsafe<Record<string, unknown>[]>(`PRAGMA ${text}`))[0] ?? {})[0])
      const pages = await pragma('page_count')
      // SQLite refuses to grow the file with the very error of a full disk (documentation of SQLite: PRAGMA max_page_count, SQLITE_FULL).
      const limited = await inTransaction(async (tx) => tx.$queryRawUnsafe(`PRAGMA max_page_count = ${pages + 40}`))
      expect(limited).toHaveLength(1)
      const acknowledged: string[] = []
      let refusal: unknown = null
      for (let n = 0; n < 2000 && refusal === null; n += 1) {
        const pair = [`full-${n}-a@quillmoor.example`, `full-${n}-b@quillmoor.example`]
        try {
          await inTransaction(async (tx) => {
            for (const email of pair)
              await tx.resetRequest.create({ data: { email: email.padStart(900, 'x'), at: new Date() } })
          })
          acknowledged.push(...pair)
        } catch (error) {
          refusal = error
        }
      }
      expect(String(refusal)).toMatch(/disk is full/i)
      expect(acknowledged.length).toBeGreaterThan(20)
      const read = async () =>
        (await client.resetRequest.findMany({ where: { email: { contains: 'full-' } }, select: { email: true } }))
          .map(({ email }) => email.replace(/^x+/, ''))
          .toSorted()
      // Reads answer, every pair is whole, and none of what was refused is there.
      expect(await read()).toEqual(acknowledged.toSorted())
      expect(await client.$queryRawUnsafe('PRAGMA integrity_check')).toEqual([{ integrity_check: 'ok' }])
      await inTransaction(async (tx) => tx.$queryRawUnsafe('PRAGMA max_page_count = 1073741823'))
      await inTransaction(async (tx) => tx.resetRequest.create({ data: { email: 'full-again', at: new Date() } }))
      expect(await read()).toHaveLength(acknowledged.length + 1)
      await client.resetRequest.deleteMany({ where: { email: { contains: 'full-' } } })
    }, 120_000)

    it('is still there after the process that wrote it was killed', async () => {
      const program = startProgram(INSERTING_PROGRAM, current().url)
      const acknowledged: string[] = []
      await new Promise<void>((resolve, reject) => {
        program.on('error', reject)
        program.on('message', (name) => {
          acknowledged.push(String(name))
          if (acknowledged.length === 50) program.kill('SIGKILL')
        })
        program.on('exit', () => resolve())
      })
      expect(acknowledged.length).toBeGreaterThanOrEqual(50)
      const stored = await current().database.client.resetRequest.findMany({ select: { email: true } })
      expect(stored.map(({ email }) => email)).toEqual(expect.arrayContaining(acknowledged))
    }, 400_000)
  },
  { fresh: 'test', isDurable: true },
)
