// Run by durability.test.ts in a process of its own: reads a row and writes it back, as often as it is told, and answers how it went.
import { openDatabase } from '@/lib/data/client'

const AT_A_TIME = 3

const [url, times] = process.argv.slice(2)
if (url === undefined || times === undefined) throw new Error('name the database and how often to count')
const database = openDatabase(url)
const failures: string[] = []
let done = 0

async function increment(): Promise<void> {
  try {
    await database.inTransaction(async (tx) => {
      const { version } = await tx.workspace.findUniqueOrThrow({ where: { id: 'workspace' } })
      await tx.workspace.update({ where: { id: 'workspace' }, data: { version: version + 1 } })
    })
    done++
  } catch (error) {
    failures.push(String(error))
  }
}

for (let round = 0; round < Number(times) / AT_A_TIME; round++) {
  await Promise.all(Array.from({ length: AT_A_TIME }, increment))
}
await database.close()
process.send?.({ done, failures })
process.disconnect?.()
