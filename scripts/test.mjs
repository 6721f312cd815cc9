// npm test: all that is checked, in one go. With the name of a suite (unit, standards, integration, e2e) only that one;
// further arguments go to its test runner, such as a part of a file's name.
import { requireNode } from './steps/node-version.mjs'

requireNode()
const { runAsCommand } = await import('./steps/run-program.mjs')
const { runTests } = await import('./steps/run-tests.mjs')

await runAsCommand(() => runTests(process.argv.slice(2)))
