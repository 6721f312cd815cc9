import 'server-only'
import type { TrailRecord } from '@/lib/review'
import type { TransactionClient } from '../client'
import { VOUCHED_MODELS, type VouchedModel, type VouchedRow } from './models'
import { hashRow, readRowHashes } from './row-hash'
import { getDelegate } from './watch'

/** Something in the database that is not as the trail says that it was left. */
export interface StateMisfit {
  /** `signature of Imke Dahl, revision Skua B` */
  readonly what: string
  readonly reason: string
}

export interface StateCheck {
  /** Rows that are as their record left them. */
  readonly fitCount: number
  /** Rows from before records carried hashes: nothing says whether they are as they were. */
  readonly olderCount: number
  readonly misfits: readonly StateMisfit[]
}

/** What is said of a record beside a misfit. */
type Mentioned = Pick<TrailRecord, 'sequence' | 'action' | 'at'>

interface Recorded {
  readonly hash: string | null
  readonly record: Mentioned
}

/** The action of a record that takes rows as found, which were there before records carried hashes. */
export const ADOPTED_ACTION = 'state-adopted'

/** What records say of the rows that they left, collected as the records go by: they themselves are not kept. */
export interface RecordedState {
  readonly add: (record: TrailRecord) => void
  readonly rows: ReadonlyMap<string, ReadonlyMap<string, Recorded>>
  /** Last mention of a subject that is never deleted, by kind and id. */
  readonly subjects: ReadonlyMap<string, ReadonlyMap<string, Mentioned>>
  readonly first: () => Mentioned | null
  /** Every row is accounted for: records have carried hashes from the first on, or what was there was taken as found. */
  readonly isWhole: () => boolean
}

export function collectState(): RecordedState {
  const rows = new Map<string, Map<string, Recorded>>()
  const subjects = new Map<string, Map<string, Mentioned>>()
  let first: Mentioned | null = null
  let isWhole = false
  return {
    rows,
    subjects,
    first: () => first,
    isWhole: () => isWhole,
    add(record) {
      const { sequence, action, at, subject } = record
      const mentioned = { sequence, action, at }
      const hashes = readRowHashes(record)
      if (first === null) {
        first = mentioned
        isWhole = hashes !== null
      }
      if (action === ADOPTED_ACTION) isWhole = true
      for (const [kind, left] of Object.entries(hashes ?? {})) {
        const known = rows.get(kind) ?? new Map<string, Recorded>()
        for (const [key, hash] of Object.entries(left)) known.set(key, { hash, record: mentioned })
        rows.set(kind, known)
      }
      if (!Object.hasOwn(KEPT_SUBJECTS, subject.kind)) return
      const told = subjects.get(subject.kind) ?? new Map<string, Mentioned>()
      subjects.set(subject.kind, told.set(subject.id, mentioned))
    },
  }
}

/** Holds every row of the tables that the trail vouches for against the last record that left it. */
export async function checkState(tx: TransactionClient, state: RecordedState): Promise<StateCheck> {
  const recorded = state.rows
  const isWhole = state.isWhole()
  const first = state.first()
  const names = await loadRevisionNames(tx)
  const misfits: StateMisfit[] = []
  let [fitCount, olderCount, rowCount] = [0, 0, 0]
  for (const vouched of VOUCHED_MODELS) {
    const left = recorded.get(vouched.kind) ?? new Map<string, Recorded>()
    const missing = new Set([...left].filter(([, { hash }]) => hash !== null).map(([key]) => key))
    const onRow = (row: VouchedRow) => {
      rowCount += 1
      const key = String(row[vouched.key])
      missing.delete(key)
      const last = left.get(key)
      const what = `${vouched.kind} ${vouched.name(row)}${ofRevision(names, row)} (${key})`
      if (last === undefined && isWhole)
        misfits.push({ what, reason: 'is in the database, but no record accounts for it' })
      else if (last === undefined) olderCount += 1
      else if (last.hash === null)
        misfits.push({ what, reason: `is in the database again, although ${say(last.record)} removed it` })
      else if (last.hash !== hashRow(vouched, row)) {
        misfits.push({ what, reason: `was changed after ${say(last.record)}` })
      } else if (last.record.action === ADOPTED_ACTION) olderCount += 1
      else fitCount += 1
    }
    const fault = await readRows(tx, vouched, onRow)
    if (fault !== null) {
      misfits.push({ what: `the table of the kind "${vouched.kind}"`, reason: `cannot be read: ${fault}` })
      continue
    }
    for (const key of missing) {
      const { record } = left.get(key) as Recorded
      misfits.push({ what: `${vouched.kind} ${key}`, reason: `is missing, although ${say(record)} left it in place` })
    }
  }
  misfits.push(...(await findLostSubjects(tx, state)))
  if (rowCount > 0 && !isWhole && first !== null && !beginsWithWorkspace(first)) {
    misfits.push({
      what: 'the trail',
      reason: `begins with ${say(first)} and not with the creation of the workspace: earlier records are missing`,
    })
  }
  if (first === null && rowCount > 0) {
    return {
      fitCount: 0,
      olderCount: 0,
      misfits: [
        { what: 'the trail', reason: `is empty, but the database holds ${rowCount} rows that it should account for` },
      ],
    }
  }
  return { fitCount, olderCount, misfits }
}

