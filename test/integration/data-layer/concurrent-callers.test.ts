import { expect, it } from 'vitest'
import { describeOnBothDatabases } from '../../setup/databases'
import { COUNTED, named } from './plain-rows'

/** A promise that is resolved from outside: it holds a transaction open until a test says so. */
function gate(): { opened: Promise<void>; open: () => void } {
  let open = (): void => {}
  const opened = new Promise<void>((resolve) => {
    open = resolve
  })
  return { opened, open }
}

describeOnBothDatabases(
  'callers at the same time',
  (current, kind) => {
    // Aborted and repeated transactions make PostgreSQL take several times as long over the same row.
    const rounds = kind === 'sqlite' ? 20 : 5

    it('keeps a row that was inserted while another transaction was open and was rolled back', async () => {
      const { client, inTransaction } = current().database
      const begun = gate()
      const mayEnd = gate()
      const failing = inTransaction(async (tx) => {
        await tx.resetRequest.create({ data: named('Inside') })
        begun.open()
        await mayEnd.opened
        throw new Error('rolled back on purpose')
      })
      await begun.opened
      const outside = client.resetRequest.create({ data: named('Outside') })
      // Time for the insert to slip into the open transaction, if anything let it.
      await Promise.race([outside, new Promise((resolve) => setTimeout(resolve, 100))])
      mayEnd.open()
      await expect(failing).rejects.toThrow('rolled back on purpose')
      const acknowledged = await outside
      expect(await client.resetRequest.findMany()).toEqual([acknowledged])
    })

    it('never reads a row that another transaction has not committed', async () => {
      const { client, inTransaction } = current().database
      const begun = gate()
      const mayEnd = gate()
      const failing = inTransaction(async (tx) => {
        await tx.resetRequest.create({ data: named('Uncommitted') })
        begun.open()
        await mayEnd.opened
        throw new Error('rolled back on purpose')
      })
      await begun.opened
      const reading = client.resetRequest.count()
      await Promise.race([reading, new Promise((resolve) => setTimeout(resolve, 100))])
      mayEnd.open()
      await expect(failing).rejects.toThrow('rolled back on purpose')
      expect(await reading).toBe(0)
    })

    it(`loses none of ${rounds * 20} increments by read and write, 20 at a time`, async () => {
      const { client, inTransaction } = current().database
      await client.mailMessage.create({ data: COUNTED })
      const increment = () =>
        inTransaction(async (tx) => {
          const { attempts } = await tx.mailMessage.findUniqueOrThrow({ where: { id: COUNTED.id } })
          await tx.mailMessage.update({ where: { id: COUNTED.id }, data: { attempts: attempts + 1 } })
        })
      for (let round = 0; round < rounds; round++) await Promise.all(Array.from({ length: 20 }, increment))
      const { attempts } = await client.mailMessage.findUniqueOrThrow({ where: { id: COUNTED.id } })
      expect(attempts).toBe(rounds * 20)
    }, 400_000)

    it('goes on after a transaction that took too long, and after one that waited too long', async () => {
      const { client } = current().database
      const mayEnd = gate()
      const begun = gate()
      const tooLong = client.$transaction(
        async (tx) => {
          await tx.resetRequest.create({ data: named('Too long') })
          begun.open()
          await mayEnd.opened
          await tx.resetRequest.count()
        },
        { timeout: 300 },
      )
      const refusal = expect(tooLong).rejects.toMatchObject({ code: 'P2028' })
      await begun.opened
      if (kind === 'sqlite') {
        // Only there do transactions wait for each other to begin.
        const waiting = client.$transaction(async (tx) => tx.resetRequest.count(), { maxWait: 50 })
        await expect(waiting).rejects.toMatchObject({ code: 'P2028' })
      }
      await new Promise((resolve) => setTimeout(resolve, 400))
      mayEnd.open()
      await refusal
      expect(await client.resetRequest.count()).toBe(0)
      await client.resetRequest.create({ data: named('Afterwards') })
      expect(await client.resetRequest.count()).toBe(1)
    })
  },
  { fresh: 'test' },
)
