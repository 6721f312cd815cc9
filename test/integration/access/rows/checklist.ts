import * as data from '@/lib/data'
import { type AccessScene, freshBytes } from '../scene'
import { type AccessRow, BRACKENFOLD, FABRICATORS, LEADS, READERS, TEAM, UNSEEN } from './row'

/** Checklist. */
export const CHECKLIST_ROWS: readonly AccessRow[] = [
  {
    name: 'answerItem',
    of: "the team's",
    run: (a, s) => data.answerItem(a, makeAnswer(s, s.teamItemId)),
    reached: 'stale',
    may: TEAM,
    seenBy: 'revision',
  },
  {
    name: 'answerItem',
    of: "a fabricator's",
    run: (a, s) => data.answerItem(a, makeAnswer(s, s.fabricatorItemId)),
    reached: 'stale',
    may: FABRICATORS,
    seenBy: 'revision',
  },
  {
    name: 'answerItems',
    run: (a, s) => data.answerItems(a, makeAnswers(s, s.teamItemId)),
    reached: 'stale',
    may: TEAM,
    seenBy: 'revision',
  },
  {
    name: 'proposeWaiver',
    run: (a, s) => data.proposeWaiver(a, { revisionId: s.reviewId, itemId: s.metItemId, reason: 'because' }),
    reached: 'invalid',
    may: TEAM,
    seenBy: 'revision',
  },
  {
    name: 'decideWaiver',
    run: (a, s) => data.decideWaiver(a, { waiverId: s.declinedWaiverId, decision: 'decline', reason: 'no' }),
    reached: 'clash',
    may: [...LEADS, 'quality'],
    seenBy: 'revision',
  },
  {
    name: 'attachFile',
    of: 'to an item',
    // The file is there already.
    run: (a, s) =>
      data.attachFile(a, {
        revisionId: s.reviewId,
        target: { kind: 'item', itemId: s.teamItemId },
        fileName: 'photo.txt',
        bytes: s.attachedBytes,
      }),
    reached: 'invalid',
    may: TEAM,
    seenBy: 'revision',
  },
  {
    name: 'attachFile',
    of: "to a fabricator's comment",
    run: (a, s) =>
      data.attachFile(a, {
        revisionId: s.reviewId,
        target: { kind: 'comment', commentId: s.brackenfoldCommentId },
        fileName: 'note.txt',
        bytes: freshBytes(),
      }),
    reached: 'ok',
    may: ['fabricator'],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'removeAttachment',
    run: async (a, s) => data.removeAttachment(a, { fileId: await s.attachFresh() }),
    reached: 'ok',
    may: TEAM,
    seenBy: 'revision',
  },
  {
    name: 'addArtwork',
    run: (a, s) => data.addArtwork(a, { revisionId: s.draftId, fileName: s.artworkName, bytes: s.artworkBytes }),
    reached: 'invalid',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'removeArtwork',
    run: async (a, s) => data.removeArtwork(a, { fileId: await s.addFreshArtwork() }),
    reached: 'ok',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'getArtworkReading',
    run: (a, s) => data.getArtworkReading(a, s.draftId),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'getArtworkPicture',
    run: async (a, s) => {
      await s.readDraftArtwork()
      return data.getArtworkPicture(a, s.draftId)
    },
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'readArtworkAgain',
    run: async (a, s) => {
      await s.addFreshArtwork()
      return data.readArtworkAgain(a, { revisionId: s.draftId })
    },
    reached: 'ok',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'stopArtworkReading',
    run: (a, s) => data.stopArtworkReading(a, { revisionId: s.draftId }),
    reached: 'ok',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'setArtworkRole',
    run: (a, s) =>
      data.setArtworkRole(a, {
        revisionId: s.draftId,
        fileName: 'no-such-file.gbr',
        sha256: '0'.repeat(64),
        role: 'copper',
        side: 'top',
        layerNumber: 1,
      }),
    reached: 'invalid',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'getAttachmentFile',
    of: "in a fabricator's thread",
    run: (a, s) => data.getAttachmentFile(a, s.brackenfoldAttachmentId),
    reached: 'ok',
    may: [...READERS, ...BRACKENFOLD],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'getArtworkFile',
    run: (a, s) => data.getArtworkFile(a, s.artworkId),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
]

function makeAnswer(scene: AccessScene, itemId: string) {
  return { revisionId: scene.reviewId, itemId, seenVersion: UNSEEN, state: 'meets' as const, reason: 'seen' }
}

function makeAnswers(scene: AccessScene, itemId: string) {
  const { seenVersion, ...answer } = makeAnswer(scene, itemId)
  const { revisionId, state, reason } = answer
  return { revisionId, state, reason, items: [{ itemId, seenVersion }] }
}
