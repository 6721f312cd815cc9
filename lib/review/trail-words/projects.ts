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
  'profiles-chosen': word<{ profiles: string; before: string; reason: string }>()({
    subject: 'project',
    sentence: (details) =>
      `${details.text('profiles') === '' ? 'ended the use of profiles' : `chose ${details.text('profiles')}`}${because(details)}`,
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
