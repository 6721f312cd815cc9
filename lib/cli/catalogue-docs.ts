import { mkdir, writeFile } from 'node:fs/promises'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { makeReferencePage } from '@/lib/engine/catalogue/prose'

const docs = new URL('../../docs/', import.meta.url)

await mkdir(docs, { recursive: true })
await writeFile(new URL('catalogue.md', docs), makeReferencePage())
console.log(`${CATALOGUE.length} items written to docs/catalogue.md`)
