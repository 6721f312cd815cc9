/** What the application writes to people about. */
export const MAIL_KINDS = [
  'invitation',
  'company-asked',
  'query',
  'answer',
  'mention',
  'proposal',
  'action',
  'shared',
  'declaration',
  'condition',
  'stage',
  'signature-voided',
  'released',
  'digest',
  'password-reset',
  'address-change',
  'account',
] as const
export type MailKind = (typeof MAIL_KINDS)[number]

/** What a person can do without. An invitation goes to somebody who has no account yet; what happens to an account is always told. */
export const OPTIONAL_MAIL_KINDS = [
  'company-asked',
  'query',
  'answer',
  'mention',
  'proposal',
  'action',
  'shared',
  'declaration',
  'condition',
  'stage',
  'signature-voided',
  'released',
  'digest',
] as const
export type OptionalMailKind = (typeof OPTIONAL_MAIL_KINDS)[number]

export const MAIL_KIND_LABELS: Readonly<Record<MailKind, string>> = {
  invitation: 'Invitation',
  'company-asked': 'A project that asks your company to take part',
  query: 'An engineering query, or a change requested by the other side',
  answer: 'An answer in one of your threads',
  mention: 'A comment that mentions you',
  proposal: 'A proposed change, and the decision on it',
  action: 'An action that you own or took on, and what became of it',
  shared: 'A revision that is shared with your company',
  declaration: 'A fabricator’s declaration that a revision can or cannot be built',
  condition: 'A decision on your company’s condition, or on its part in a release',
  stage: 'A revision that moves to another stage',
  'signature-voided': 'A signature that is voided',
  released: 'A released revision, with its package',
  digest: 'A daily summary of what is waiting for you',
  'password-reset': 'A link to set a new password',
  'address-change': 'A link to confirm a new address',
  account: 'Changes to your account',
}

export function isMailKind(word: string): word is MailKind {
  return (MAIL_KINDS as readonly string[]).includes(word)
}

export function isOptionalMailKind(word: string): word is OptionalMailKind {
  return (OPTIONAL_MAIL_KINDS as readonly string[]).includes(word)
}

/**
 * Where a message of the outbox stands. `claimed` and `sending` are a worker's; of an `uncertain` one nobody knows whether
 * it went out; a `given-up` one was refused for good or too often; a `left-out` one had nobody to go to any more.
 */
export const MAIL_STATES = ['waiting', 'claimed', 'sending', 'sent', 'uncertain', 'given-up', 'left-out'] as const
export type MailState = (typeof MAIL_STATES)[number]
