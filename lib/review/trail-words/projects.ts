import { because, word } from './word'

/** The workspace, its projects and who is in them. */
export const PROJECT_WORDS = {
  'workspace-created': word<{ name: string }>()({
    subject: 'workspace',
    sentence: (details) => `created the workspace ${details.text('name')}`,
  }),
  'project-created': word<{ name: string }>()({
    subject: 'project',
    sentence: (details) => `created the project ${details.text('name')}`,
  }),
  'project-changed': word<{
    name: string
    before: string
    description: string
    descriptionBefore: string
    reason: string
  }>()({
    subject: 'project',
    sentence: (details) =>
      details.text('name') === details.text('before')
        ? `changed the description of the project${because(details)}`
        : `renamed the project from ${details.text('before')} to ${details.text('name')}${because(details)}`,
  }),
  'project-archived': word<{ reason: string }>()({
    subject: 'project',
    sentence: (details) => `archived the project${because(details)}`,
  }),
  'project-brought-back': word<{ reason: string }>()({
    subject: 'project',
    sentence: (details) => `brought the project back from the archive${because(details)}`,
  }),
  'profiles-chosen': word<{ profiles: string; before: string; reason: string }>()({
    subject: 'project',
    sentence: (details) =>
      `${details.text('profiles') === '' ? 'ended the use of profiles' : `chose ${details.text('profiles')}`}${because(details)}`,
  }),
  'sign-off-policy-changed': word<{ version: number; tightened: string[]; loosened: string[]; reason: string }>()({
    subject: 'project',
    sentence: (details) => `made version ${details.text('version')} of the sign-off policy${because(details)}`,
  }),
  'capacity-granted': word<{ person: string; capacity: string; statement: string }>()({
    subject: 'capacity',
    sentence: (details) => `let ${details.text('person')} sign as ${details.text('capacity')}`,
  }),
  'capacity-withdrawn': word<{ person: string; capacity: string; reason: string }>()({
    subject: 'capacity',
    sentence: (details) =>
      `withdrew the capacity ${details.text('capacity')} of ${details.text('person')}${because(details)}`,
  }),
  'person-invited': word<{ role: string; company: string; expiresAt: string }>()({
    subject: 'invitation',
    sentence: (details) => `invited a ${details.text('role')} of ${details.text('company')}`,
  }),
  'invitation-revoked': word()({ subject: 'invitation', sentence: () => 'withdrew an invitation' }),
  'person-joined': word<{ role: string; company: string; invitation: string }>()({
    subject: 'account',
    sentence: (details) => `joined as ${details.text('role')} of ${details.text('company')}`,
  }),
  'person-brought': word<{ company: string; person: string }>()({
    subject: 'account',
    sentence: (details) => `brought ${details.text('person')} of ${details.text('company')} into the project`,
  }),
  'role-changed': word<{ person: string; role: string; before: string }>()({
    subject: 'account',
    sentence: (details) => `made ${details.text('person')} ${details.text('role')}`,
  }),
  'person-removed': word<{ person: string; role: string }>()({
    subject: 'account',
    sentence: (details) => `removed ${details.text('person')} from the project`,
  }),
} as const
