import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { inject } from 'vitest'
import { type DatabaseKind, getSettings } from '@/lib/config'
import { openDatabase, replaceDatabase } from '@/lib/data/store/client'
import { countNames, getActorOf, goOnAfterNames, makeTeam, type Team, type TeamPersonName } from '../factories/people'
import { bringTo, countLabels, goOnAfterRevisions, makeRevision, STAGES, type Stage } from '../factories/reviews'
import { createTestDatabase } from './created-databases'

/** One review of one team. */
export interface PreparedReview {
  readonly team: Team
  readonly revisionId: string
}

interface PreparedDatabase {
  /** What a copy is made from. */
  readonly database: string
  /** Call it when the copy is in use: fills the data folder, and finds the people again. */
  readonly open: () => Promise<PreparedReview>
}

/** What a process that goes on in a copy has to know. */
interface Notes {
  readonly database: string
  readonly projectId: string
  readonly companies: Team['companies']
  readonly userIds: Readonly<Record<TeamPersonName, string>>
  readonly revisionId: string
  readonly namesGiven: number
  /** Labels that were given out by then in the process that made it. */
  readonly labelsGiven: number
}

/**
 * A review at a stage, made once for all test files of the run by whichever comes first: the acts on the way are some 35 answers and 18
 * plots, seconds of work that each test would do again. Each stage goes on from a copy of the one before.
 */
export async function findPreparedReview(kind: DatabaseKind, stage: Stage): Promise<PreparedDatabase> {
  const folder = path.join(inject('baseDatabases').run.folder, `${kind}-${stage}`)
  if (!existsSync(folder)) await prepare(kind, stage, folder)
  const notes: Notes = JSON.parse(readFileSync(path.join(folder, 'notes.json'), 'utf8'))
  return { database: notes.database, open: () => openCopy(folder, notes) }
}

async function prepare(kind: DatabaseKind, stage: Stage, folder: string): Promise<void> {
  const before = STAGES[STAGES.indexOf(stage) - 1]
  const origin = before === undefined ? null : await findPreparedReview(kind, before)
  const { databasePrefix } = inject('baseDatabases').run
  const created = await createTestDatabase(kind, {
    prefix: databasePrefix,
    ...(origin === null ? {} : { origin: origin.database }),
  })
  const database = openDatabase(created.url)
  replaceDatabase(database)
  const review = origin === null ? await begin() : await origin.open()
  await bringTo(stage, review.team, review.revisionId)
  replaceDatabase(null)
  await database.close()
  keep(folder, created.origin, kind, review)
}

async function begin(): Promise<PreparedReview> {
  emptyDataFolder()
  const team = await makeTeam()
  return { team, revisionId: await makeRevision(team) }
}

/** A second process may have kept the same stage meanwhile: its folder stays, whole and with its own database. */
function keep(folder: string, origin: string, kind: DatabaseKind, { team, revisionId }: PreparedReview): void {
  const draft = `${folder}.${process.pid}`
  mkdirSync(draft)
  const kept = path.join(folder, 'test.db')
  if (kind === 'sqlite') cpSync(origin, path.join(draft, 'test.db'))
  for (const name of listDataFolder()) cpSync(inDataFolder(name), path.join(draft, 'data', name), { recursive: true })
  const { projectId, companies, ...people } = team
  const userIds = Object.fromEntries(Object.entries(people).map(([name, { userId }]) => [name, userId]))
  const database = kind === 'sqlite' ? kept : origin
  const notes = {
    database,
    projectId,
    companies,
    userIds,
    revisionId,
    namesGiven: countNames(),
    labelsGiven: countLabels(),
  }
  writeFileSync(path.join(draft, 'notes.json'), JSON.stringify(notes))
  try {
    renameSync(draft, folder)
  } catch (error) {
    if (!existsSync(folder)) throw error
    rmSync(draft, { recursive: true })
  }
}

async function openCopy(folder: string, notes: Notes): Promise<PreparedReview> {
  emptyDataFolder()
  const data = path.join(folder, 'data')
  for (const name of readdirSync(data)) cpSync(path.join(data, name), inDataFolder(name), { recursive: true })
  goOnAfterNames(notes.namesGiven)
  goOnAfterRevisions(notes.labelsGiven)
  const { projectId, companies, userIds, revisionId } = notes
  const people: Partial<Record<TeamPersonName, Team['lead']>> = {}
  for (const [name, userId] of Object.entries(userIds)) people[name as TeamPersonName] = await getActorOf(userId)
  return { team: { projectId, companies, ...(people as Record<TeamPersonName, Team['lead']>) }, revisionId }
}

/** The secrets stay: they are read once, and the same in the whole run. */
const listDataFolder = () => readdirSync(getSettings().dataFolder).filter((name) => name !== 'secrets')
const inDataFolder = (name: string) => path.join(getSettings().dataFolder, name)

/** Copies of a database share their trail: the checkpoints that another copy's trail left would accuse this one. */
function emptyDataFolder(): void {
  for (const name of listDataFolder()) rmSync(inDataFolder(name), { recursive: true, force: true })
}
