// Puts the data of a SQLite file into the PostgreSQL database of this installation, which must be empty. Stop the server first.
import { existsSync } from 'node:fs'
import path from 'node:path'
import { parseArgs } from 'node:util'
import { getSettings, withoutPassword } from '@/lib/config'
import { checkStoredTrail } from '@/lib/data'
import { openDatabase } from '@/lib/data/store/client'
import { applyMigrations, migrationPlaces } from '@/lib/data/store/migration'
import { MoveError, moveDatabase } from '@/lib/data/store/move-database'
import { rootFolder } from './steps/places.mjs'
import { runTask } from './steps/run-task'

await runTask(async () => {
  const { databaseUrl, dataFolder } = getSettings()
  const { values } = parseArgs({ options: { from: { type: 'string' } } })
  const file = path.resolve(values.from ?? path.join(dataFolder, 'bendworthy.db'))
  if (!databaseUrl.startsWith('postgres')) {
    throw new RangeError('Set DATABASE_URL to the empty PostgreSQL database that the data shall go to.')
  }
  if (!existsSync(file)) throw new RangeError(`There is no ${file}: name the SQLite file with --from.`)
  await applyMigrations(`file:${file}`, migrationPlaces(rootFolder))
  await applyMigrations(databaseUrl, migrationPlaces(rootFolder))
  const [from, to] = [openDatabase(`file:${file}`), openDatabase(databaseUrl)]
  try {
    const tables = await moveDatabase(from, to)
    for (const { name, count, hash } of tables) if (count > 0) console.log(`${hash.slice(0, 16)}  ${count}  ${name}`)
    const rows = tables.reduce((sum, { count }) => sum + count, 0)
    console.log(
      `${rows} rows of ${tables.length} tables are in ${withoutPassword(databaseUrl)}, counted and compared by their hashes.`,
    )
  } catch (error) {
    throw error instanceof MoveError ? new RangeError(error.message) : error
  } finally {
    await Promise.all([from.close(), to.close()])
  }
  const { check, state } = await checkStoredTrail({})
  const isWhole = check.ok && (state?.misfits.length ?? 0) === 0
  if (!isWhole) throw new RangeError('The trail does not fit: see npm run trail:check. Go on using the SQLite file.')
  console.log(
    'The trail fits. The files stay where they are, in the data folder; keep the SQLite file until you have looked around.',
  )
})
