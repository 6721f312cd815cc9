// Fills an empty database with the demo scenario. Does nothing, and says so, where there is data already.
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import { getSettings, isLoopbackOnly, SettingsError, withoutPassword } from '@/lib/config'
import { isWorkspaceEmpty } from '@/lib/data'
import { applyMigrations, MigrationError, migrationPlaces } from '@/lib/data/store/migration'
import { runJobsInPlace } from '@/lib/jobs'
import { setCapability } from './capability'
import { setFlexTests } from './flex-tests'
import { setPanelsAndRates } from './panels'
import { gatherPeople, leaveInvitations, setLimits } from './people'
import { playPipit } from './pipit'
import { bringResultsBack } from './pipit-actions'
import { setShelves } from './shelf'
import { playSkuaFirst } from './skua-first'
import { playSkuaSecond } from './skua-second'
import { StoryError, setStage } from './stage'
import { startStoryClock } from './story-clock'

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..')

async function seed(): Promise<void> {
  const { databaseUrl } = getSettings()
  await applyMigrations(databaseUrl, migrationPlaces(ROOT))
  const place = withoutPassword(databaseUrl)
  if (!(await isWorkspaceEmpty())) {
    console.log(`${place} holds data already; the demo scenario was not added.`)
    return
  }
  if (!isLoopbackOnly()) {
    throw new StoryError(
      'The demo scenario is made only for a server that other machines cannot reach: its passwords are public.',
    )
  }
  // Nobody waits for this process, and a thread could not load the sources.
  runJobsInPlace()
  const clock = startStoryClock()
  try {
    const stage = setStage(clock)
    const workspace = await gatherPeople(stage)
    await setLimits(stage, workspace)
    await setCapability(stage, workspace)
    await setShelves(stage, workspace)
    await setFlexTests(stage, workspace)
    await setPanelsAndRates(stage, workspace)
    const pipitRevisionId = await playPipit(stage, workspace)
    const firstRevisionId = await playSkuaFirst(stage, workspace)
    await bringResultsBack(stage, workspace, pipitRevisionId)
    await playSkuaSecond(stage, workspace, firstRevisionId)
    await leaveInvitations(stage, workspace)
  } finally {
    clock.stop()
  }
  console.log(`${place} holds the demo scenario.`)
}

try {
  await seed()
} catch (error) {
  const isExpected = [StoryError, SettingsError, MigrationError].some((kind) => error instanceof kind)
  console.error(isExpected && error instanceof Error ? error.message : error)
  process.exitCode = 1
}
