// Run by durability.test.ts in a process of its own: inserts rows and reports each one stored, until it is killed.
import { openDatabase } from '@/lib/data/store/client'
import { named } from './plain-rows'

const [url] = process.argv.slice(2)
if (url === undefined) throw new Error('name the database')
const { client } = openDatabase(url)

for (let count = 1; ; count++) {
  const name = `Row ${count}`
  await client.resetRequest.create({ data: named(name) })
  process.send?.(name)
}
