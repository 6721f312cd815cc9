import { word } from './word'

/** Accounts, sessions and what somebody signs in with. */
export const ACCESS_WORDS = {
  'password-changed': word()({ subject: 'account', sentence: () => 'changed their password' }),
  'signed-in': word<{ method: string; device: string }>()({
    subject: 'session',
    sentence: (details) => `signed in (${details.text('device')})`,
  }),
  'signed-out': word<{ device: string }>()({
    subject: 'session',
    sentence: (details) => `signed out (${details.text('device')})`,
  }),
  'session-ended': word<{ device: string }>()({
    subject: 'session',
    sentence: (details) => `signed another device out (${details.text('device')})`,
  }),
  'sessions-ended': word<{ count: number; exceptHere: boolean }>()({
    subject: 'account',
    sentence: (details) =>
      details.isTrue('exceptHere') ? 'signed out all their other devices' : 'signed out everywhere',
  }),
  'attempts-limited': word<{ name: string }>()({
    subject: 'account',
    sentence: (details) => `blocked further password attempts for ${details.text('name')} for a while`,
  }),
  'reset-mailed': word<{ name: string }>()({
    subject: 'account',
    sentence: (details) => `sent a link to reset the password of ${details.text('name')}`,
  }),
  'reset-link-made': word<{ name: string }>()({
    subject: 'account',
    audience: 'account-owner',
    sentence: (details) => `made a link to reset the password of ${details.text('name')}`,
  }),
  'password-reset': word<{ by: string }>()({
    subject: 'account',
    audience: 'account-owner',
    sentence: (details) =>
      `set a new password by a link ${details.text('by') === 'reset-by-mail' ? 'sent by mail' : 'passed on by an admin'}`,
  }),
  'address-change-asked': word()({
    subject: 'account',
    audience: 'account-owner',
    sentence: () => 'asked to change their address',
  }),
  'address-changed': word()({
    subject: 'account',
    audience: 'account-owner',
    sentence: () => 'changed their address',
  }),
  'second-factor-added': word<{ what: string; name: string }>()({
    subject: 'account',
    audience: 'account-owner',
    sentence: (details) => `added ${details.text('what')}`,
  }),
  'second-factor-removed': word<{ what: string; name: string }>()({
    subject: 'account',
    audience: 'account-owner',
    sentence: (details) => `removed ${details.text('what')} of ${details.text('name')}`,
  }),
  'recovery-code-used': word<{ left: number }>()({
    subject: 'account',
    sentence: (details) => `used a recovery code (${details.text('left')} left)`,
  }),
  'recovery-codes-made': word()({ subject: 'account', sentence: () => 'made new recovery codes' }),
  'identity-allowed': word<{ name: string; issuer: string }>()({
    subject: 'account',
    sentence: (details) => `allowed ${details.text('name')} to sign in by ${details.text('issuer')}`,
  }),
  'identity-linked': word<{ issuer: string }>()({
    subject: 'account',
    audience: 'account-owner',
    sentence: (details) => `linked their account to an identity at ${details.text('issuer')}`,
  }),
  'identity-removed': word()({
    subject: 'account',
    sentence: () => 'unlinked their account from the sign-in provider',
  }),
  'account-disabled': word<{ name: string }>()({
    subject: 'account',
    sentence: (details) => `disabled the account of ${details.text('name')}`,
  }),
  'account-enabled': word<{ name: string }>()({
    subject: 'account',
    sentence: (details) => `enabled the account of ${details.text('name')}`,
  }),
  'admin-right-given': word<{ name: string }>()({
    subject: 'account',
    sentence: (details) => `made ${details.text('name')} an admin`,
  }),
  'admin-right-taken': word<{ name: string }>()({
    subject: 'account',
    sentence: (details) => `removed ${details.text('name')} as admin`,
  }),
} as const
