import { rmSync } from 'node:fs'
import { afterAll } from 'vitest'
import { runJobsInPlace } from '@/lib/jobs'
import { makeShortLivedFolder } from './short-lived-folder'

// Each test file has a data folder of its own, and none of the settings of the person who runs the tests.
const folder = makeShortLivedFolder('bendworthy-test-')
for (const name of Object.keys(process.env)) {
  if (/^(BENDWORTHY_|DATABASE_URL$|HOST$|PORT$)/.test(name)) delete process.env[name]
}
process.env.BENDWORTHY_DATA_FOLDER = folder
process.env.BENDWORTHY_LOG_LEVEL = 'error'

// A thread takes seconds to load the sources. What is about threads starts its own pool.
runJobsInPlace()

afterAll(() => rmSync(folder, { recursive: true, force: true }))
