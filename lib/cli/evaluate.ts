import { readFileSync, statSync } from 'node:fs'
import { parseArgs } from 'node:util'
import {
  evaluate,
  formatIssuePath,
  getDesignJsonSchema,
  type Issue,
  MAX_DESIGN_CHARACTERS,
  parseDesignText,
} from '@/lib/engine'
import { formatReport, isAllMet } from './evaluation-report'

const USAGE = `Evaluates a design document without server or database.

  npm run evaluate -- design.json [--json] [--on 2027-03-01]
  npm run evaluate -- --schema

--json    the results for another program
--on      calendar day of the evaluation; today where it is left out
--schema  the JSON Schema of the design document

Exit status: 0 everything that is computed is met, 1 something is a concern or lacks an input, 2 the file cannot be read;
each bad field is then named by its path.`

/** Four bytes are the most that a character takes in UTF-8. */
const MAX_BYTES = 4 * MAX_DESIGN_CHARACTERS

/** Ends with a message; nothing was evaluated. */
function stop(message: string): never {
  console.error(message)
  process.exit(2)
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        on: { type: 'string' },
        schema: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    })
  } catch (error) {
    return stop(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`)
  }
}

function readText(file: string): string {
  try {
    const status = statSync(file)
    if (status.isDirectory()) stop(`${file}: is a folder; give a design file`)
    if (status.size > MAX_BYTES) {
      stop(`${file}: has ${status.size} bytes; a design document has at most ${MAX_DESIGN_CHARACTERS} characters`)
    }
    return readFileSync(file, 'utf8')
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return stop(`${file}: no such file`)
    return stop(`${file}: cannot be read (${error instanceof Error ? error.message : String(error)})`)
  }
}

function describeIssues(file: string, issues: readonly Issue[]): string {
  const lines = issues.map(({ path, message }) =>
    path.length === 0 ? `  ${message}` : `  ${formatIssuePath(path)}: ${message}`,
  )
  return [
    `${file}: not a design document that can be evaluated (${issues.length} ${issues.length === 1 ? 'problem' : 'problems'})`,
    ...lines,
  ].join('\n')
}

function readDay(on: string | undefined): string {
  const day = on ?? new Date().toISOString().slice(0, 10)
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day) || Number.isNaN(Date.parse(`${day}T00:00:00Z`))) {
    stop(`--on: "${day}" is not a calendar day such as 2027-03-01`)
  }
  return day
}

const { values, positionals } = readArguments()
if (values.help === true) {
  console.log(USAGE)
  process.exit(0)
}
if (values.schema === true) {
  console.log(JSON.stringify(getDesignJsonSchema(), null, 2))
  process.exit(0)
}
const [file] = positionals
if (file === undefined || positionals.length > 1) stop(USAGE)

const evaluatedOn = readDay(values.on)
const parsed = parseDesignText(readText(file))
if (!parsed.ok) stop(describeIssues(file, parsed.issues))
const evaluation = evaluate(parsed.value, { facts: { evaluatedOn } })
console.log(
  values.json === true ? JSON.stringify(evaluation, null, 2) : formatReport(parsed.value, evaluation).trimEnd(),
)
// Set, not exited with: a pipe may still be taking the text.
process.exitCode = isAllMet(evaluation) ? 0 : 1
