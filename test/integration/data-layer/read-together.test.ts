import { expect, it } from 'vitest'
import { loadRevisionRows, REVISION_RECORD } from '@/lib/data/records/revision-rows'
import { db, inReadTransaction } from '@/lib/data/store/client'
import type { Team } from '@/test/factories/people'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** What a text, a number and a moment may hold that a way out of the database could spoil. */
const TEXT = 'Folie „L2“, 0,1 µm\n\t\\ \'one\' "two" 😀'
const WHEN = new Date('2026-03-29T01:59:59.007Z')
const NUMBER = 0.1 + 0.2

/** Rows of the tables that a released revision leaves empty. */
async function fill(team: Team, revisionId: string): Promise<void> {
  const [userId, companyId] = [team.lead.userId, team.companies.brackenfold]
  const file = { revisionId, sha256: 'a'.repeat(64), originalName: TEXT, sizeBytes: 7, mediaType: 'text/plain' }
  const thread = await db().thread.create({
    data: {
      revisionId,
      audienceCompanyId: companyId,
      openedByCompanyId: companyId,
      openedById: userId,
      ...{ anchorKind: 'revision', anchorId: revisionId, anchorLabel: TEXT, anchorXMm: NUMBER, anchorYMm: -1e-7 },
      ...{ kind: 'comment', title: TEXT, state: 'open', answeredAt: WHEN },
    },
  })
  for (const ordinal of [2, 1]) {
    const comment = await db().comment.create({
      data: { threadId: thread.id, ordinal, authorId: userId, companyId, text: TEXT, isAnswer: ordinal === 2 },
    })
    for (const version of [2, 1]) {
      await db().commentEdit.create({ data: { commentId: comment.id, version, text: '', at: WHEN } })
    }
    await db().attachment.create({ data: { ...file, commentId: comment.id, uploadedById: userId, removedAt: WHEN } })
  }
  await db().attachment.create({ data: { ...file, uploadedById: userId } })
  await db().artwork.create({ data: { ...file, uploadedById: userId } })
  const role = { revisionId, fileName: TEXT, sha256: file.sha256, role: 'conductor', setById: userId }
  await db().artworkRole.create({ data: { ...role, layerNumber: 2 } })
  await db().artworkRole.create({ data: { ...role, withdrawnAt: WHEN } })
  const declaration = await db().declaration.findFirstOrThrow({ where: { revisionId } })
  await db().declarationCondition.create({ data: { declarationId: declaration.id, ordinal: 1, text: TEXT } })
  await db().differenceAcknowledgement.create({
    data: {
      ...{ revisionId, differenceKey: 'k', fact: 'f', said: TEXT, against: '', reason: TEXT },
      ...{ acknowledgedById: userId, acknowledgedAt: WHEN },
    },
  })
  await db().releaseExclusion.create({
    data: { revisionId, companyId, reason: TEXT, takenOffById: userId, takenOffAt: WHEN },
  })
  await db().proposal.create({
    data: {
      ...{ revisionId, title: TEXT, patchJson: '[]', baseVersion: 1, baseHash: 'h', state: 'open' },
      ...{ threadId: thread.id, proposedById: userId, proposedByCompanyId: companyId, proposedAt: WHEN },
    },
  })
  await db().reviewAction.create({
    data: {
      ...{ revisionId, number: 1, originKind: 'revision', originId: '', originLabel: '', text: TEXT },
      ...{ ownerId: userId, ownerCompanyId: companyId, due: 'on', dueOn: '2026-12-24', isAfterRelease: true },
      ...{ state: 'open', takenOnById: userId, takenOnAt: WHEN },
    },
  })
  await db().waiver.create({
    data: {
      ...{ revisionId, itemId: 'finish', reason: TEXT, state: 'approved', basisHash: 'b' },
      ...{ proposedById: userId, decidedById: userId, decidedAt: WHEN },
    },
  })
  await db().capacityGrant.updateMany({ data: { withdrawnAt: null } })
}

describeOnBothDatabases('rows of many tables by one statement', (current) => {
  it('are those that the client gives, value by value and in the same order', async () => {
    const { team, revisionId } = await current().startFrom('released')
    await fill(team, revisionId)
    const ids = [revisionId, 'there is none']
    const together = await inReadTransaction((tx) => loadRevisionRows(tx, ids))
    const where = { id: { in: ids } }
    const apart = await db().revision.findMany({ where, include: REVISION_RECORD })
    expect(together.rows).toEqual(apart)
    const newest = await db().evaluation.findFirst({ where: { revisionId }, orderBy: { ordinal: 'desc' } })
    expect(together.evaluations).toEqual([newest])

    // Nothing is compared with nothing.
    const [row] = together.rows
    const empty = Object.entries(row ?? {}).filter(
      ([, value]) => value === null || (Array.isArray(value) && value.length === 0),
    )
    expect(empty.map(([name]) => name)).toEqual(['basedOnId', 'supersededById'])
    expect(row?.threads[0]?.comments.map(({ edits, attachments }) => [edits.length, attachments.length])).toEqual([
      [2, 1],
      [2, 1],
    ])
    expect(row?.project.memberships.length).toBeGreaterThan(1)
    expect(row?.project.revisions[0]?.issue?.partNumber).not.toBe('')
  }, 400_000)

  it('are none for nobody, and are refused to a client that was not opened here', async () => {
    expect(await inReadTransaction((tx) => loadRevisionRows(tx, []))).toEqual({ rows: [], evaluations: [] })
    const stranger = { $queryRawUnsafe: () => Promise.resolve([]) } as unknown as Parameters<typeof loadRevisionRows>[0]
    await expect(loadRevisionRows(stranger, ['x'])).rejects.toThrow('no database was opened with')
  })
})
