import { expect, it } from 'vitest'
import type { DatabaseKind } from '@/lib/config'
import * as data from '@/lib/data'
import { takeAllAsFound } from '@/lib/data/acts/workspace/adopt-state'
import { appendToTrail } from '@/lib/data/consequences/trail'
import { inWriteTransaction } from '@/lib/data/consequences/write'
import { db, getDatabase, type TransactionClient } from '@/lib/data/store/client'
import { VOUCHED_MODELS, type VouchedModel } from '@/lib/data/store/vouched/models'
import { expectDone } from '@/test/factories/act-results'
import { makeOwnMaterial } from '@/test/factories/own-materials'
import { makeTeam, PASSWORD, type Team } from '@/test/factories/people'
import { makeReleasedRevision, makeRevision, makeRevisionAt, sign } from '@/test/factories/reviews'
import { describeOnBothDatabases, type TestDatabase } from '@/test/setup/databases'
import { runTrailCheck } from './commands'

type Row = Record<string, unknown>

/** Tables without a row so far, which a test of every column needs. */
async function fillTheRest(team: Team, revisionId: string): Promise<void> {
  const { lead, fabricator } = team
  const at = new Date('2026-11-03T10:00:00.000Z')
  const { threadId } = await expectDone(
    data.openThread(fabricator, {
      revisionId,
      kind: 'engineering-query',
      title: 'Coverlay opening',
      text: 'Which opening is meant?',
      anchor: { kind: 'revision', id: revisionId },
    }),
  )
  const [comment] =
    (await data.getRevision(fabricator, revisionId)).threads.find(({ id }) => id === threadId)?.comments ?? []
  if (comment === undefined) throw new Error('a thread begins with a comment')
  await expectDone(
    data.editComment(fabricator, { commentId: comment.id, seenVersion: comment.version, text: 'Which of the two?' }),
  )
  await decideCondition(team, revisionId)
  await expectDone(
    data.saveOwnMaterial(lead, { entryId: null, seenVersion: 0, material: makeOwnMaterial(), reason: 'measured' }),
  )
  const setById = lead.userId
  await inWriteTransaction(async (tx) => {
    await tx.invitation.create({
      data: {
        tokenHash: 'a'.repeat(64),
        email: 'somebody@example.org',
        role: 'observer',
        projectId: team.projectId,
        companyId: team.companies.team,
        createdById: setById,
        createdAt: at,
        expiresAt: at,
      },
    })
    await tx.limit.create({
      data: { ownerKey: 'workspace', key: 'bend-strain', value: 0.25, note: '', setById, setAt: at },
    })
    await tx.fabricationSheet.create({
      data: {
        companyId: team.companies.brackenfold,
        kind: 'shelf',
        version: 1,
        contentJson: '{}',
        issuedOn: '2026-11-03',
        note: '',
        setById,
        setAt: at,
      },
    })
    await tx.passkey.create({
      data: {
        id: 'credential',
        userId: setById,
        name: 'Key',
        publicKey: 'k',
        counter: 0,
        transportsJson: '[]',
        createdAt: at,
      },
    })
    await tx.identity.create({
      data: {
        userId: setById,
        issuer: 'https://id.example',
        subject: 's',
        email: 'e',
        linkedById: setById,
        createdAt: at,
      },
    })
    await tx.differenceAcknowledgement.create({
      data: {
        revisionId,
        differenceKey: 'd',
        fact: 'Class',
        said: 'class 3',
        against: 'class 2',
        reason: 'agreed',
        acknowledgedById: setById,
        acknowledgedAt: at,
      },
    })
    const meeting = await tx.meeting.create({
      data: {
        revisionId,
        number: 1,
        title: 'Review',
        heldOn: '2026-11-03',
        agenda: 'Hinge',
        recordedById: setById,
        recordedAt: at,
      },
    })
    await tx.meetingPerson.create({
      data: { meetingId: meeting.id, userId: setById, userName: 'Lead', attendance: 'present' },
    })
    await tx.meetingDecision.create({
      data: { meetingId: meeting.id, ordinal: 1, text: 'Go on', pointsKind: 'none', pointsId: '', pointsLabel: '' },
    })
    await tx.need.create({
      data: {
        revisionId,
        number: 1,
        text: 'Bears ten turns.',
        itemIdsJson: '[]',
        method: 'test',
        statedById: setById,
        statedAt: at,
      },
    })
    await tx.verdictFlip.create({
      data: {
        companyId: team.companies.brackenfold,
        projectId: team.projectId,
        revisionId,
        designVersion: 1,
        userId: setById,
        flips: 1,
        at,
      },
    })
    await tx.catalogueTemplate.create({
      data: { version: 1, contentJson: '{}', summary: 's', reason: 'r', changedById: setById, changedAt: at },
    })
    await tx.waiver.create({
      data: {
        revisionId,
        itemId: 'bend-strain',
        state: 'proposed',
        reason: 'tested',
        basisHash: 'b',
        proposedById: setById,
      },
    })
    await tx.attachment.create({
      data: {
        revisionId,
        itemId: 'bend-strain',
        sha256: 'c'.repeat(64),
        originalName: 'photo.txt',
        sizeBytes: 12,
        mediaType: 'text/plain',
        uploadedById: setById,
      },
    })
    await tx.artwork.create({
      data: {
        revisionId,
        sha256: 'd'.repeat(64),
        originalName: 'top.gbr',
        sizeBytes: 12,
        mediaType: 'text/plain',
        uploadedById: setById,
      },
    })
    await tx.artworkReading.create({ data: { key: 'f'.repeat(64), part: 'facts', contentJson: '{}', createdAt: at } })
    await tx.artworkRole.create({
      data: {
        revisionId,
        fileName: 'top.gbr',
        sha256: 'd'.repeat(64),
        role: 'copper',
        side: 'top',
        layerNumber: 1,
        setById,
        setAt: at,
      },
    })
    await tx.proposal.create({
      data: {
        revisionId,
        title: 'Wider bend',
        patchJson: '[]',
        baseVersion: 1,
        baseHash: 'e',
        state: 'proposed',
        threadId,
        proposedById: setById,
        proposedByCompanyId: team.companies.team,
        proposedAt: at,
      },
    })
    await appendToTrail(tx, at, lead, { action: 'state-recorded', subject: { kind: 'trail', id: 'state' } })
  })
}

