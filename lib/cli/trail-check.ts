import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { formatIssuePath } from '@/lib/engine'
import { parseTrailFile } from '@/lib/package'
import { checkTrail, type TrailRecord } from '@/lib/review'

const USAGE = `Checks the trail: every record's hash, its link to the one before, and the numbering.

  npm run trail:check                         the trail in this installation's database
  npm run trail:check -- trail.json           an exported trail, or the extract in a release package
  npm run trail:check -- --head 120:<hash>    also that record 120 is there and has this hash

Exit status: 0 the trail fits, 1 a record does not, 2 it could not be checked.`

/** Ends with a message; the trail could not be checked at all. */
function stop(message: string): never {
  console.error(message)
  process.exit(2)
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: { head: { type: 'string' }, help: { type: 'boolean', short: 'h' } },
    })
  } catch (error) {
    return stop(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`)
  }
}

function parseHead(text: string): { sequence: number; hash: string } {
  const match = /^([1-9]\d{0,15}):([0-9a-f]{64})$/.exec(text)
  if (match === null) return stop(`--head is "${text}"; expected a record's number, a colon and its hash`)
  return { sequence: Number(match[1]), hash: match[2] ?? '' }
}

async function readRecords(file: string | undefined): Promise<{ records: readonly TrailRecord[]; isExtract: boolean }> {
  if (file === undefined) {
    try {
      // Loaded only here: checking a file must not need a database.
      const { listAllTrailRecords } = await import('@/lib/data')
      return { records: await listAllTrailRecords(), isExtract: false }
    } catch (error) {
      return stop(`the trail in the database cannot be read: ${error instanceof Error ? error.message : String(error)}`)
    }
  }
  let text: string
  try {
    text = readFileSync(file, 'utf8')
  } catch (error) {
    return stop(`${file}: cannot be read (${error instanceof Error ? error.message : String(error)})`)
  }
  const parsed = parseTrailFile(text)
  if (parsed.ok) return parsed.value
  return stop(parsed.issues.map(({ path, message }) => `${file}, ${formatIssuePath(path)}: ${message}`).join('\n'))
}

const { values, positionals } = readArguments()
if (values.help === true) {
  console.log(USAGE)
  process.exit(0)
}
if (positionals.length > 1) stop(USAGE)
const [file] = positionals
const expectedHead = values.head === undefined ? undefined : parseHead(values.head)
const { records, isExtract } = await readRecords(file)
const check = checkTrail(records, { allowGaps: isExtract, ...(expectedHead === undefined ? {} : { expectedHead }) })
const name = file ?? 'trail'
if (!check.ok) {
  console.error(`${name}: does not fit at record ${check.fault.sequence}`)
  console.error(`  ${check.fault.reason} [${check.fault.code}]`)
  process.exit(1)
}
const last = records.at(-1)
console.log(`${name}: ${check.count} records fit${isExtract ? ' (an extract: gaps between them are not checked)' : ''}`)
if (last !== undefined) {
  console.log(`  last: record ${last.sequence}, ${last.action}, ${last.at}`)
  console.log(`  head: ${last.sequence}:${check.headHash}`)
}
process.exit(0)
