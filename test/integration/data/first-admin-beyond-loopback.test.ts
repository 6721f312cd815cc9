import { expect, it } from 'vitest'
import { isLoopbackOnly } from '@/lib/config'
import * as data from '@/lib/data'
import { db } from '@/lib/data/client'
import { expectRefused } from '@/test/factories/outcomes'
import { describeOnBothDatabases } from '@/test/setup/databases'

// Read with the first use of the settings: this file is a server that listens on the network.
process.env.HOST = '0.0.0.0'

describeOnBothDatabases('the first account, where other machines reach the server', () => {
  it('is refused with what to do, and nothing is stored', async () => {
    expect(isLoopbackOnly()).toBe(false)
    const refusal = await expectRefused(
      data.createFirstAdmin({
        workspaceName: 'Quillmoor Instruments',
        companyName: 'Quillmoor Instruments',
        projectName: 'Skua',
        name: 'Imke Dahl',
        email: 'imke@example.org',
        password: 'plover-sandpiper-42',
      }),
    )
    expect(refusal).toMatchObject({ kind: 'clash', message: expect.stringContaining('127.0.0.1') })
    expect(await db().user.count()).toBe(0)
    expect(await db().workspace.count()).toBe(0)
    expect(await db().trailRecord.count()).toBe(0)
  }, 60_000)
})
