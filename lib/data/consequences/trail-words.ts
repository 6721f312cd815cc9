import 'server-only'
import { isStage, nameThreadKind, STAGE_LABELS } from '@/lib/review'

interface RecordRow {
  readonly action: string
  readonly revisionId: string | null
  readonly detailsJson: string
}

type Details = Readonly<Record<string, unknown>>
type Describe = (details: Details) => string

const text = (details: Details, key: string): string => {
  const value = details[key]
  return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
}

const stage = (details: Details, key: string): string => {
  const value = text(details, key)
  return isStage(value) ? STAGE_LABELS[value] : value
}

const because = (details: Details): string => {
  const reason = text(details, 'reason')
  return reason === '' ? '' : `: ${reason}`
}

const countInputs = (details: Details): string => {
  const count = text(details, 'changeCount')
  return count === '1' ? 'one input' : `${count} inputs`
}

const shared = (details: Details, key: string): string => text(details, key).replaceAll('-', ' ')

/** What each action of the trail says to a reader; the subject is the person who acted. */
const SENTENCES: Readonly<Record<string, Describe>> = {
  'workspace-created': (details) => `created the workspace ${text(details, 'name')}`,
  'project-created': (details) => `created the project ${text(details, 'name')}`,
  'person-invited': (details) => `invited a ${text(details, 'role')} of ${text(details, 'company')}`,
  'invitation-revoked': () => 'withdrew an invitation',
  'person-joined': (details) => `joined as ${text(details, 'role')} of ${text(details, 'company')}`,
  'company-asked': (details) => `asked ${text(details, 'company')} to take part`,
  'company-takes-part': (details) => `agreed for ${text(details, 'company')} to take part`,
  'company-declined': (details) => `declined for ${text(details, 'company')} to take part${because(details)}`,
  'company-left': (details) => `ended the participation of ${text(details, 'company')}${because(details)}`,
  'company-sharing-set': (details) =>
    `chose what ${text(details, 'company')} shares: matrix and limits ${shared(details, 'matrix')}, shelf ${shared(details, 'shelf')}, rates and panels ${shared(details, 'rates')}`,
  'company-person-invited': (details) => `invited somebody to ${text(details, 'company')} as ${text(details, 'role')}`,
  'company-person-joined': (details) => `joined ${text(details, 'company')} as ${text(details, 'role')}`,
  'company-role-changed': (details) =>
    `made ${text(details, 'person')} ${text(details, 'role')} of ${text(details, 'company')}`,
  'company-person-removed': (details) => `removed ${text(details, 'person')} from ${text(details, 'company')}`,
  'company-entry-refused': (details) =>
    `was refused entry to ${text(details, 'company')}: nobody of the company admitted them`,
  'company-confirmed': (details) => `confirmed ${text(details, 'company')} as a separate company`,
  'company-merged': (details) => `confirmed that ${text(details, 'company')} is ${text(details, 'into')}`,
  'person-brought': (details) => `brought ${text(details, 'person')} of ${text(details, 'company')} into the project`,
  'role-changed': (details) => `made ${text(details, 'person')} ${text(details, 'role')}`,
  'person-removed': (details) => `removed ${text(details, 'person')} from the project`,
  'password-changed': () => 'changed their password',
  'signed-in': (details) => `signed in (${text(details, 'device')})`,
  'signed-out': (details) => `signed out (${text(details, 'device')})`,
  'session-ended': (details) => `signed another device out (${text(details, 'device')})`,
  'sessions-ended': (details) =>
    details.exceptHere === true ? 'signed out all their other devices' : 'signed out everywhere',
  'attempts-limited': (details) => `blocked further password attempts for ${text(details, 'name')} for a while`,
  'reset-mailed': (details) => `sent a link to reset the password of ${text(details, 'name')}`,
  'reset-link-made': (details) => `made a link to reset the password of ${text(details, 'name')}`,
  'password-reset': (details) =>
    `set a new password by a link ${text(details, 'by') === 'reset-by-mail' ? 'sent by mail' : 'passed on by an admin'}`,
  'address-change-asked': () => 'asked to change their address',
  'address-changed': () => 'changed their address',
  'second-factor-added': (details) => `added ${text(details, 'what')}`,
  'second-factor-removed': (details) => `removed ${text(details, 'what')} of ${text(details, 'name')}`,
  'recovery-code-used': (details) => `used a recovery code (${text(details, 'left')} left)`,
  'recovery-codes-made': () => 'made new recovery codes',
  'identity-allowed': (details) => `allowed ${text(details, 'name')} to sign in by ${text(details, 'issuer')}`,
  'identity-linked': (details) => `linked their account to an identity at ${text(details, 'issuer')}`,
  'identity-removed': () => 'removed the identity that their account was joined to',
  'account-disabled': (details) => `disabled the account of ${text(details, 'name')}`,
  'account-enabled': (details) => `enabled the account of ${text(details, 'name')}`,
  'admin-right-given': (details) => `made ${text(details, 'name')} an admin`,
  'admin-right-taken': (details) => `removed ${text(details, 'name')} as admin`,
  'revision-created': (details) => `created the revision (${text(details, 'origin')})`,
  'design-saved': (details) => `changed the design (${countInputs(details)})`,
  'design-imported': (details) => `imported a design (${countInputs(details)} changed)`,
  'results-recorded': (details) => `recorded results of engine ${text(details, 'engineVersion')}`,
  'revision-shared': (details) => `shared the revision with ${text(details, 'company')}`,
  'revision-unshared': () => 'ended the sharing of the revision',
  'revision-looked-at': () => 'looked at the design',
  'item-answered': (details) => `answered "${text(details, 'question')}": ${text(details, 'state')}`,
  'waiver-proposed': (details) => `proposed a waiver of "${text(details, 'question')}"${because(details)}`,
  'waiver-approved': (details) => `approved the waiver of "${text(details, 'question')}"`,
  'waiver-declined': (details) => `declined the waiver of "${text(details, 'question')}"${because(details)}`,
  'file-attached': (details) => `attached ${text(details, 'fileName')}`,
  'file-removed': (details) => `removed the attachment ${text(details, 'fileName')}`,
  'mail-opened': (details) => `opened the message “${text(details, 'subject')}” to ${text(details, 'to')}`,
  'trail-exported': () => 'exported the whole trail',
  'mail-sent-again': (details) => `sent a message to ${text(details, 'to')} again`,
  'artwork-added': (details) => `added the artwork ${text(details, 'fileName')}`,
  'artwork-removed': (details) => `removed the artwork ${text(details, 'fileName')}`,
  'thread-opened': (details) => `opened ${nameThreadKind(text(details, 'kind'))} "${text(details, 'title')}"`,
  'thread-replied': (details) => `replied to "${text(details, 'title')}"`,
  'thread-answered': (details) => `answered "${text(details, 'title')}"`,
  'thread-closed': (details) => `closed "${text(details, 'title')}"${because(details)}`,
  'thread-reopened': (details) => `opened "${text(details, 'title')}" again${because(details)}`,
  'comment-edited': (details) => `edited a comment in "${text(details, 'title')}"`,
  'answers-carried-over': (details) =>
    `carried over ${text(details, 'answerCount')} answers from revision ${text(details, 'from')}`,
  'proposal-made': (details) => `proposed "${text(details, 'title')}" (${countInputs(details)})`,
  'proposal-accepted': (details) => `accepted the proposal "${text(details, 'title')}"${because(details)}`,
  'proposal-declined': (details) => `declined the proposal "${text(details, 'title')}"${because(details)}`,
  'proposal-withdrawn': (details) => `withdrew the proposal "${text(details, 'title')}"${because(details)}`,
  'declared-buildable': (details) => `declared for ${text(details, 'company')}: buildable`,
  'declared-not-buildable': (details) => `declared for ${text(details, 'company')}: not buildable`,
  'stage-moved': (details) =>
    `moved the revision from ${stage(details, 'from')} to ${stage(details, 'to')}${because(details)}`,
  'revision-signed': (details) => `signed the revision as ${text(details, 'capacity')}`,
  'signature-voided': (details) => `voided a signature (${text(details, 'reason')})`,
  'revision-released': () => 'released the revision',
  'limit-set': (details) =>
    text(details, 'value') === ''
      ? `set the limit ${text(details, 'key')}`
      : `set the limit ${text(details, 'key')} to ${text(details, 'value')}`,
  'limit-removed': (details) => `removed the limit ${text(details, 'key')}`,
  'sheet-saved': (details) =>
    `saved version ${text(details, 'version')} of the ${text(details, 'sheet')} (issued ${text(details, 'issuedOn')})`,
  'catalogue-changed': (details) =>
    `made version ${text(details, 'version')} of the catalogue: ${text(details, 'summary')}`,
  'catalogue-updated': (details) =>
    `updated the review from version ${text(details, 'from')} of the catalogue to version ${text(details, 'to')}`,
  'settings-changed': () => 'changed the settings of the workspace',
  'backup-made': () => 'made a backup',
  'state-recorded': () => 'recorded a change that nobody had to note',
  'state-adopted': () => 'recorded, as found, the rows from before records carried hashes',
}

/** A record of the trail as a sentence without its subject: `moved the revision from ... to ...`. */
export function describeRecord(row: RecordRow, labels: ReadonlyMap<string, string>): string {
  const say = SENTENCES[row.action]
  const sentence = say === undefined ? row.action.replaceAll('-', ' ') : say(readDetails(row.detailsJson))
  const label = row.revisionId === null ? undefined : labels.get(row.revisionId)
  return label === undefined ? sentence : `revision ${label}: ${sentence}`
}

/** Actions that a sentence is known for: a test compares them with those that are written. */
export const DESCRIBED_ACTIONS: readonly string[] = Object.keys(SENTENCES)

const isDetails = (value: unknown): value is Details => typeof value === 'object' && value !== null

function readDetails(detailsJson: string): Details {
  const value: unknown = JSON.parse(detailsJson)
  return isDetails(value) ? value : {}
}
