import { expect, it } from 'vitest'
import { db, inTransaction } from '@/lib/data/store/client'
import { isWriteConflict } from '@/lib/data/store/database-errors'
import { describeOnBothDatabases } from '../../setup/databases'
import { named } from './plain-rows'

const company = (name: string) => ({ kind: 'team', name, nameKey: name.toLowerCase() })

describeOnBothDatabases(
  'transactions',
  (current, kind) => {
    it('store everything or nothing', async () => {
      const failing = inTransaction(async (tx) => {
        await tx.resetRequest.create({ data: named('One') })
        await tx.resetRequest.create({ data: named('Two') })
        throw new Error('changed my mind')
      })
      await expect(failing).rejects.toThrow('changed my mind')
      expect(await db().resetRequest.count()).toBe(0)
    })

    it('refuse the outer client and a second transaction inside, which would wait for themselves', async () => {
      await expect(inTransaction(async () => db().company.count())).rejects.toThrow('Inside a transaction')
      await expect(inTransaction(async () => inTransaction(async () => 1))).rejects.toThrow('Inside a transaction')
      expect(await inTransaction((tx) => tx.company.count())).toBe(0)
    })

    it('do not take a row that a unique key refuses for a conflict', async () => {
      await db().company.create({ data: company('Brackenfold Circuits') })
      const error = await db()
        .company.create({ data: company('BRACKENFOLD Circuits') })
        .then(
          () => null,
          (reason: unknown) => reason,
        )
      expect(error).toMatchObject({ code: 'P2002', meta: { modelName: 'Company' } })
      expect(isWriteConflict(error)).toBe(false)
    })

    it('enforce foreign keys', async () => {
      const orphan = db().membership.create({
        data: { userId: 'nobody', projectId: 'nothing', companyId: 'nowhere', role: 'member' },
      })
      await expect(orphan).rejects.toMatchObject({ code: 'P2003' })
    })

    it('refuse to change or remove a record of the trail, no matter who asks', async () => {
      const record = {
        sequence: 1,
        at: '2026-03-02T08:00:00.000Z',
        actorName: 'Ada Fenwick',
        action: 'project-created',
        subjectKind: 'project',
        subjectId: 'p1',
        detailsJson: '{}',
        previousHash: '0'.repeat(64),
        hash: '1'.repeat(64),
      }
      await db().trailRecord.create({ data: record })
      const { client } = current().database
      await expect(client.trailRecord.update({ where: { sequence: 1 }, data: { action: 'x' } })).rejects.toThrow()
      await expect(client.trailRecord.delete({ where: { sequence: 1 } })).rejects.toThrow()
      await expect(client.$executeRawUnsafe(`UPDATE "TrailRecord" SET "actorName" = 'Somebody'`)).rejects.toThrow()
      await expect(client.$executeRawUnsafe(`DELETE FROM "TrailRecord"`)).rejects.toThrow()
      if (kind === 'postgresql') await expect(client.$executeRawUnsafe(`TRUNCATE "TrailRecord"`)).rejects.toThrow()
      expect(await client.trailRecord.findMany()).toMatchObject([record])
    })
  },
  { fresh: 'test' },
)
