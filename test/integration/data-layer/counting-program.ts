// Run by durability.test.ts in a process of its own: reads a row and writes it back, as often as it is told, and answers how it went.
import { openDatabase } from '@/lib/data/store/client'
import { WriteConflictError } from '@/lib/data/store/database-errors'
import { COUNTED } from './plain-rows'

const AT_A_TIME = 3

const [url, times] = process.argv.slice(2)
if (url === undefined || times === undefined) throw new Error('name the database and how often to count')
const database = openDatabase(url)
const failures: string[] = []
let done = 0

async function increment(): Promise<void> {
  try {
    await database.inTransaction(async (tx) => {
      const { attempts } = await tx.mailMessage.findUniqueOrThrow({ where: { id: COUNTED.id } })
      await tx.mailMessage.update({ where: { id: COUNTED.id }, data: { attempts: attempts + 1 } })
    })
    done++
  } catch (error) {
    // On a crowded machine one may lose every turn; it is told that nothing was stored, and asks again.
    if (error instanceof WriteConflictError) return increment()
    failures.push(String(error))
  }
}

for (let round = 0; round < Number(times) / AT_A_TIME; round++) {
  await Promise.all(Array.from({ length: AT_A_TIME }, increment))
}
await database.close()
process.send?.({ done, failures })
process.disconnect?.()
