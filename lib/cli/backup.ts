import { parseArgs } from 'node:util'

const USAGE = `Makes a backup while the server runs: a folder backups/<time> of the data folder, with the database (SQLite's own copy, or pg_dump's) and
the kept files. The folder "secrets" is not in it and is kept apart: who has it can sign packages.

  npm run backup
  npm run backup -- --keep 14     # leaves the newest 14

Exit status: 0 it is made, 2 it could not be.`

function readArguments() {
  try {
    const { values } = parseArgs({ options: { keep: { type: 'string' }, help: { type: 'boolean', short: 'h' } } })
    if (values.keep !== undefined && !/^[1-9]\d{0,3}$/.test(values.keep)) {
      throw new RangeError(`--keep is "${values.keep}"; expected how many backups to leave, 1 to 9999`)
    }
    return values
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`)
    process.exit(2)
  }
}

const { keep, help } = readArguments()
if (help === true) {
  console.log(USAGE)
  process.exit(0)
}
try {
  // Loaded only here: the words of help need no database.
  const { makeBackup } = await import('@/lib/data')
  const { folder, sizeBytes } = await makeBackup(keep === undefined ? null : Number(keep))
  console.log(`${folder} (database ${Math.ceil(sizeBytes / 1024)} kB)`)
  process.exit(0)
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error))
  process.exit(2)
}
