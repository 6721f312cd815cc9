// npm run build: packages and clients where needed, then the production build, unless nothing changed.
import { requireNode } from './steps/node-version.mjs'

requireNode()
const { installPackages } = await import('./steps/install-packages.mjs')
const { generateClients } = await import('./steps/generate-clients.mjs')
const { buildApplication } = await import('./steps/build-application.mjs')
const { runAsCommand, say } = await import('./steps/run-program.mjs')

await runAsCommand(async () => {
  await installPackages({ withTestTools: false })
  await generateClients()
  const { changed } = await buildApplication()
  if (!changed) say('The build is up to date.')
})
