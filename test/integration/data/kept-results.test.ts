import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { packText, unpackText } from '@/lib/data/records/packed-text'
import { db } from '@/lib/data/store/client'
import { readStoredResults } from '@/lib/engine'
import { expectDone } from '@/test/factories/act-results'
import { sign } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

describeOnBothDatabases('recorded results', (current) => {
  it('are the newest ones and those that somebody spoke of, packed; the trail knows what became of the others', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    await sign(team.lead, revisionId)
    const listRows = () => db().evaluation.findMany({ where: { revisionId }, orderBy: { ordinal: 'asc' } })
    const save = async (end: string) => {
      const { design, designVersion } = await data.getRevision(team.lead, revisionId)
      const changed = { ...design, name: `${design.name}${end}` }
      await expectDone(data.saveDesign(team.lead, { revisionId, seenVersion: designVersion, design: changed }))
    }
    const signed = (await listRows()).at(-1)
    for (const end of ['.', ',', ';']) await save(end)
    const rows = await listRows()
    expect(rows.map(({ id }) => id)).toContain(signed?.id)
    expect(rows.filter(({ ordinal }) => ordinal > (signed?.ordinal ?? 0))).toHaveLength(1)
    const newest = rows.at(-1)
    expect(newest?.ordinal).toBe((signed?.ordinal ?? 0) + 3)

    const text = unpackText(newest?.resultsJson ?? '')
    expect(readStoredResults(text)).toEqual((await data.getRevision(team.lead, revisionId)).evaluation)
    expect(newest?.resultsJson.length).toBeLessThan(text.length / 4)
    // The people of the scene were made without acts; of results nothing is missing or unaccounted for.
    const { misfits } = (await data.checkWholeTrail(team.admin)).state
    expect(misfits.filter(({ what }) => what.startsWith('results'))).toEqual([])
  }, 400_000)

  it('from before they were packed are read as they are', () => {
    expect(unpackText('{"items":[]}')).toBe('{"items":[]}')
    expect(unpackText(packText('„0,1 µm“ 😀'))).toBe('„0,1 µm“ 😀')
  })
})
