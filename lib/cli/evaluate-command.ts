import { parseArgs } from 'node:util'
import {
  dateSchema,
  evaluate,
  formatIssuePath,
  getDesignJsonSchema,
  type Issue,
  MAX_DESIGN_CHARACTERS,
  makeResultsDocument,
  parseDesignBytes,
} from '@/lib/engine'
import { DELIVERED_PROFILES, DELIVERED_TEMPLATE, layProfileLimits, makeCatalogue } from '@/lib/engine/catalogue'
import { listTestedLives } from '@/lib/engine/flex-tests'
import { formatReport, isAllMet } from './evaluation-report'
import { type FlexTestFile, readFlexTestFile } from './flex-test-file'
import { readInputFile, UnusableInput } from './input-file'

export const EVALUATE_USAGE = `Evaluates a design document without server or database.

  npm run evaluate -- design.json [--json] [--on 2027-03-01] [--profile <id>]...
                      [--flex-tests tests.csv]...
  npm run evaluate -- --schema

--json    the results for another program
--on      calendar day of the evaluation; today where it is left out
--profile one of the delivered profiles, more than once for several; the strictest of them wins:
          ${DELIVERED_PROFILES.map(({ id }) => id).join(', ')}
--flex-tests  own flex tests, more than once for several files: CSV or XLSX with the headings with which the application exports them;
          slope and ductility that they give stand in place of defaults where they cover a bend
--schema  the JSON Schema of the design document

Exit status: 0 everything that can be computed from the file is met, 1 something is a concern or lacks an input, 2 the file
cannot be read; each bad field is then named by its path. Status 0 passes over questions that wait for a person, and over
those that lack only artwork or a fabricator's look, which a design file cannot hold.`

/** Four bytes are the most that a character takes in UTF-8. */
const DESIGN_FILE = {
  kind: 'a design file',
  maxBytes: 4 * MAX_DESIGN_CHARACTERS,
  atMost: `a design document has at most ${MAX_DESIGN_CHARACTERS} characters`,
}

export interface CommandResult {
  readonly status: 0 | 1 | 2
  /** For standard output; empty where the status is 2. */
  readonly text: string
  /** For standard error. */
  readonly problem: string
}

/**
 * The whole command: arguments in, text and exit status out.
 *
 * @param argv   arguments after the program's name
 * @param today  calendar day that stands where `--on` is left out
 */
export function runEvaluateCommand(argv: readonly string[], today: string): CommandResult {
  try {
    return { problem: '', ...run(argv, today) }
  } catch (error) {
    if (error instanceof UnusableInput) return { status: 2, text: '', problem: error.message }
    throw error
  }
}

function run(argv: readonly string[], today: string): { status: 0 | 1; text: string } {
  const { values, positionals } = readArguments(argv)
  if (values.help === true) return { status: 0, text: EVALUATE_USAGE }
  if (values.schema === true) return { status: 0, text: JSON.stringify(getDesignJsonSchema(), null, 2) }
  const [file] = positionals
  if (file === undefined || positionals.length > 1) throw new UnusableInput(EVALUATE_USAGE)
  const evaluatedOn = readDay(values.on ?? today)
  const parsed = parseDesignBytes(readInputFile(file, DESIGN_FILE))
  if (!parsed.ok) throw new UnusableInput(describeIssues(file, parsed.issues))
  const { items, profiles } = makeCatalogue({ ...DELIVERED_TEMPLATE, profileIds: readProfileIds(values.profile ?? []) })
  const limits = layProfileLimits([], profiles)
  const flexTests = readFlexTestFiles(values['flex-tests'] ?? [])
  const testedLives = flexTests.flatMap(({ rows, owner }) => listTestedLives(rows, owner))
  const evaluation = evaluate(parsed.value, { facts: { evaluatedOn }, items, limits, testedLives })
  return {
    status: isAllMet(evaluation) ? 0 : 1,
    text:
      values.json === true
        ? JSON.stringify(
            {
              ...makeResultsDocument(evaluation, evaluation),
              ...(profiles.length === 0 ? {} : { profiles: profiles.map(({ id, name }) => ({ id, name })) }),
              ...(flexTests.length === 0 ? {} : { flexTests }),
            },
            null,
            2,
          )
        : formatReport(parsed.value, evaluation, { items, profiles, flexTests }).trimEnd(),
  }
}

function readProfileIds(ids: readonly string[]): readonly string[] {
  const unknown = ids.find((id) => !DELIVERED_PROFILES.some((profile) => profile.id === id))
  if (unknown === undefined) return ids
  const known = DELIVERED_PROFILES.map(({ id }) => id).join(', ')
  throw new UnusableInput(`--profile: "${unknown}" is not a delivered profile; there are ${known}`)
}

/** Sets are told apart by the name of their file, so that one name must not stand for two. */
function readFlexTestFiles(files: readonly string[]): readonly FlexTestFile[] {
  const read = files.map(readFlexTestFile)
  const names = read.map(({ owner }) => owner.name)
  const twice = names.find((name, at) => names.indexOf(name) !== at)
  if (twice !== undefined)
    throw new UnusableInput(`--flex-tests: two files are named "${twice}": give them different names`)
  return read
}

function readArguments(argv: readonly string[]) {
  try {
    return parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: {
        json: { type: 'boolean' },
        on: { type: 'string' },
        profile: { type: 'string', multiple: true },
        'flex-tests': { type: 'string', multiple: true },
        schema: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    })
  } catch (error) {
    throw new UnusableInput(`${error instanceof Error ? error.message : String(error)}\n\n${EVALUATE_USAGE}`)
  }
}

function describeIssues(file: string, issues: readonly Issue[]): string {
  const lines = issues.map(({ path, message }) =>
    path.length === 0 ? `  ${message}` : `  ${formatIssuePath(path)}: ${message}`,
  )
  const count = `${issues.length} ${issues.length === 1 ? 'problem' : 'problems'}`
  return [`${file}: not a design document that can be evaluated (${count})`, ...lines].join('\n')
}

function readDay(day: string): string {
  if (!dateSchema.safeParse(day).success) {
    throw new UnusableInput(`--on: "${day}" is not a calendar day such as 2027-03-01`)
  }
  return day
}
