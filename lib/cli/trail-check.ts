import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import type { StoredTrailCheck } from '@/lib/data'
import { formatIssuePath } from '@/lib/engine'
import { countOf } from '@/lib/engine/units'
import {
  type CheckpointedTrail,
  checkTrailWithCheckpoints,
  parseTrailFile,
  type TrailCheckpoint,
  type TrailFile,
} from '@/lib/package'
import { checkTrail, type TrailCheck } from '@/lib/review'

const USAGE = `Checks the trail: every record's hash, its link to the one before, the numbering, and the signed checkpoints, by
which it shows when the end was cut off or all of it was rewritten. In the database it also holds what is there against
the records: every signature, answer, waiver, declaration, release, comment, sheet and the rest, as its record left it.

  npm run trail:check                         the trail in this installation's database
  npm run trail:check -- trail.json           an exported trail, or the extract in a release package
  npm run trail:check -- --head 120:<hash>    also that record 120 is there and has this hash
  npm run trail:check -- --recent             in the database, from the last checkpoint on alone, and without the state: seconds
  npm run trail:check -- --against other.json also that it holds what an earlier export or a package's trail.json vouches for

--key verifying-key.pem   judges the checkpoints of a file; without it they are only compared with the records

Exit status: 0 the trail fits, 1 a record or something in the database does not, 2 it could not be checked.`

/** So many misfits are named; the rest is a number. */
const MOST_MISFITS = 50

/** Ends with a message; the trail could not be checked at all. */
function stop(message: string): never {
  console.error(message)
  process.exit(2)
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        head: { type: 'string' },
        against: { type: 'string' },
        key: { type: 'string' },
        recent: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
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

function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8')
  } catch (error) {
    return stop(`${file}: cannot be read (${error instanceof Error ? error.message : String(error)})`)
  }
}

function readTrailFile(file: string): TrailFile {
  const parsed = parseTrailFile(readText(file))
  if (parsed.ok) return parsed.value
  return stop(parsed.issues.map(({ path, message }) => `${file}, ${formatIssuePath(path)}: ${message}`).join('\n'))
}

interface Checked extends Pick<StoredTrailCheck, 'check' | 'last' | 'checkpoints' | 'state'> {
  readonly isExtract: boolean
  readonly areSignaturesJudged: boolean
}

interface Question {
  readonly key: string | null
  readonly against: readonly TrailCheckpoint[]
  readonly head: { readonly sequence: number; readonly hash: string } | undefined
}

async function checkDatabase({ key, against, head }: Question, isRecent: boolean): Promise<Checked> {
  try {
    // Loaded only here: checking a file must not need a database.
    const { checkStoredTrail } = await import('@/lib/data')
    const checked = await checkStoredTrail({ verifyingKeyPem: key, against, head, isRecent })
    return { ...checked, isExtract: false, areSignaturesJudged: true }
  } catch (error) {
    return stop(`the trail in the database cannot be read: ${error instanceof Error ? error.message : String(error)}`)
  }
}

function checkFile(file: string, { key, against, head }: Question): Checked {
  const trail = readTrailFile(file)
  const { records, isExtract, checkpoints } = trail
  return {
    check: judge({ ...trail, others: against }, key, head),
    last: records.at(-1) ?? null,
    checkpoints,
    state: null,
    isExtract,
    areSignaturesJudged: key !== null,
  }
}

function judge(
  trail: Omit<CheckpointedTrail, 'verifyingKeyPem'>,
  key: string | null,
  head: Question['head'],
): TrailCheck {
  const { records, isExtract } = trail
  const heads = [
    ...(head === undefined ? [] : [head]),
    // Without a key a checkpoint proves nothing, but a record that contradicts it is wrong all the same.
    ...(key === null && !isExtract ? [...trail.checkpoints, ...trail.others] : []),
  ]
  for (const expectedHead of heads) {
    const found = checkTrail(records, { allowGaps: isExtract, expectedHead })
    if (!found.ok) return found
  }
  if (key === null) return checkTrail(records, { allowGaps: isExtract })
  try {
    return checkTrailWithCheckpoints({ ...trail, verifyingKeyPem: key })
  } catch (error) {
    return stop(error instanceof Error ? error.message : String(error))
  }
}

const { values, positionals } = readArguments()
if (values.help === true) {
  console.log(USAGE)
  process.exit(0)
}
if (positionals.length > 1) stop(USAGE)
const [file] = positionals
const against = values.against === undefined ? [] : readTrailFile(values.against).checkpoints
if (values.against !== undefined && against.length === 0) stop(`${values.against}: holds no checkpoint to compare with`)
const isRecent = values.recent === true
if (isRecent && file !== undefined) stop('--recent is for the trail in the database: a file is checked whole')
const question: Question = {
  key: values.key === undefined ? null : readText(values.key),
  against,
  head: values.head === undefined ? undefined : parseHead(values.head),
}
const checked = file === undefined ? await checkDatabase(question, isRecent) : checkFile(file, question)
const { check: result, last, isExtract, checkpoints, areSignaturesJudged, state } = checked
const name = file ?? 'trail'
if (!result.ok) {
  console.error(`${name}: does not match at record ${result.fault.sequence}`)
  console.error(`  ${result.fault.reason} [${result.fault.code}]`)
  process.exit(1)
}
const misfits = state?.misfits ?? []
if (misfits.length > 0) {
  console.error(
    `${name}: ${countOf(misfits.length, 'row of the database does', 'rows of the database do')} not match the trail`,
  )
  for (const { what, reason } of misfits.slice(0, MOST_MISFITS)) console.error(`  ${what} ${reason}`)
  if (misfits.length > MOST_MISFITS) console.error(`  and ${misfits.length - MOST_MISFITS} more`)
  process.exit(1)
}
console.log(
  `${name}: ${result.count} records fit${isRecent ? ', from the last checkpoint on' : ''}${isExtract ? ' (an extract: gaps between them are not checked)' : ''}`,
)
if (last !== null) {
  console.log(`  last: record ${last.sequence}, ${last.action}, ${last.at}`)
  console.log(`  head: ${last.sequence}:${result.headHash}`)
}
if (state !== null) {
  console.log(`  in the database: ${countOf(state.fitCount, 'row matches its record', 'rows match their records')}`)
  if (state.olderCount > 0) {
    console.log(
      `  ${state.olderCount} rows were recorded before hashes were kept: whether they have changed is not known`,
    )
  }
}
const vouched = checkpoints.at(-1)
console.log(
  vouched === undefined
    ? '  no checkpoint: a missing end would not be noticed'
    : `  ${checkpoints.length} ${checkpoints.length === 1 ? 'checkpoint' : 'checkpoints'}, the last of record ${vouched.sequence} (${vouched.at})${areSignaturesJudged ? '' : '; signatures not checked: give --key'}`,
)
process.exit(0)
