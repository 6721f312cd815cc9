import type { Action } from './policy'

/** Something that an admin of the workspace may read without being in the project that it is about. */
export interface AdminRead {
  readonly what: string
  readonly action: Action
  /** The action under which the trail records each reading; null where no content of a design is opened. */
  readonly recordedAs: string | null
}

/**
 * All that an admin's right opens outside of projects. Designs, checklists, threads, artwork, packages and what a fabricator
 * keeps are not among it: for these an admin needs a role in the project or the company, as everybody does. Anyone who can
 * read the server's disk can read all of it; that is no right of this application.
 */
export const ADMIN_READS: readonly AdminRead[] = [
  {
    what: 'Accounts: names, addresses and roles in each project',
    action: 'account:manage',
    recordedAs: null,
  },
  { what: 'Settings, limits and catalogue of the workspace', action: 'workspace:view', recordedAs: null },
  {
    what: 'Sign-ins that were refused: account, time, device',
    action: 'account:manage',
    recordedAs: null,
  },
  {
    what: 'Names of projects, and the capacities in which people sign',
    action: 'capacity:grant',
    recordedAs: null,
  },
  { what: 'Names of companies', action: 'workspace:view', recordedAs: null },
  { what: 'Messages: recipient, time, subject and delivery', action: 'mail:view', recordedAs: null },
  {
    what: 'The text of a message, which may quote comments and results',
    action: 'mail:view',
    recordedAs: 'mail-opened',
  },
  {
    what: 'The whole trail as a file: who did what and when, with titles, reasons and file names',
    action: 'trail:check',
    recordedAs: 'trail-exported',
  },
  {
    what: 'A backup on the server’s disk, with everything but the secrets',
    action: 'backup:make',
    recordedAs: 'backup-made',
  },
]
