// Writes a new migration for both databases from what changed in prisma/models.prisma:
//   npm run db:migration -- add-waivers
// or, with --by-hand, files to fill in with SQL that the models do not express, such as a trigger.

import path from 'node:path'
import { now } from '@/lib/config'
import { createMigration, createMigrationByHand, migrationPlaces } from '@/lib/data/store/migration'
import { rootFolder } from './steps/places.mjs'
import { runTask } from './steps/run-task'

await runTask(async () => {
  const name = process.argv.slice(2).find((argument) => !argument.startsWith('--'))
  if (name === undefined) throw new RangeError('Name the migration: npm run db:migration -- add-waivers')
  const places = migrationPlaces(rootFolder)
  const files = process.argv.includes('--by-hand')
    ? createMigrationByHand(places, name, now())
    : await createMigration(places, name, now())
  if (files.length === 0) console.log('The models have not changed since the newest migration; nothing written.')
  for (const file of files) console.log(`Written: ${path.relative(rootFolder, file)}`)
})
