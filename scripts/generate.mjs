// Writes both Prisma schemas from prisma/models.prisma and generates both clients. `--quiet` prints only failures.
import { generateClients } from './steps/generate-clients.mjs'
import { runAsCommand, say } from './steps/run-program.mjs'

await runAsCommand(async () => {
  const quiet = process.argv.includes('--quiet')
  const { changed } = await generateClients({ quiet })
  if (!changed && !quiet) say('The database clients are up to date.')
})
