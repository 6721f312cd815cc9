// npm start: everything from a fresh checkout to a served application. See steps/start-application.mjs.
import { requireNode } from './steps/node-version.mjs'

requireNode()
// Imported only now: the rest is written for the Node that has just been asked for.
const { startApplication } = await import('./steps/start-application.mjs')
const { runAsCommand } = await import('./steps/run-program.mjs')

await runAsCommand(() => startApplication(process.argv.slice(2)))
