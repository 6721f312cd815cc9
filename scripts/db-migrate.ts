// Applies the migrations that the database of this installation has not had.
import { getSettings, withoutPassword } from '@/lib/config'
import { applyMigrations, migrationPlaces } from '@/lib/data/store/migration'
import { rootFolder } from './steps/places.mjs'
import { runTask } from './steps/run-task'

await runTask(async () => {
  const { databaseUrl } = getSettings()
  const applied = await applyMigrations(databaseUrl, migrationPlaces(rootFolder))
  const what = applied.length === 0 ? 'is up to date' : `has had ${applied.join(', ')}`
  console.log(`${withoutPassword(databaseUrl)} ${what}.`)
})
