import { beforeAll, expect, it } from 'vitest'
import * as data from '@/lib/data'
import { ACTS } from '@/lib/inputs'
import { PEOPLE, type PersonName } from '@/test/factories/people'
import { describeOnBothDatabases } from '@/test/setup/databases'
import { ACCESS_TABLE, type AccessRow, type Cell, SEEN_BY, WITHOUT_ACTOR } from './access-table'
import { type AccessScene, makeAccessScene } from './scene'

/** What the call came to. A read that returns is `ok`; a write says so itself. */
async function classify(call: () => Promise<unknown>): Promise<Cell> {
  try {
    const result = await call()
    if (typeof result !== 'object' || result === null || !('ok' in result)) return 'ok'
    const outcome = result as data.ActResult<unknown>
    return outcome.ok ? 'ok' : outcome.refusal.kind
  } catch (error) {
    if (error instanceof data.NotFoundError) return 'not-found'
    if (error instanceof data.NotAllowedError) return 'not-allowed'
    throw error
  }
}

function findExpected(row: AccessRow, person: PersonName): Cell {
  const otherwise = row.otherwise?.[person]
  if (otherwise !== undefined) return otherwise
  if (row.may.includes(person)) return row.reached
  return SEEN_BY[row.seenBy].includes(person) ? 'not-allowed' : 'not-found'
}

describeOnBothDatabases('who may do what', (current) => {
  let scene: AccessScene

  beforeAll(async () => {
    scene = await makeAccessScene(current())
  }, 240_000)

  it.each(ACCESS_TABLE.map((row) => [row.of === undefined ? row.name : `${row.name}, ${row.of}`, row] as const))(
    '%s',
    async (_title, row) => {
      const found: Partial<Record<PersonName, Cell>> = {}
      for (const person of PEOPLE) found[person] = await classify(() => row.run(scene.team[person], scene))
      const expected = Object.fromEntries(PEOPLE.map((person) => [person, findExpected(row, person)]))
      expect(found).toEqual(expected)
    },
  )

  it('has a row for every function that takes an actor', () => {
    const functions = Object.entries(data).filter(
      ([name, value]) => typeof value === 'function' && !name.endsWith('Error'),
    )
    const covered = new Set<string>([...ACCESS_TABLE.map(({ name }) => name), ...WITHOUT_ACTOR])
    expect(functions.map(([name]) => name).filter((name) => !covered.has(name))).toEqual([])
  })

  it('has a row for every act', () => {
    const covered = new Set<string>(ACCESS_TABLE.map(({ name }) => name))
    expect(Object.keys(ACTS).filter((name) => !covered.has(name))).toEqual([])
  })

  it('refuses a disabled account whatever its session says', async () => {
    const { admin, observer } = scene.team
    await data.setAccountState(admin, { userId: observer.userId, isDisabled: true })
    expect(await classify(() => data.getRevision(observer, scene.reviewId))).toBe('not-allowed')
    await data.setAccountState(admin, { userId: observer.userId, isDisabled: false })
    expect(await classify(() => data.getRevision(observer, scene.reviewId))).toBe('ok')
  })
})
