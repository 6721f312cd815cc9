import { existsSync } from 'node:fs'
import path from 'node:path'
import { beforeEach, expect, it } from 'vitest'
import { ensureSetupCode, getSettings, isLoopbackOnly } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { expectDone, expectRefused } from '@/test/factories/act-results'
import { getActorOf } from '@/test/factories/people'
import { visitFrom } from '@/test/factories/visits'
import { describeOnBothDatabases } from '@/test/setup/databases'

// Read with the first use of the settings: this file is a server that listens on the network.
process.env.HOST = '0.0.0.0'

const FIRST = {
  workspaceName: 'Quillmoor Instruments',
  companyName: 'Quillmoor Instruments',
  projectName: 'Skua',
  name: 'Imke Dahl',
  email: 'imke@example.org',
  password: 'plover-sandpiper-42',
}
const HERE = visitFrom('the office')

describeOnBothDatabases(
  'the first account, where other machines reach the server',
  () => {
    let setupCode = ''
    beforeEach(() => {
      setupCode = ensureSetupCode(getSettings().dataFolder)
    })

    it('is refused without the code that the server printed, and nothing is stored', async () => {
      expect(isLoopbackOnly()).toBe(false)
      for (const typed of ['ABCD-EFGH-2345', setupCode.slice(0, -1), `${setupCode}2`]) {
        const refusal = await expectRefused(data.createFirstAdmin({ ...FIRST, setupCode: typed }, HERE))
        expect(refusal).toMatchObject({ kind: 'invalid', issues: [{ path: ['setupCode'] }] })
      }
      expect(await db().user.count()).toBe(0)
      expect(await db().workspace.count()).toBe(0)
      expect(await db().trailRecord.count()).toBe(0)
    }, 60_000)

    it('cannot be guessed at for long from one place, which keeps nobody else out', async () => {
      const guess = (typed: string, visit: data.Visit) => data.createFirstAdmin({ ...FIRST, setupCode: typed }, visit)
      for (let index = 0; index < 8; index += 1) await expectRefused(guess('ABCD-EFGH-2345', visitFrom('stranger')))
      expect(await expectRefused(guess(setupCode, visitFrom('stranger')))).toMatchObject({ kind: 'too-many' })
      await expectDone(guess(setupCode.toLowerCase().replaceAll('-', ' '), HERE))
    }, 400_000)

    it('is made once by the code, however many ask at the same moment, and is lead of the first project', async () => {
      expect(await data.isWorkspaceEmpty()).toBe(true)
      const outcomes = await Promise.all([
        data.createFirstAdmin({ ...FIRST, setupCode }, HERE),
        data.createFirstAdmin({ ...FIRST, setupCode, email: 'other@example.org' }, HERE),
      ])
      expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1)
      expect(await db().user.count()).toBe(1)
      const { id } = await db().user.findFirstOrThrow()
      const actor = await getActorOf(id)
      expect(actor).toMatchObject({ isAdmin: true, memberships: [{ role: 'lead' }] })
      expect((await data.listProjects(actor)).open.rows.map(({ name }) => name)).toEqual(['Skua'])
      expect(await expectRefused(data.createFirstAdmin({ ...FIRST, setupCode }, HERE))).toMatchObject({ kind: 'clash' })
      expect(existsSync(path.join(getSettings().dataFolder, 'secrets', 'setup-code'))).toBe(false)
    }, 400_000)
  },
  { fresh: 'test' },
)
