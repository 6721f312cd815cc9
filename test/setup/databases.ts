import { afterAll, afterEach, beforeAll, beforeEach, describe, inject, it } from 'vitest'
import type { DatabaseKind } from '@/lib/config'
import { type Database, openDatabase, replaceDatabase } from '@/lib/data/store/client'
import type { Stage } from '../factories/reviews'
import { type CreatedDatabase, createTestDatabase } from './created-databases'
import { findPreparedReview, type PreparedReview } from './prepared-reviews'

/** A migrated, empty database of a test's own. */
export interface TestDatabase {
  readonly kind: DatabaseKind
  readonly url: string
  readonly database: Database
  /**
   * From here on the functions of lib/data work on a copy of a database with one team and one review at this stage, and `current()` gives
   * that; the database until now is gone. What a test asks of the acts that lead there, it does itself (`makeRevisionAt`).
   */
  readonly startFrom: (stage: Stage) => Promise<PreparedReview>
}

/**
 * Run the same tests on SQLite and on PostgreSQL. Each time the functions of lib/data work on a fresh, migrated, empty
 * database: one for all tests of the block, or one for each. PostgreSQL waits for its disk only where `isDurable` says so.
 *
 * @param body  defines the tests; `current()` gives the database, inside tests and hooks only
 * @example
 * describeOnBothDatabases('answers', (current) => {
 *   it('records who answered', async () => { … })
 * })
 */
export function describeOnBothDatabases(
  title: string,
  body: (current: () => TestDatabase, kind: DatabaseKind) => void,
  { fresh = 'block', isDurable = false }: { fresh?: 'block' | 'test'; isDurable?: boolean } = {},
): void {
  const { postgres } = inject('baseDatabases')
  describe(`${title} (SQLite)`, () => defineOn('sqlite', body, { fresh, isDurable }))
  if (!postgres.isUp && postgres.isRequired) {
    it(`${title} (PostgreSQL)`, () => {
      throw new Error(`PostgreSQL is required here and does not answer: ${postgres.reason}`)
    })
    return
  }
  describe.skipIf(!postgres.isUp)(`${title} (PostgreSQL)`, () => defineOn('postgresql', body, { fresh, isDurable }))
}

function defineOn(
  kind: DatabaseKind,
  body: (current: () => TestDatabase, kind: DatabaseKind) => void,
  { fresh, isDurable }: { fresh: 'block' | 'test'; isDurable: boolean },
): void {
  let created: CreatedDatabase | undefined
  let current: TestDatabase | undefined
  const use = (next: CreatedDatabase): void => {
    created = next
    current = { kind, url: next.url, database: openDatabase(next.url), startFrom }
    replaceDatabase(current.database)
  }
  const open = async (): Promise<void> => use(await createTestDatabase(kind, { isDurable }))
  const close = async (): Promise<void> => {
    replaceDatabase(null)
    await current?.database.close()
    await created?.remove()
    current = undefined
    created = undefined
  }
  const startFrom = async (stage: Stage): Promise<PreparedReview> => {
    await close()
    const origin = await findPreparedReview(kind, stage)
    use(await createTestDatabase(kind, { isDurable, origin: origin.database }))
    return origin.open()
  }
  if (fresh === 'block') {
    beforeAll(open)
    afterAll(close)
  } else {
    beforeEach(open)
    afterEach(close)
  }
  body(() => {
    if (current === undefined) throw new Error('the database is there in tests and hooks only')
    return current
  }, kind)
}