function say({ sequence, action, at }: Mentioned): string {
  return `record ${sequence} (${action}, ${at})`
}

/**
 * Every trail begins with the making of its workspace. One from before records carried hashes that begins otherwise was
 * emptied, and went on.
 */
export function beginsWithWorkspace(first: Pick<TrailRecord, 'action'> | null): boolean {
  return first?.action === 'workspace-created'
}

/** Kinds of subjects that are never deleted: the row that an older record tells of must be there, hashes or not. */
const KEPT_SUBJECTS: Readonly<Record<string, string>> = {
  signature: 'Signature',
  waiver: 'Waiver',
  thread: 'Thread',
  attachment: 'Attachment',
  artwork: 'Artwork',
  declaration: 'Declaration',
  proposal: 'Proposal',
  revision: 'Revision',
  project: 'Project',
  account: 'User',
  invitation: 'Invitation',
}

async function findLostSubjects(tx: TransactionClient, { rows, subjects }: RecordedState): Promise<StateMisfit[]> {
  const misfits: StateMisfit[] = []
  for (const [kind, model] of Object.entries(KEPT_SUBJECTS)) {
    const hashed = rows.get(kind)
    const told = [...(subjects.get(kind) ?? [])].filter(([id]) => hashed?.has(id) !== true)
    if (told.length === 0) continue
    const there = new Set((await getDelegate(tx, model).findMany({ select: { id: true } })).map(({ id }) => String(id)))
    for (const [id, record] of told) {
      if (!there.has(id))
        misfits.push({ what: `${kind} ${id}`, reason: `is missing, although ${say(record)} mentions it` })
    }
  }
  return misfits
}

async function loadRevisionNames(tx: TransactionClient): Promise<ReadonlyMap<string, string>> {
  const projects = await tx.project.findMany({ select: { id: true, name: true } })
  const names = new Map(projects.map(({ id, name }) => [id, name]))
  const revisions = await tx.revision.findMany({ select: { id: true, label: true, projectId: true } })
  // Anyone who tampers leaves references that lead nowhere.
  return new Map(
    revisions.map(({ id, label, projectId }) => [id, `${names.get(projectId) ?? 'of no project,'} ${label}`]),
  )
}

function ofRevision(names: ReadonlyMap<string, string>, row: VouchedRow): string {
  const name = names.get(String(row.revisionId))
  return name === undefined ? '' : `, revision ${name}`
}

/** Rows hold whole designs and results: read in pieces. */
const ROWS_AT_ONCE = 200

/** @returns why the table cannot be read: a value that its column cannot hold is a change too */
export async function readRows(
  tx: TransactionClient,
  { model, key }: VouchedModel,
  onRow: (row: VouchedRow) => void,
): Promise<string | null> {
  let last: unknown
  try {
    for (;;) {
      const rows = await getDelegate(tx, model).findMany({
        ...(last === undefined ? {} : { where: { [key]: { gt: last } } }),
        orderBy: { [key]: 'asc' },
        take: ROWS_AT_ONCE,
      })
      for (const row of rows) onRow(row)
      if (rows.length < ROWS_AT_ONCE) return null
      last = rows.at(-1)?.[key]
    }
  } catch (error) {
    return error instanceof Error ? error.message.replaceAll(/\s+/g, ' ').trim().slice(0, 300) : String(error)
  }
}
