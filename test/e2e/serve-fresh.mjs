// Serves the built application with a data folder of its own that is removed at the end: a fresh database with demo data.
import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath } from 'node:url'

// Named where something beside the server works on the same data.
const dataFolder = process.env.BENDWORTHY_E2E_DATA || mkdtempSync(path.join(tmpdir(), 'bendworthy-e2e-'))
const start = fileURLToPath(new URL('../../scripts/start.mjs', import.meta.url))

const server = spawn(process.execPath, [start, ...process.argv.slice(2)], {
  env: {
    ...process.env,
    BENDWORTHY_DATA_FOLDER: dataFolder,
    // Whatever the person running the tests has set for their own server stays out of them.
    DATABASE_URL: '',
    HOST: '',
    BENDWORTHY_PUBLIC_URL: '',
    BENDWORTHY_EMPTY: '',
    BENDWORTHY_DEMO: '',
    BENDWORTHY_SMTP_URL: '',
  },
  stdio: 'inherit',
})
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) process.on(signal, () => server.kill('SIGTERM'))
server.on('close', (code) => {
  rmSync(dataFolder, { recursive: true, force: true })
  process.exit(code ?? 1)
})
