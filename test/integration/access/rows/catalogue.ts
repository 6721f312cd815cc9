import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { PASSWORD } from '@/test/factories/people'
import { type AccessRow, EVERYBODY, LEADS, PROJECT, READERS, REVIEWERS, TEAM, UNSEEN } from './row'

/** The workspace's edition of the catalogue. */
export const CATALOGUE_ROWS: readonly AccessRow[] = [
  {
    name: 'getCatalogueInForce',
    run: (a) => data.getCatalogueInForce(a),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'getTemplate',
    run: (a) => data.getTemplate(a),
    reached: 'ok',
    may: ['admin', ...REVIEWERS, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'getWorkspaceFlexTests',
    run: (a) => data.getWorkspaceFlexTests(a),
    reached: 'ok',
    may: ['admin', ...REVIEWERS, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'addOwnItem',
    run: (a) => data.addOwnItem(a, { seenVersion: UNSEEN, item: makeOwnItem() }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'saveWorkspaceFlexTests',
    run: (a) => data.saveWorkspaceFlexTests(a, { seenVersion: UNSEEN, rows: [], reason: 'tested' }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'changeOwnItem',
    run: (a) =>
      data.changeOwnItem(a, { seenVersion: UNSEEN, item: { ...makeOwnItem(), id: 'own-none' }, reason: 'wording' }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'removeOwnItem',
    run: (a) => data.removeOwnItem(a, { seenVersion: UNSEEN, itemId: 'own-none', reason: 'settled' }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'changeDeliveredItem',
    run: (a) =>
      data.changeDeliveredItem(a, {
        seenVersion: UNSEEN,
        change: {
          itemId: 'tear-stop',
          isOff: true,
          reason: 'moulded in',
          question: null,
          why: null,
          howToCheck: null,
          answeredBy: null,
        },
      }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'addProfile',
    run: (a) => data.addProfile(a, { seenVersion: UNSEEN, profile: PROFILE, reason: 'flight work' }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'changeProfile',
    run: (a) =>
      data.changeProfile(a, { seenVersion: UNSEEN, profile: { ...PROFILE, id: 'own-none' }, reason: 'flight work' }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'removeProfile',
    run: (a) => data.removeProfile(a, { seenVersion: UNSEEN, profileId: 'own-none', reason: 'settled' }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'getCatalogueFile',
    run: (a) => data.getCatalogueFile(a),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'previewCatalogue',
    run: (a) => data.previewCatalogue(a, { text: '{}' }),
    reached: 'invalid',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'importCatalogue',
    run: (a) => data.importCatalogue(a, { seenVersion: UNSEEN, text: '{}', reason: 'from the other house' }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'getProjectProfiles',
    run: (a, s) => data.getProjectProfiles(a, s.team.projectId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'project',
  },
  {
    name: 'chooseProfiles',
    run: (a, s) =>
      data.chooseProfiles(a, {
        projectId: s.team.projectId,
        seenVersion: UNSEEN,
        profileIds: [],
        reason: 'flight work',
      }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'getTemplateUpdate',
    run: (a, s) => data.getTemplateUpdate(a, s.reviewId),
    reached: 'ok',
    may: READERS,
    seenBy: 'revision',
  },
  {
    name: 'updateTemplate',
    run: (a, s) =>
      data.updateTemplate(a, { revisionId: s.reviewId, seenVersion: UNSEEN, toVersion: 1, toProfileIds: [] }),
    reached: 'stale',
    may: TEAM,
    seenBy: 'revision',
  },
  {
    name: 'withdrawSignature',
    run: async (a, s) => {
      const { id } = await db().signature.findFirstOrThrow({ where: { revisionId: s.releasedId } })
      return data.withdrawSignature(a, { signatureId: id, reason: 'second thoughts', password: PASSWORD })
    },
    // Released by now: its signer is told so.
    reached: 'clash',
    may: ['lead'],
    seenBy: 'revision',
  },
]

function makeOwnItem() {
  return {
    section: 'materials' as const,
    severity: 'minor' as const,
    question: 'Is the lot of the adhesive noted?',
    why: 'Lots differ.',
    howToCheck: 'Read the traveller.',
    evidence: 'Traveller',
    ground: 'Our procedure',
    decidedWhen: 'fabricator' as const,
    answeredBy: ['member' as const],
  }
}

const PROFILE = { name: 'Flight', purpose: 'Flies.', items: [], limits: [], requiredFields: [] }
