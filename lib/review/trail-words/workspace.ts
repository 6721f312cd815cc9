import type { JsonValue } from '../canonical'
import { because, word } from './word'

/** What anyone who runs the workspace does: settings, catalogue, mail, backups, and the trail itself. */
export const WORKSPACE_WORDS = {
  'catalogue-changed': word<{ version: number; summary: string; reason: string }>()({
    subject: 'catalogue',
    sentence: (details) => `made version ${details.text('version')} of the catalogue: ${details.text('summary')}`,
  }),
  'material-saved': word<{ name: string; version: number; reason: string }>()({
    subject: 'library',
    sentence: (details) =>
      `saved version ${details.text('version')} of the workspace's material “${details.text('name')}”${because(details)}`,
  }),
  'library-entry-withdrawn': word<{ kind: string; name: string; reason: string }>()({
    subject: 'library',
    sentence: (details) =>
      `withdrew the workspace's ${details.text('kind') === 'construction' ? 'starting construction' : details.text('kind')} “${details.text('name')}”${because(details)}`,
  }),
  'settings-changed': word<{ before: { [key: string]: JsonValue }; after: { [key: string]: JsonValue } }>()({
    subject: 'workspace',
    sentence: () => 'changed the settings of the workspace',
  }),
  'signing-key-rotated': word<{
    fingerprint: string
    verifyingKeyPem: string
    since: string
    previous: { fingerprint: string; verifyingKeyPem: string; since: string }
    reason: string
    compromisedAt: string | null
    endorsement: string
    /** Until when the key before counts; absent where that is the moment of the change. */
    previousUntil?: string
    confirmedBy: string
  }>()({
    subject: 'workspace',
    sentence: (details) =>
      `replaced the signing key by ${details.text('fingerprint').slice(0, 16)}: ${details.text('reason')}`,
  }),
  'signing-key-compromised': word<{
    fingerprint: string
    compromisedAt: string
    reason: string
    confirmedBy: string
  }>()({
    subject: 'workspace',
    sentence: (details) =>
      `reported the signing key ${details.text('fingerprint').slice(0, 16)} compromised since ${details.text('compromisedAt').slice(0, 10)}: ${details.text('reason')}`,
  }),
  'backup-made': word<{ folder: string; sizeBytes: number }>()({
    subject: 'workspace',
    sentence: () => 'made a backup',
  }),
  'mail-opened': word<{ to: string; kind: string; subject: string }>()({
    subject: 'mail',
    sentence: (details) => `opened the message “${details.text('subject')}” to ${details.text('to')}`,
  }),
  'mail-sent-again': word<{ to: string; kind: string; was: string }>()({
    subject: 'mail',
    sentence: (details) => `sent a message to ${details.text('to')} again`,
  }),
  'trail-exported': word()({ subject: 'workspace', sentence: () => 'exported the whole trail' }),
  'clock-set-back': word<{ clock: string; last: string }>()({
    subject: 'trail',
    sentence: (details) =>
      `found the clock set back: it says ${details.text('clock')}, and the last record is of ${details.text('last')}`,
  }),
  'state-recorded': word()({ subject: 'trail', sentence: () => 'recorded a change that needs no entry of its own' }),
  'state-adopted': word()({
    subject: 'trail',
    sentence: () => 'recorded rows from before hashes were kept, as found',
  }),
} as const
