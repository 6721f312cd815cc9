import type * as data from '@/lib/data'
import { CATALOGUE_ROWS } from './rows/catalogue'
import { CHECKLIST_ROWS } from './rows/checklist'
import { COMPANY_ROWS } from './rows/companies'
import { LIBRARY_ROWS } from './rows/library'
import { MAIL_ROWS } from './rows/mail'
import { MEETING_ROWS } from './rows/meetings'
import { PROJECT_ROWS } from './rows/projects'
import { PROPOSAL_ROWS } from './rows/proposals'
import { RELEASE_ROWS } from './rows/release'
import { REVIEW_ACTION_ROWS } from './rows/review-actions'
import { REVISION_ROWS } from './rows/revisions'
import type { AccessRow } from './rows/row'
import { THREAD_ROWS } from './rows/threads'
import { WORKSPACE_ROWS } from './rows/workspace'

export { type AccessRow, type Cell, SEEN_BY } from './rows/row'

/** Who may do what: rows by noun, a file for each under `rows`. */
export const ACCESS_TABLE: readonly AccessRow[] = [
  ...WORKSPACE_ROWS,
  ...CATALOGUE_ROWS,
  ...LIBRARY_ROWS,
  ...MAIL_ROWS,
  ...COMPANY_ROWS,
  ...PROJECT_ROWS,
  ...REVISION_ROWS,
  ...CHECKLIST_ROWS,
  ...PROPOSAL_ROWS,
  ...THREAD_ROWS,
  ...REVIEW_ACTION_ROWS,
  ...MEETING_ROWS,
  ...RELEASE_ROWS,
]

/** Without an actor: what comes before one, and what the operator of the installation calls from the command line. */
export const WITHOUT_ACTOR: readonly (keyof typeof data)[] = [
  // The server itself
  'forgetOldAccess',
  'isDatabaseThere',
  'makeBackup',
  'takePulse',
  'workOutOutdated',
  'isWorkspaceEmpty',
  'createFirstAdmin',
  'authenticate',
  'findActor',
  'loadActor',
  'askForReset',
  'answerResetRequests',
  'previewReset',
  'setPasswordByLink',
  'recoverAccount',
  'previewAddressChange',
  'confirmAddress',
  'finishSecondStep',
  'arePasskeysPossible',
  'makePasskeyChallenge',
  'signInByPasskey',
  'signInByIdentity',
  'openSession',
  'isSessionOpen',
  'signOut',
  'previewInvitation',
  'acceptInvitation',
  'listDemoAccounts',
  'readWholeTrail',
  'checkStoredTrail',
  'adoptOlderState',
  'markAccountsAsDemo',
  'claimMail',
  'beginSending',
  'noteSent',
  'noteFailed',
  'queueDigests',
  'sweepFiles',
  'listDueJobs',
  'runKeptJob',
  'forgetOldJobs',
]
