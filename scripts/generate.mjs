// Writes both Prisma schemas from prisma/models.prisma and generates both clients. `--quiet` prints only failures.
import { generateClients } from './steps/generate-clients.mjs'
import { runAsCommand, say } from './steps/run-program.mjs'

await runAsCommand(async () => {
  const { changed, seconds } = await generateClients()
  if (process.argv.includes('--quiet')) return
  say(changed ? `Database clients generated in ${seconds} s.` : 'Database clients are up to date.')
})
