import type { Actor } from '@/lib/data'
import * as data from '@/lib/data'
import { db } from '@/lib/data/client'
import type { PersonName } from '@/test/factories/people'
import { type AccessScene, addThrowawayMember, freshBytes } from './scene'

/** What a call came to: carried out, refused with a reason to act on, or not this person's to do or to know of. */
export type Reached = 'ok' | 'invalid' | 'blocked' | 'stale' | 'clash'
export type Cell = Reached | 'not-allowed' | 'not-found'

type PlaceInView = 'workspace' | 'project' | 'revision' | 'draft' | 'brackenfold-thread' | 'brackenfold' | 'nothing'

export interface AccessRow {
  /** The function of lib/data, and the case where one function has several. */
  readonly name: keyof typeof data
  readonly of?: string
  readonly run: (actor: Actor, scene: AccessScene) => Promise<unknown>
  /** What those who may do it get: each call is made so that it changes nothing that another cell rests on. */
  readonly reached: Reached
  readonly may: readonly PersonName[]
  /** Whoever sees the thing and may not do it is told so; to everybody else it does not exist. */
  readonly seenBy: PlaceInView
}

const LEADS: readonly PersonName[] = ['lead', 'secondLead']
const TEAM: readonly PersonName[] = [...LEADS, 'member']
const READERS: readonly PersonName[] = [...TEAM, 'observer']
const FABRICATORS: readonly PersonName[] = ['fabricator', 'rivalFabricator']
const PROJECT: readonly PersonName[] = [...READERS, ...FABRICATORS]
const EVERYBODY: readonly PersonName[] = [...PROJECT, 'admin', 'outsider']

export const SEEN_BY: Readonly<Record<PlaceInView, readonly PersonName[]>> = {
  workspace: EVERYBODY,
  project: PROJECT,
  revision: PROJECT,
  draft: READERS,
  'brackenfold-thread': [...READERS, 'fabricator'],
  brackenfold: [...TEAM, 'fabricator'],
  nothing: [],
}

/** A version that nobody has seen. */
const UNSEEN = 999_999

