import { because, type StoredDetails, word } from './word'

interface Shown {
  readonly matrix: string
  readonly shelf: string
  readonly rates: string
}

const shown = (details: StoredDetails<Shown>, key: keyof Shown) => details.text(key).replaceAll('-', ' ')

/** Fabricators: their people, their part in projects, their sheets and limits. */
export const COMPANY_WORDS = {
  'company-asked': word<{ company: string; for: string }>()({
    subject: 'company',
    audience: 'asked-company',
    sentence: (details) => `asked ${details.text('company')} to take part`,
  }),
  'company-takes-part': word<{ company: string; reason: string }>()({
    subject: 'company',
    sentence: (details) => `agreed for ${details.text('company')} to take part`,
  }),
  'company-declined': word<{ company: string; reason: string }>()({
    subject: 'company',
    sentence: (details) => `declined for ${details.text('company')} to take part${because(details)}`,
  }),
  'company-left': word<{ company: string; reason: string }>()({
    subject: 'company',
    sentence: (details) => `ended the participation of ${details.text('company')}${because(details)}`,
  }),
  'company-sharing-set': word<{ company: string; matrix: string; shelf: string; rates: string }>()({
    subject: 'company',
    sentence: (details) =>
      `chose what ${details.text('company')} shares: matrix and limits ${shown(details, 'matrix')}, shelf ${shown(details, 'shelf')}, rates and panels ${shown(details, 'rates')}`,
  }),
  'company-person-invited': word<{ role: string; company: string; expiresAt: string }>()({
    subject: 'invitation',
    sentence: (details) => `invited somebody to ${details.text('company')} as ${details.text('role')}`,
  }),
  'company-person-joined': word<{ role: string; company: string }>()({
    subject: 'account',
    sentence: (details) => `joined ${details.text('company')} as ${details.text('role')}`,
  }),
  'company-role-changed': word<{ company: string; person: string; role: string; before: string }>()({
    subject: 'account',
    sentence: (details) => `made ${details.text('person')} ${details.text('role')} of ${details.text('company')}`,
  }),
  'company-person-removed': word<{ company: string; person: string; role: string }>()({
    subject: 'account',
    sentence: (details) => `removed ${details.text('person')} from ${details.text('company')}`,
  }),
  'company-entry-refused': word<{ company: string }>()({
    subject: 'invitation',
    sentence: (details) => `was refused entry to ${details.text('company')}: nobody of the company admitted them`,
  }),
  'company-confirmed': word<{ company: string }>()({
    subject: 'company',
    sentence: (details) => `confirmed ${details.text('company')} as a separate company`,
  }),
  'company-merged': word<{ company: string; into: string }>()({
    subject: 'company',
    sentence: (details) => `confirmed that ${details.text('company')} is ${details.text('into')}`,
  }),
  'sheet-saved': word<{ sheet: string; version: number; issuedOn: string; changes: string; restored?: number }>()({
    subject: 'sheet',
    sentence: (details) => {
      const restored = details.text('restored')
      const source = restored === '' ? '' : `, restored from version ${restored}`
      return `saved version ${details.text('version')} of the ${details.text('sheet')} (issued ${details.text('issuedOn')})${source}`
    },
  }),
  // Of a fabricator's limit the key alone is recorded: people read the trail to whom the fabricator does not show it.
  'limit-set': word<{ key: string; value?: number; before?: number | null; note?: string }>()({
    subject: 'limit',
    sentence: (details) =>
      details.text('value') === ''
        ? `set the limit ${details.text('key')}`
        : `set the limit ${details.text('key')} to ${details.text('value')}`,
  }),
  'limit-removed': word<{ key: string; value?: null; before?: number; note?: string }>()({
    subject: 'limit',
    sentence: (details) => `removed the limit ${details.text('key')}`,
  }),
} as const
