import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs'
import path from 'node:path'
import { buildApplication } from '../../scripts/steps/build-application.mjs'
import { fingerprint, listFiles } from '../../scripts/steps/fingerprint.mjs'
import { cacheFolder } from '../../scripts/steps/places.mjs'
import { startOwnServer } from './own-server'

/** All that the demo data come from. */
const SOURCES = ['lib', 'seed', 'prisma/migrations', 'package-lock.json']
const NAME = /^demo-data-/

/** A data folder with the demo scenario, which nothing serves: every server under test gets a copy. */
export function findDemoData(): string {
  // The scenario ends on the day that it is played on.
  const today = new Date().toISOString().slice(0, 10)
  return path.join(cacheFolder, `demo-data-${today}-${fingerprint(listFiles(SOURCES)).slice(0, 16)}`)
}

/** Before the first test: the build, and the demo data where there are none from these sources and this day. */
export default async function prepareDemoData(): Promise<void> {
  await buildApplication()
  const finished = findDemoData()
  if (existsSync(finished)) return
  mkdirSync(cacheFolder, { recursive: true })
  for (const name of readdirSync(cacheFolder)) {
    if (NAME.test(name)) rmSync(path.join(cacheFolder, name), { recursive: true, force: true })
  }
  const draft = `${finished}.${process.pid}`
  // The first start of a server fills its empty database.
  const server = await startOwnServer({ dataFolder: draft })
  await server.stop()
  renameSync(draft, finished)
}
