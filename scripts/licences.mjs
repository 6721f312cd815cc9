// npm run licences: lists the licences of what is shipped in docs/licences.md; ends with 1 where one of them was not looked at yet.
import { writeFileSync } from 'node:fs'
import { listLicences, writeLicencePage } from './steps/list-licences.mjs'
import { inRoot } from './steps/places.mjs'

writeFileSync(inRoot('docs', 'licences.md'), writeLicencePage())
for (const { name, version, licence, isAllowed } of listLicences()) {
  if (isAllowed) continue
  console.error(`${name} ${version}: ${licence}`)
  process.exitCode = 1
}
