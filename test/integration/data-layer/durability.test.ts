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