/** A condition that became an action, and a fabricator that was taken off the release: rows that their own acts write. */
async function decideCondition({ lead, member, fabricator, companies }: Team, revisionId: string): Promise<void> {
  const conditions = [{ text: 'Tell us when the clad is ordered.', field: '', value: '' }]
  const { version } = await data.getRevision(fabricator, revisionId)
  const declared = { revisionId, seenVersion: version, verdict: 'with-conditions' as const, note: '', conditions }
  await expectDone(data.declareBuildable(fabricator, { ...declared, password: PASSWORD }))
  const view = await data.getRevision(lead, revisionId)
  const [condition] = view.declarations.flatMap((declaration) => declaration.conditions)
  if (condition === undefined) throw new Error('the declaration has no condition')
  await expectDone(
    data.decideCondition(lead, {
      conditionId: condition.id,
      seenVersion: condition.version,
      decision: 'action',
      reason: '',
      action: { text: 'Send the date of the order.', ownerId: member.userId, due: 'before-series', dueOn: '' },
    }),
  )
  const { version: seenVersion } = await data.getRevision(lead, revisionId)
  const reason = 'It makes no prototypes this year.'
  await expectDone(data.takeOffRelease(lead, { revisionId, companyId: companies.ostrel, seenVersion, reason }))
}

/** What somebody does who has the database to themselves: the checks of references first. */
async function liftReferences(kind: DatabaseKind): Promise<void> {
  if (kind === 'sqlite') {
    await db().$executeRawUnsafe('PRAGMA foreign_keys = OFF')
    const triggers = await db().$queryRawUnsafe<{ name: string }[]>(
      `SELECT "name" FROM sqlite_master WHERE "type" = 'trigger' AND "name" NOT LIKE 'Trail%'`,
    )
    for (const { name } of triggers) await db().$executeRawUnsafe(`DROP TRIGGER "${name}"`)
  } else {
    for (const { model } of VOUCHED_MODELS) await db().$executeRawUnsafe(`ALTER TABLE "${model}" DISABLE TRIGGER ALL`)
  }
}

