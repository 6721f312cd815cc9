import { mkdir, writeFile } from 'node:fs/promises'
import { CATALOGUE, makeReferencePage } from '@/lib/engine/catalogue'

const docs = new URL('../../docs/', import.meta.url)

await mkdir(docs, { recursive: true })
await writeFile(new URL('catalogue.md', docs), makeReferencePage())
console.log(`${CATALOGUE.length} items written to docs/catalogue.md`)
