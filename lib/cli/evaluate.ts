import { runEvaluateCommand } from './evaluate-command'

const { status, text, problem } = runEvaluateCommand(process.argv.slice(2), new Date().toISOString().slice(0, 10))
if (text !== '') console.log(text)
if (problem !== '') console.error(problem)
// Set, not exited with: a pipe may still be taking the text.
process.exitCode = status