const delegate = (model: string) =>
  (db() as unknown as Record<string, { findFirst: (args?: object) => Promise<Row | null> } | undefined>)[
    `${model.charAt(0).toLowerCase()}${model.slice(1)}`
  ]

function literal(value: unknown, kind: DatabaseKind): string {
  if (value === null) return 'NULL'
  if (value instanceof Date) return `'${value.toISOString().replace('Z', kind === 'sqlite' ? '+00:00' : '')}'`
  if (typeof value === 'boolean') return kind === 'sqlite' ? String(Number(value)) : String(value)
  return typeof value === 'number' ? String(value) : `'${String(value).replaceAll("'", "''")}'`
}

/** Another value of the column's own type; `null` gets one where the column takes text, a count, a length or a day. */
function otherValue(column: string, value: unknown): unknown {
  if (value instanceof Date) return new Date(value.getTime() + 1000)
  if (typeof value === 'boolean') return !value
  if (typeof value === 'number') return value + 100_000
  if (typeof value === 'string') return `${value}x`
  if (/At$/.test(column)) return new Date('2026-11-20T08:00:00.000Z')
  if (column === 'needsCustomerConsent') return true
  return /Mm$|^madeVersion$|^quantityLimit$/.test(column) ? 7 : 'x'
}

/** As the command does it: an account that was tampered with may no longer ask. */
const check = async () => (await data.readWholeTrail()).state

/** The first row of each table that the trail vouches for. */
/** A row as the database names its columns: the client may call one by another name. */
function nameByColumn(row: Row, { renamed = {} }: VouchedModel): Row {
  const columnOf = new Map(Object.entries(renamed).map(([column, field]) => [field, column]))
  return Object.fromEntries(Object.entries(row).map(([field, value]) => [columnOf.get(field) ?? field, value]))
}

async function pickRows(): Promise<{ vouched: VouchedModel; row: Row; where: string; key: string }[]> {
  return Promise.all(
    VOUCHED_MODELS.map(async (vouched) => {
      const found = await delegate(vouched.model)?.findFirst({ orderBy: { [vouched.key]: 'asc' } })
      if (found === null || found === undefined) throw new Error(`${vouched.model} has no row to tamper with`)
      const row = nameByColumn(found, vouched)
      return { vouched, row, where: vouched.key, key: String(row[vouched.key]) }
    }),
  )
}

/**
 * Changes one column at a time of one row, each column of each table once. A check reads the whole database, so that each looks at one
 * column of every table.
 */
async function tamperWithEveryColumn(kind: DatabaseKind): Promise<number> {
  const targets = (await pickRows()).map((picked) => ({
    ...picked,
    columns: picked.vouched.columns.filter((name) => name !== picked.vouched.key),
  }))
  const roundCount = Math.max(...targets.map(({ columns }) => columns.length))
  let count = 0
  for (let round = 0; round < roundCount; round += 1) {
    const changes = targets.flatMap(({ vouched, row, where, key, columns }) => {
      const column = columns[round]
      if (column === undefined) return []
      const set = (value: unknown) =>
        db().$executeRawUnsafe(
          `UPDATE "${vouched.model}" SET "${column}" = ${literal(value, kind)} WHERE "${where}" = ${literal(row[where], kind)}`,
        )
      return [{ vouched, key, name: `${vouched.model}.${column}`, value: row[column], column, set }]
    })
    for (const { name, column, value, set } of changes) expect(await set(otherValue(column, value)), name).toBe(1)
    const { misfits } = await check()
    expect(misfits, changes.map(({ name }) => name).join()).toHaveLength(changes.length)
    for (const { vouched, key, name } of changes) {
      const named = misfits.filter(({ what }) => what.startsWith(`${vouched.kind} `) && what.includes(`(${key})`))
      expect(named, name).toHaveLength(1)
      expect(named[0]?.reason, name).toContain('was changed after record')
    }
    for (const { value, set } of changes) await set(value)
    count += changes.length
  }
  return count
}

