import { cpSync, rmSync } from 'node:fs'
import path from 'node:path'
import { afterAll, inject } from 'vitest'
import { runJobsInPlace } from '@/lib/jobs'
import { makeShortLivedFolder } from './short-lived-folder'

// Each test file has a data folder of its own, and none of the settings of the person who runs the tests.
const folder = makeShortLivedFolder('bendworthy-test-')
for (const name of Object.keys(process.env)) {
  if (/^(BENDWORTHY_|DATABASE_URL$|HOST$|PORT$)/.test(name)) delete process.env[name]
}
process.env.BENDWORTHY_DATA_FOLDER = folder
// One installation's secrets in all files of a run: reviews that one file prepares for the others are signed with them.
cpSync(path.join(inject('baseDatabases').run.folder, 'secrets'), path.join(folder, 'secrets'), { recursive: true })
process.env.BENDWORTHY_LOG_LEVEL = 'error'

// A thread takes seconds to load the sources. What is about threads starts its own pool.
runJobsInPlace()

afterAll(() => rmSync(folder, { recursive: true, force: true }))
