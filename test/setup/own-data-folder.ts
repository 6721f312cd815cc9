import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import path from 'node:path'
import { afterAll, expect, inject } from 'vitest'
import { now } from '@/lib/config'
import { replacePasswordCost } from '@/lib/data/records/passwords'
import { runJobsInPlace } from '@/lib/jobs'

// Each test file starts with an empty data folder, and with none of the settings of the person who runs the tests. Files that share a process
// share the folder's path, which the application reads once; it goes with the run.
const PLACE = Symbol.for('bendworthy.test-data-folder')
const process_ = globalThis as { [PLACE]?: string }
const run = inject('baseDatabases').run.folder
process_[PLACE] ??= mkdtempSync(path.join(run, 'data-'))
const folder = process_[PLACE]
for (const name of readdirSync(folder)) rmSync(path.join(folder, name), { recursive: true, force: true })
for (const name of Object.keys(process.env)) {
  if (/^(BENDWORTHY_|DATABASE_URL$|HOST$|PORT$)/.test(name)) delete process.env[name]
}
process.env.BENDWORTHY_DATA_FOLDER = folder
// One installation's secrets in all files of a run: reviews that one file prepares for the others are signed with them.
cpSync(path.join(run, 'secrets'), path.join(folder, 'secrets'), { recursive: true })
process.env.BENDWORTHY_LOG_LEVEL = 'error'

// A thread takes seconds to load the sources. What is about threads starts its own pool.
runJobsInPlace()

// The shipped cost is half a second of processor for each password. Tests of the cost itself go back to it (`atFullPasswordCost`).
const restoreCost = replacePasswordCost(10)
afterAll(restoreCost)

// A process goes on with the next file: a file that leaves the clock elsewhere is at fault, not the next one.
afterAll(() => expect(Math.abs(now().getTime() - Date.now()), 'ms that the clock was left off').toBeLessThan(60_000))
