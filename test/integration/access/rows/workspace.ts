import * as data from '@/lib/data'
import { PASSWORD } from '@/test/factories/people'
import { type AccessRow, EVERYBODY, UNSEEN } from './row'

/** Own account and workspace; What waits, what is found: each gets what is theirs. */
export const WORKSPACE_ROWS: readonly AccessRow[] = [
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
    run: (a) => data.signOutEverywhere(a, { exceptHere: false }),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'endSession',
    // A session that is nobody's: another's answers the same.
    run: (a) => data.endSession(a, { sessionId: 'none' }),
    reached: 'ok',
    may: [],
    seenBy: 'nothing',
  },
  { name: 'listOwnSessions', run: (a) => data.listOwnSessions(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'askForAddressChange',
    run: (a) => data.askForAddressChange(a, { email: 'other@example.org', password: 'not it' }),
    reached: 'invalid',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  { name: 'getSecondFactor', run: (a) => data.getSecondFactor(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'beginCodeSetUp',
    run: (a) => data.beginCodeSetUp(a, { password: 'not it' }),
    reached: 'invalid',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'finishCodeSetUp',
    run: (a) => data.finishCodeSetUp(a, { token: 'x'.repeat(43), code: '000000' }),
    reached: 'clash',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'removeCodes',
    run: (a) => data.removeCodes(a, { password: 'not it' }),
    reached: 'invalid',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'renewRecoveryCodes',
    run: (a) => data.renewRecoveryCodes(a, { password: 'not it' }),
    reached: 'invalid',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'beginPasskeySetUp',
    run: (a) => data.beginPasskeySetUp(a, { password: 'not it' }),
    reached: 'clash',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'beginPasskeyConfirmation',
    run: (a) => data.beginPasskeyConfirmation(a),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'finishPasskeySetUp',
    run: (a) => data.finishPasskeySetUp(a, { token: 'x'.repeat(43), name: 'Key', response: { id: 'x', response: {} } }),
    reached: 'clash',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'removePasskey',
    run: (a) => data.removePasskey(a, { passkeyId: 'x', password: 'not it' }),
    reached: 'invalid',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'beginIdentityLink',
    run: (a) => data.beginIdentityLink(a, { password: 'not it' }),
    reached: 'clash',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'finishIdentityLink',
    run: (a) =>
      data.finishIdentityLink(a, {
        token: 'x'.repeat(43),
        identity: { issuer: 'x', subject: 'x', email: '', isEmailVerified: false },
      }),
    reached: 'clash',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'removeIdentity',
    run: (a) => data.removeIdentity(a, { password: 'not it' }),
    reached: 'invalid',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  { name: 'getOwnIdentity', run: (a) => data.getOwnIdentity(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'makeResetLink',
    run: (a) => data.makeResetLink(a, { userId: a.userId }),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'removeSecondFactor',
    run: (a) => data.removeSecondFactor(a, { userId: a.userId }),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'allowIdentity',
    run: (a) => data.allowIdentity(a, { userId: a.userId }),
    reached: 'clash',
    may: ['admin'],
    seenBy: 'workspace',
  },
  { name: 'listPeople', run: (a) => data.listPeople(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'listRefusedSignIns',
    run: (a) => data.listRefusedSignIns(a),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },
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
  { name: 'getKeyRegister', run: (a) => data.getKeyRegister(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'getKeyRegisterFile',
    run: (a) => data.getKeyRegisterFile(a),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'getPackageTrust',
    run: (a) => data.getPackageTrust(a),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'rotateSigningKey',
    run: (a) => data.rotateSigningKey(a, { reason: 'yearly', compromisedOn: '2999-01-01', password: PASSWORD }),
    reached: 'invalid',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'reportKeyCompromised',
    run: (a) =>
      data.reportKeyCompromised(a, {
        fingerprint: 'a'.repeat(64),
        compromisedOn: '2026-01-01',
        reason: 'a disk was lost',
        password: PASSWORD,
      }),
    reached: 'invalid',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'createBackup',
    // On PostgreSQL it is refused, naming the server's own tool.
    run: async (a, { kind }) => (kind === 'sqlite' ? data.createBackup(a) : expectClash(await data.createBackup(a))),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },

  // What waits, what is found: each gets what is theirs
  { name: 'listQuestions', run: (a) => data.listQuestions(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  {
    name: 'searchReviews',
    run: (a) => data.searchReviews(a, 'bend'),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'noteAccess',
    // A note of the server about the person themselves.
    run: async (a, s) => {
      const visit = { sourceKey: 'source', isThisMachine: false, device: 'a browser', known: null }
      await data.noteAccess(a, visit, { kind: 'revision-opened', place: { revisionId: s.reviewId }, what: '' })
    },
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  { name: 'getHome', run: (a) => data.getHome(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
  { name: 'listLeadCounts', run: (a) => data.listLeadCounts(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
]

function expectClash(outcome: data.ActResult<unknown>): data.ActResult<null> {
  if (outcome.ok || outcome.refusal.kind !== 'clash') throw new Error('was not refused on PostgreSQL')
  return { ok: true, value: null }
}
