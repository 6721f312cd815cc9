import 'server-only'
import { makeAnswerBasis } from '../records/answer-basis'
import { keepDesignState } from '../records/design-states'
import { type LoadedRevision, loadRevision } from '../records/loaded-revision'
import { fromViewedColumns } from '../records/looked-at'
import type { WriteContext } from './write'

/**
 * Takes the answers of the copied revision over, each with its author, its day, its evidence and what it was given on.
 * Whether one counts in the new revision is then the same question as everywhere: an answer stands while the inputs of
 * its item are those that it was given on, and reopens, saying which changed, when they are not. What somebody saw is not
 * taken over: they looked at sheets of the other revision. Nor are waivers: they are decisions to release that one revision.
 */
export async function carryAnswersOver(context: WriteContext, fromId: string, toId: string): Promise<void> {
  const { tx, at, record } = context
  const source = await loadRevision(tx, fromId)
  const inCatalogue = new Set(source.template.items.map(({ id }) => id))
  const given = source.record.answers.filter(({ state, itemId }) => state !== 'open' && inCatalogue.has(itemId))
  const answers = given.filter((answer) => fromViewedColumns(answer) === null)
  if (given.length === 0) return
  // An answer from before answers kept what they were given on is held to the design as the copied revision has it.
  const ownBasis = makeAnswerBasis(source.record)
  await keepDesignState(tx, { hash: source.record.designHash, designJson: source.record.designJson }, at)
  for (const answer of answers) {
    const { state, reason, companyId } = answer
    const same = { state, reason, version: 1, companyId }
    const { id: answerId } = await tx.answer.create({
      data: {
        revisionId: toId,
        // As it was asked: in the copy too it is to be confirmed.
        itemId: answer.askedItemId,
        ...same,
        answeredById: answer.answeredById,
        answeredAt: answer.answeredAt,
        basisDesignHash: answer.basisDesignHash ?? ownBasis.basisDesignHash,
        basisArtworkHash: answer.basisArtworkHash ?? ownBasis.basisArtworkHash,
        carriedFromId: fromId,
      },
    })
    await tx.answerHistory.create({
      data: { answerId, ...same, userId: answer.answeredById, at: answer.answeredAt },
    })
  }
  await copyEvidence(context, source, new Set(answers.map(({ itemId }) => itemId)), toId)
  await record({
    action: 'answers-carried-over',
    subject: { kind: 'revision', id: toId },
    projectId: source.record.projectId,
    revisionId: toId,
    details: {
      from: source.record.label,
      fromId,
      answerCount: answers.length,
      leftCount: given.length - answers.length,
    },
  })
}

/** The bytes are kept once under their hash; the new revision lists them under the same names. */
async function copyEvidence(
  { tx }: WriteContext,
  source: LoadedRevision,
  itemIds: ReadonlySet<string>,
  toId: string,
): Promise<void> {
  for (const file of source.record.attachments) {
    if (file.itemId === null || !itemIds.has(file.itemId)) continue
    const { itemId, sha256, originalName, sizeBytes, mediaType, uploadedById, companyId, createdAt } = file
    await tx.attachment.create({
      data: {
        revisionId: toId,
        itemId,
        sha256,
        originalName,
        sizeBytes,
        mediaType,
        uploadedById,
        companyId,
        createdAt,
      },
    })
  }
}