async function removeAndRestore(kind: DatabaseKind): Promise<void> {
  const targets = await pickRows()
  for (const { vouched, row, where } of targets) {
    await db().$executeRawUnsafe(`DELETE FROM "${vouched.model}" WHERE "${where}" = ${literal(row[where], kind)}`)
  }
  const { misfits } = await check()
  for (const { vouched, key } of targets) {
    const gone = misfits.find(({ what }) => what === `${vouched.kind} ${key}`)
    expect(gone?.reason, `${vouched.kind} ${key}`).toContain('is missing')
  }
  for (const { vouched, row } of targets) {
    const columns = Object.keys(row)
    await db().$executeRawUnsafe(
      `INSERT INTO "${vouched.model}" (${columns.map((name) => `"${name}"`).join(', ')}) VALUES (${columns.map((name) => literal(row[name], kind)).join(', ')})`,
    )
  }
  expect((await check()).misfits).toEqual([])
}

/** A row of one's own beside the others: the key is new, and whatever must be unique with it. */
async function expectForgedSignatureFound({ kind }: TestDatabase): Promise<void> {
  const id = '00000000-0000-4000-8000-000000000000'
  await db().$executeRawUnsafe(
    `INSERT INTO "Signature" ("id", "revisionId", "signerId", "signerName", "capacity", "statement", "contentHash", "contentJson", "signedAt")
     SELECT '${id}', "revisionId", "signerId", "signerName", "capacity", "statement", "contentHash", "contentJson", "signedAt" FROM "Signature" ${kind === 'sqlite' ? 'LIMIT 1' : 'FETCH FIRST 1 ROW ONLY'}`,
  )
  const { misfits } = await check()
  expect(misfits).toHaveLength(1)
  expect(misfits[0]).toMatchObject({
    what: expect.stringContaining(id),
    reason: expect.stringContaining('no record accounts for'),
  })
  await db().$executeRawUnsafe(`DELETE FROM "Signature" WHERE "id" = '${id}'`)
}

