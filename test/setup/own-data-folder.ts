import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll } from 'vitest'
import { runJobsInPlace } from '@/lib/jobs'

// Each test file has a data folder of its own, and none of the settings of the person who runs the tests.
const folder = mkdtempSync(path.join(tmpdir(), 'bendworthy-test-'))
for (const name of Object.keys(process.env)) {
  if (/^(BENDWORTHY_|DATABASE_URL$|HOST$|PORT$)/.test(name)) delete process.env[name]
}
process.env.BENDWORTHY_DATA_FOLDER = folder
process.env.BENDWORTHY_LOG_LEVEL = 'error'

// A thread takes seconds to load the sources. What is about threads starts its own pool.
runJobsInPlace()

afterAll(() => rmSync(folder, { recursive: true, force: true }))
