import 'server-only'

export { applyMigrations, MigrationError } from './apply-migrations'
export { createMigration, createMigrationByHand, hasUnmigratedModels } from './create-migration'
export { isEmptyDatabase, wipeDatabase } from './empty-database'
export { DATABASE_KINDS, type MigrationPlaces, migrationPlaces } from './migration-files'