export const ACCESS_TABLE: readonly AccessRow[] = [
  // Own account and workspace
  { name: 'getOwnAccount', run: (a) => data.getOwnAccount(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'changePassword',
    run: (a) => data.changePassword(a, { currentPassword: 'not it', newPassword: 'godwit-curlew-dunlin' }),
    reached: 'invalid',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'signOutEverywhere',
    run: (a) => data.signOutEverywhere(a),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  { name: 'listPeople', run: (a) => data.listPeople(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  { name: 'listAccounts', run: (a) => data.listAccounts(a), reached: 'ok', may: ['admin'], seenBy: 'workspace' },
  {
    name: 'setAccountState',
    run: (a) => data.setAccountState(a, { userId: a.userId, isDisabled: true }),
    reached: 'invalid',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'setAdminRight',
    run: (a) => data.setAdminRight(a, { userId: a.userId, isAdmin: false }),
    reached: 'invalid',
    may: ['admin'],
    seenBy: 'workspace',
  },
  { name: 'getSettingsView', run: (a) => data.getSettingsView(a), reached: 'ok', may: ['admin'], seenBy: 'workspace' },
  {
    name: 'changeSettings',
    run: (a) =>
      data.changeSettings(a, {
        seenVersion: UNSEEN,
        workspaceName: 'Other',
        secondPairOfEyes: false,
        waiverNeedsSecondPerson: false,
        artworkRequired: false,
        requiredSignatures: 1,
        signingCapacities: [],
        invitationDays: 1,
      }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  { name: 'exportTrail', run: (a) => data.exportTrail(a), reached: 'ok', may: ['admin'], seenBy: 'workspace' },
  { name: 'checkWholeTrail', run: (a) => data.checkWholeTrail(a), reached: 'ok', may: ['admin'], seenBy: 'workspace' },
  {
    name: 'createBackup',
    // On PostgreSQL it is refused, naming the server's own tool.
    run: async (a, { kind }) => (kind === 'sqlite' ? data.createBackup(a) : expectClash(await data.createBackup(a))),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },

  // The workspace's edition of the catalogue
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
    may: ['admin', ...TEAM, 'outsider'],
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
    name: 'getTemplateUpdate',
    run: (a, s) => data.getTemplateUpdate(a, s.reviewId),
    reached: 'ok',
    may: READERS,
    seenBy: 'revision',
  },
  {
    name: 'updateTemplate',
    run: (a, s) => data.updateTemplate(a, { revisionId: s.reviewId, seenVersion: UNSEEN, toVersion: 1 }),
    reached: 'stale',
    may: TEAM,
    seenBy: 'revision',
  },
  {
    name: 'withdrawSignature',
    run: async (a, s) => {
      const { id } = await db().signature.findFirstOrThrow({ where: { revisionId: s.releasedId } })
      return data.withdrawSignature(a, { signatureId: id, reason: 'second thoughts' })
    },
    // Released by now: its signer is told so.
    reached: 'clash',
    may: ['lead'],
    seenBy: 'revision',
  },

  // What waits, what is found: each gets what is theirs
  {
    name: 'searchReviews',
    run: (a) => data.searchReviews(a, 'bend'),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  { name: 'listLeadCounts', run: (a) => data.listLeadCounts(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },

  // Mail
  { name: 'getMailChoices', run: (a) => data.getMailChoices(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'setMailChoices',
    run: (a) => data.setMailChoices(a, { kinds: ['query', 'answer', 'digest'] }),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  { name: 'listMail', run: (a) => data.listMail(a), reached: 'ok', may: ['admin'], seenBy: 'workspace' },
  {
    name: 'getMail',
    run: async (a, s) => data.getMail(a, s.mailId),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'sendMailAgain',
    // One that waits is not sent again.
    run: async (a, s) => data.sendMailAgain(a, { mailId: s.mailId }),
    reached: 'clash',
    may: ['admin'],
    seenBy: 'workspace',
  },

  // Limits
  {
    name: 'getLimitSheet',
    of: 'the workspace',
    run: (a) => data.getLimitSheet(a, null),
    reached: 'ok',
    may: ['admin', ...TEAM, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'getLimitSheet',
    of: 'a fabricator',
    run: (a, s) => data.getLimitSheet(a, s.team.companies.brackenfold),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'setLimit',
    of: 'the workspace',
    run: (a) => data.setLimit(a, { key: 'platingInBendUm', seenVersion: UNSEEN, value: 1, note: '' }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'setLimit',
    of: 'a fabricator',
    run: (a, s) =>
      data.setLimit(a, {
        companyId: s.team.companies.brackenfold,
        key: 'platingInBendUm',
        seenVersion: UNSEEN,
        value: 1,
        note: '',
      }),
    reached: 'stale',
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'getSheet',
    run: (a, s) => data.getSheet(a, s.team.companies.brackenfold, 'matrix'),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'listSheetVersions',
    run: (a, s) => data.listSheetVersions(a, s.team.companies.brackenfold, 'shelf'),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'saveSheet',
    run: (a, s) =>
      data.saveSheet(a, {
        companyId: s.team.companies.brackenfold,
        kind: 'matrix',
        seenVersion: UNSEEN,
        issuedOn: '2026-11-02',
        note: '',
        content: { rows: [] },
      }),
    reached: 'stale',
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'getSheet',
    of: 'rates',
    run: (a, s) => data.getSheet(a, s.team.companies.brackenfold, 'process-rates'),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'exportSheetFile',
    run: (a, s) => data.exportSheetFile(a, { companyId: s.team.companies.brackenfold, kind: 'shelf', format: 'csv' }),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'previewSheetFile',
    run: (a, s) => data.previewSheetFile(a, makeSheetFile(s.team.companies.brackenfold)),
    reached: 'ok',
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'importSheetFile',
    run: (a, s) =>
      data.importSheetFile(a, {
        ...makeSheetFile(s.team.companies.brackenfold),
        leaveOutBadRows: false,
        seenVersion: UNSEEN,
        issuedOn: '2026-11-02',
        note: '',
      }),
    reached: 'stale',
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'getFabricationFit',
    run: (a, s) => data.getFabricationFit(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  { name: 'listCompanies', run: (a) => data.listCompanies(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },

  // Projects and people
  { name: 'listProjects', run: (a) => data.listProjects(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  { name: 'listWaits', run: (a) => data.listWaits(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'createProject',
    run: (a, s) => data.createProject(a, { name: s.projectName, description: '' }),
    reached: 'invalid',
    may: ['admin', ...TEAM, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'getProject',
    run: (a, s) => data.getProject(a, s.team.projectId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'project',
  },
  {
    name: 'createInvitation',
    run: (a, s) =>
      data.createInvitation(a, {
        projectId: s.team.projectId,
        role: 'fabricator',
        companyName: s.teamCompanyName,
      }),
    reached: 'invalid',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'revokeInvitation',
    run: (a, s) => data.revokeInvitation(a, { invitationId: s.usedInvitationId }),
    reached: 'clash',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'joinByInvitation',
    run: (a) => data.joinByInvitation(a, { token: 'A'.repeat(43) }),
    reached: 'ok',
    may: [],
    seenBy: 'nothing',
  },
  {
    name: 'setMembershipRole',
    run: (a, s) =>
      data.setMembershipRole(a, {
        projectId: s.team.projectId,
        userId: s.team.fabricator.userId,
        role: 'member',
      }),
    reached: 'invalid',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'removeMember',
    run: async (a, s) =>
      data.removeMember(a, { projectId: s.team.projectId, userId: await addThrowawayMember(s.team) }),
    reached: 'ok',
    may: LEADS,
    seenBy: 'project',
  },
  {
    name: 'listFabricators',
    run: (a, s) => data.listFabricators(a, s.team.projectId),
    reached: 'ok',
    may: READERS,
    seenBy: 'project',
  },

  // Revisions
  {
    name: 'createRevision',
    run: (a, s) =>
      data.createRevision(a, { projectId: s.team.projectId, label: s.draftLabel, origin: { kind: 'blank' } }),
    reached: 'invalid',
    may: TEAM,
    seenBy: 'project',
  },
  {
    name: 'getRevision',
    of: 'shared',
    run: (a, s) => data.getRevision(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getPanels',
    run: (a, s) => data.getPanels(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getCosts',
    run: (a, s) => data.getCosts(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getCosts',
    of: 'not shared',
    run: (a, s) => data.getCosts(a, s.draftId),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'getRemedyBases',
    run: (a, s) => data.getRemedyBases(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getRevision',
    of: 'not shared',
    run: (a, s) => data.getRevision(a, s.draftId),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'saveDesign',
    run: (a, s) => data.saveDesign(a, { revisionId: s.reviewId, seenVersion: UNSEEN, design: s.design }),
    reached: 'stale',
    may: TEAM,
    seenBy: 'revision',
  },
  {
    name: 'importDesign',
    run: (a, s) =>
      data.importDesign(a, {
        revisionId: s.draftId,
        seenVersion: UNSEEN,
        designText: JSON.stringify(s.design),
      }),
    reached: 'stale',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'getSheetIdentity',
    run: (a, s) => data.getSheetIdentity(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getDrawingFile',
    run: (a, s) => data.getDrawingFile(a, s.reviewId, { format: 'svg', sheet: '1' }),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getDrawingFile',
    of: 'a draft',
    run: (a, s) => data.getDrawingFile(a, s.draftId, { format: 'svg', sheet: '1' }),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'exportDesign',
    run: (a, s) => data.exportDesign(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'exportResults',
    run: (a, s) => data.exportResults(a, s.draftId),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'evaluateAgain',
    run: (a, s) => data.evaluateAgain(a, { revisionId: s.draftId }),
    reached: 'ok',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'shareRevision',
    run: (a, s) => data.shareRevision(a, { revisionId: s.reviewId, companyId: 'nobody' }),
    reached: 'invalid',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'unshareRevision',
    run: (a, s) => data.unshareRevision(a, { revisionId: s.reviewId, companyId: 'nobody' }),
    reached: 'invalid',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'listRevisionTrail',
    run: (a, s) => data.listRevisionTrail(a, s.reviewId),
    reached: 'ok',
    may: READERS,
    seenBy: 'revision',
  },

  // Checklist
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
    may: LEADS,
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
    name: 'getAttachmentFile',
    of: "in a fabricator's thread",
    run: (a, s) => data.getAttachmentFile(a, s.brackenfoldAttachmentId),
    reached: 'ok',
    may: [...READERS, 'fabricator'],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'getArtworkFile',
    run: (a, s) => data.getArtworkFile(a, s.artworkId),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },

  // Proposals and comparison
  {
    name: 'proposeChange',
    run: (a, s) =>
      data.proposeChange(a, {
        revisionId: s.reviewId,
        seenVersion: UNSEEN,
        design: s.design,
        title: 'Title',
        why: 'Text',
        kind: 'note',
      }),
    reached: 'stale',
    may: [...TEAM, ...FABRICATORS],
    seenBy: 'revision',
  },
  {
    name: 'proposeChange',
    of: 'on a revision that is not shared',
    run: (a, s) =>
      data.proposeChange(a, {
        revisionId: s.draftId,
        seenVersion: UNSEEN,
        design: s.design,
        title: 'Title',
        why: 'Text',
        kind: 'note',
      }),
    reached: 'stale',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'getProposal',
    of: "a fabricator's",
    run: (a, s) => data.getProposal(a, s.withdrawnProposalId),
    reached: 'ok',
    may: [...READERS, 'fabricator'],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'decideProposal',
    of: "a fabricator's, withdrawn",
    run: (a, s) =>
      data.decideProposal(a, {
        proposalId: s.withdrawnProposalId,
        seenVersion: UNSEEN,
        decision: 'accept',
        reason: 'because',
      }),
    reached: 'clash',
    may: TEAM,
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'withdrawProposal',
    of: 'already withdrawn',
    run: (a, s) => data.withdrawProposal(a, { proposalId: s.withdrawnProposalId, reason: '' }),
    reached: 'clash',
    may: ['fabricator'],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'listComparable',
    run: (a, s) => data.listComparable(a, s.team.projectId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'project',
  },
  {
    name: 'compareInProject',
    of: 'shared revisions',
    run: (a, s) => compare(a, s, { kind: 'revision', id: s.releasedId }),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'compareInProject',
    of: 'with one that is not shared',
    run: (a, s) => compare(a, s, { kind: 'revision', id: s.draftId }),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'compareInProject',
    of: "with a fabricator's proposal",
    run: (a, s) => compare(a, s, { kind: 'proposal', id: s.withdrawnProposalId }),
    reached: 'ok',
    may: [...READERS, 'fabricator'],
    seenBy: 'brackenfold-thread',
  },

  // Threads
  {
    name: 'openThread',
    run: (a, s) =>
      data.openThread(a, {
        revisionId: s.reviewId,
        anchor: { kind: 'layer', id: 'no-such-layer' },
        kind: 'note',
        title: 'Title',
        text: 'Text',
      }),
    reached: 'invalid',
    may: [...TEAM, ...FABRICATORS],
    seenBy: 'revision',
  },
  {
    name: 'replyToThread',
    of: "a fabricator's, closed",
    run: (a, s) => data.replyToThread(a, { threadId: s.closedThreadId, text: 'Text', isAnswer: false }),
    reached: 'clash',
    may: [...TEAM, 'fabricator'],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'replyToThread',
    of: "the team's own",
    run: (a, s) => data.replyToThread(a, { threadId: s.teamThreadId, text: 'Text', isAnswer: false }),
    reached: 'ok',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'closeThread',
    run: (a, s) => data.closeThread(a, { threadId: s.brackenfoldThreadId, seenVersion: UNSEEN, reason: 'done' }),
    reached: 'stale',
    may: [...LEADS, 'fabricator'],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'getLiveStart',
    run: (a, s) => data.getLiveStart(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'listLiveEvents',
    run: (a, s) => data.listLiveEvents(a, s.reviewId, 0),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'listThreadReaders',
    run: (a, s) => data.listThreadReaders(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'reopenThread',
    run: (a, s) => data.reopenThread(a, { threadId: s.closedThreadId, seenVersion: UNSEEN, reason: 'again' }),
    reached: 'stale',
    may: [...LEADS, 'fabricator'],
    seenBy: 'brackenfold-thread',
  },
  {
    name: 'editComment',
    run: (a, s) => data.editComment(a, { commentId: s.brackenfoldCommentId, seenVersion: UNSEEN, text: 'other' }),
    reached: 'stale',
    may: ['fabricator'],
    seenBy: 'brackenfold-thread',
  },

  // Declaration, moves, signature, release
  {
    name: 'declareBuildable',
    run: (a, s) =>
      data.declareBuildable(a, { revisionId: s.reviewId, seenVersion: UNSEEN, isBuildable: true, note: '' }),
    reached: 'stale',
    may: FABRICATORS,
    seenBy: 'revision',
  },
  {
    name: 'advanceRevision',
    run: (a, s) => data.advanceRevision(a, { revisionId: s.reviewId, seenVersion: UNSEEN }),
    reached: 'blocked',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'sendBackRevision',
    run: (a, s) => data.sendBackRevision(a, { revisionId: s.reviewId, seenVersion: UNSEEN, reason: 'because' }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'withdrawRevision',
    run: (a, s) => data.withdrawRevision(a, { revisionId: s.reviewId, seenVersion: UNSEEN, reason: 'because' }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'signRevision',
    run: (a, s) => data.signRevision(a, { ...s.signInput, seenVersion: UNSEEN }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'releaseRevision',
    run: (a, s) => data.releaseRevision(a, { revisionId: s.signingId, seenVersion: UNSEEN }),
    reached: 'blocked',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'getPackageFile',
    run: (a, s) => data.getPackageFile(a, s.releasedId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getPackageFile',
    of: 'before release',
    run: (a, s) => data.getPackageFile(a, s.signingId),
    reached: 'ok',
    may: [],
    seenBy: 'nothing',
  },
]

/** Without an actor: what comes before one, and what whoever runs the installation calls from the command line. */
export const WITHOUT_ACTOR: readonly (keyof typeof data)[] = [
  'isWorkspaceEmpty',
  'createFirstAdmin',
  'authenticate',
  'findActor',
  'previewInvitation',
  'acceptInvitation',
  'listDemoAccounts',
  'readWholeTrail',
  'markAccountsAsDemo',
  'claimMail',
  'beginSending',
  'noteSent',
  'noteFailed',
  'queueDigests',
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

function compare(actor: Actor, scene: AccessScene, to: data.ComparisonRequest['to']) {
  const from = { kind: 'revision' as const, id: scene.reviewId }
  return data.compareInProject(actor, { projectId: scene.team.projectId, from, to })
}

function makeAnswer(scene: AccessScene, itemId: string) {
  return { revisionId: scene.reviewId, itemId, seenVersion: UNSEEN, state: 'meets' as const, reason: 'seen' }
}

function expectClash(outcome: data.Outcome<unknown>): data.Outcome<null> {
  if (outcome.ok || outcome.refusal.kind !== 'clash') throw new Error('was not refused on PostgreSQL')
  return { ok: true, value: null }
}

function makeSheetFile(companyId: string) {
  const bytes = new TextEncoder().encode('Parameter,Comfortable\nconductor-width,0.1\n')
  return { companyId, kind: 'matrix' as const, fileName: 'matrix.csv', bytes, mode: 'replace' as const }
}
