// Empties the database of this installation and applies all migrations. Asks for --yes, since nothing brings the data back.
import { getSettings, withoutPassword } from '@/lib/config'
import { applyMigrations, migrationPlaces, wipeDatabase } from '@/lib/data/store/migration'
import { rootFolder } from './steps/places.mjs'
import { runTask } from './steps/run-task'

await runTask(async () => {
  const { databaseUrl } = getSettings()
  if (!process.argv.includes('--yes')) {
    throw new RangeError(
      `This deletes everything in ${withoutPassword(databaseUrl)}. To go ahead: npm run db:reset -- --yes`,
    )
  }
  await wipeDatabase(databaseUrl)
  await applyMigrations(databaseUrl, migrationPlaces(rootFolder))
  console.log(`${withoutPassword(databaseUrl)} is empty and up to date.`)
})