describeOnBothDatabases(
  'a database that somebody tampers with',
  (current, kind) => {
    it('is caught and the row named, whichever column of whichever table was changed, removed or put there', async () => {
      const team = await makeTeam()
      // Accounts and companies of the tests are made outside the application: taken as found, as an older database is.
      await inWriteTransaction(takeAllAsFound)
      const released = await makeReleasedRevision(team)
      await data.getPackageFile(team.lead, released)
      const revisionId = await makeRevisionAt(team, 'fabricator-review')
      await fillTheRest(team, revisionId)
      const before = await check()
      expect(before.misfits).toEqual([])
      expect(before.fitCount).toBeGreaterThan(100)
      expect(before.olderCount).toBeGreaterThan(10)
      expect(await db().package.count({ where: { revisionId: released } })).toBeGreaterThan(0)

      await liftReferences(kind)
      expect(await tamperWithEveryColumn(kind)).toBeGreaterThan(180)
      expect((await check()).misfits).toEqual([])
      await removeAndRestore(kind)
      await expectForgedSignatureFound(current())
      expect(await check()).toEqual(before)
    }, 600_000)

    it('is caught by the command: a waiver approved, an answer set, signed content changed, a signature deleted', async () => {
      const team = await makeTeam()
      await inWriteTransaction(takeAllAsFound)
      const revisionId = await makeRevisionAt(team, 'awaiting-signature')
      const signatureId = await sign(team.lead, revisionId)
      const whole = await runTrailCheck(current())
      expect(whole.output).toMatch(/in the database: \d+ rows match their records/)
      expect(whole.output).toMatch(/\d+ rows were recorded before hashes were kept/)
      expect(whole.status).toBe(0)

      await db().$executeRawUnsafe(`UPDATE "Signature" SET "contentJson" = '{}' WHERE "id" = '${signatureId}'`)
      const changed = await runTrailCheck(current())
      expect(changed.status).toBe(1)
      expect(changed.output).toMatch(
        new RegExp(`signature of Imke Dahl, revision .* \\(${signatureId}\\) was changed after record`),
      )

      await db().$executeRawUnsafe(`DELETE FROM "Signature" WHERE "id" = '${signatureId}'`)
      const deleted = await runTrailCheck(current())
      expect(deleted.status).toBe(1)
      expect(deleted.output).toContain(`signature ${signatureId} is missing, although record`)

      const { answers } = await db().revision.findUniqueOrThrow({
        where: { id: revisionId },
        include: { answers: true },
      })
      await db().$executeRawUnsafe(`UPDATE "Answer" SET "state" = 'concern' WHERE "id" = '${answers[0]?.id}'`)
      expect((await runTrailCheck(current())).output).toContain(`answer to ${answers[0]?.itemId}, revision`)
    }, 600_000)

    it('is caught when the whole trail was emptied beside revisions', async () => {
      const team = await makeTeam()
      await makeRevision(team)
      const tables = ['TrailRecord', 'TrailCheckpoint']
      for (const table of tables) {
        const lift =
          kind === 'sqlite'
            ? ['update', 'delete', 'replace'].map((verb) => `DROP TRIGGER "${table}_refuse_${verb}"`)
            : [`ALTER TABLE "${table}" DISABLE TRIGGER ALL`]
        for (const statement of [...lift, `DELETE FROM "${table}"`]) await db().$executeRawUnsafe(statement)
      }
      expect((await check()).misfits).toEqual([
        { what: 'the trail', reason: expect.stringMatching(/^is empty, but the database holds \d+ rows/) },
      ])
      const checked = await runTrailCheck(current())
      expect(checked.status).toBe(1)
      expect(checked.output).toContain('the trail is empty')

      // Somebody goes on working: a record without rows, as a sign-in makes, does not turn it into an older trail.
      await inWriteTransaction((tx) =>
        appendToTrail(tx, new Date(), team.lead, {
          action: 'signed-in',
          subject: { kind: 'session', id: 'x' },
          details: { method: 'password', device: '' },
        }),
      )
      expect(await data.adoptOlderState()).toBe(false)
      expect((await check()).misfits.map(({ what, reason }) => `${what} ${reason}`)).toEqual(
        expect.arrayContaining([expect.stringContaining('the trail begins with record 1 (signed-in')]),
      )
    }, 600_000)

    it('from before hashes were kept is counted and never called fit; then taken as found, once', async () => {
      const team = await makeTeam()
      const { client } = getDatabase()
      // A record as an older version wrote it: without hashes.
      await inWriteTransaction((tx) =>
        appendToTrail(tx, new Date('2026-11-01T08:00:00.000Z'), team.lead, {
          action: 'workspace-created',
          subject: { kind: 'workspace', id: 'workspace' },
          details: { name: 'Quillmoor Instruments' },
        }),
      )
      const older = await check()
      expect(older).toMatchObject({ fitCount: 0, misfits: [] })
      expect(older.olderCount).toBeGreaterThan(10)
      expect(await data.adoptOlderState()).toBe(true)
      expect(await data.adoptOlderState()).toBe(false)
      expect(await check()).toEqual(older)

      // From here on a change of it shows, and so does a row that no record tells of.
      await client.$executeRawUnsafe(
        `UPDATE "User" SET "isAdmin" = ${kind === 'sqlite' ? '1' : 'true'} WHERE "id" = '${team.lead.userId}'`,
      )
      await client.company.create({ data: { kind: 'fabricator', name: 'Forged', nameKey: 'forged' } })
      const { misfits } = await check()
      expect(misfits.map(({ what, reason }) => `${what} ${reason}`)).toEqual([
        expect.stringMatching(/^company "Forged" .* is in the database, but no record accounts for it$/),
        expect.stringMatching(/^account "Imke Dahl" .* was changed after record 2 \(state-adopted/),
      ])
    })

    it('is not written past the trail: a transaction of another kind is refused, a relation too', async () => {
      await makeTeam()
      const write = (tx: TransactionClient) =>
        tx.company.create({ data: { kind: 'team', name: 'Past', nameKey: 'past' } })
      await expect(getDatabase().inTransaction(write)).rejects.toThrow('through inWriteTransaction alone')
      const nested = (tx: TransactionClient) =>
        tx.project.create({
          data: { name: 'N', nameKey: 'n', description: '', createdById: 'x', revisions: { create: [] } },
        })
      await expect(inWriteTransaction(nested)).rejects.toThrow('is written by its own table')
      const many = (tx: TransactionClient) => tx.company.createMany({ data: [] })
      await expect(inWriteTransaction(many)).rejects.toThrow('does not say which rows')
    })
  },
  { fresh: 'test' },
)
