import type { PersonName } from './fixtures'

/** Who reaches what, over HTTP: one row for each page and route of the build. An endpoint that has no row fails the test. */

/** Whose browsers walk: everybody of the demonstration who differs in rights. Brackenfold is in Skua and not in Pipit. */
export const WALKERS = ['lead', 'designer', 'observer', 'auditor', 'admin', 'ostrel', 'brackenfold'] as const
export type Walker = (typeof WALKERS)[number] & PersonName

/** Ids of the demonstration by the names that addresses give them. */
export type WalkScene = Readonly<Record<string, string>>

export interface Endpoint {
  /** Beside the ids of Pipit A, which most rows are walked with. */
  readonly ids?: 'of Skua B' | 'of Brackenfold'
  readonly query?: string
  readonly seenBy: readonly Walker[]
  /** What somebody without an account gets: sent to sign in, or refused, unless said. */
  readonly visitor?: 'sees it too' | 'is led on'
  /** Those who are signed in already are led on; what is posted alone answers no GET. */
  readonly answers?: 'by leading on' | 'to POST alone'
}

const LEADS: readonly Walker[] = ['lead']
const MAKERS: readonly Walker[] = ['lead', 'designer']
const TEAM: readonly Walker[] = ['lead', 'designer', 'observer', 'auditor']
/** Of Pipit, which is shared with Ostrel. */
const PROJECT: readonly Walker[] = [...TEAM, 'ostrel']
const ADMINS: readonly Walker[] = ['admin']
const KEEPERS: readonly Walker[] = ['brackenfold']
/** Brackenfold's sheets are shared with those who design in Skua. */
const SHEET_READERS: readonly Walker[] = [...MAKERS, 'brackenfold']
const ALL: readonly Walker[] = WALKERS
const NOBODY: readonly Walker[] = []

const onPipit = (seenBy: readonly Walker[], query?: string): Endpoint => ({
  seenBy,
  ...(query === undefined ? {} : { query }),
})
const ofBrackenfold = (seenBy: readonly Walker[], query?: string): Endpoint => ({
  ...onPipit(seenBy, query),
  ids: 'of Brackenfold',
})
const OPEN: Endpoint = { seenBy: ALL, visitor: 'sees it too' }
const POSTED: Endpoint = { seenBy: NOBODY, answers: 'to POST alone' }

const REVISION = '/projects/[projectId]/revisions/[revisionId]'

export const ENDPOINTS: Readonly<Record<string, Endpoint>> = {
  '/': onPipit(ALL),
  '/account': onPipit(ALL),
  '/catalogue': onPipit(ALL),
  '/glossary': onPipit(ALL),
  '/questions': onPipit(ALL),
  '/verify-package': onPipit(ALL),
  '/sign-in': { ...OPEN, answers: 'by leading on' },
  '/setup': { seenBy: ALL, visitor: 'is led on', answers: 'by leading on' },
  '/forgot-password': OPEN,
  '/reset-password/[token]': OPEN,
  '/confirm-address/[token]': OPEN,
  '/invitation/[token]': onPipit(NOBODY),
  '/favicon.ico': OPEN,
  '/icon.svg': OPEN,

  '/projects': onPipit(ALL),
  '/projects/new': onPipit(ALL),
  '/projects/[projectId]': onPipit(PROJECT),
  '/projects/[projectId]/access': onPipit(LEADS),
  // An admin grants capacities where a project has one lead, and sees nothing else of it.
  '/projects/[projectId]/capacities': onPipit([...TEAM, 'admin']),
  '/projects/[projectId]/compare': onPipit(PROJECT),
  '/projects/[projectId]/invite': onPipit(LEADS),
  '/projects/[projectId]/issues': onPipit(PROJECT),
  '/projects/[projectId]/profiles': onPipit(PROJECT),
  '/projects/[projectId]/sign-off-policy': onPipit(PROJECT),
  '/projects/[projectId]/revisions/new': onPipit(MAKERS),

  [REVISION]: onPipit(PROJECT),
  [`${REVISION}/actions`]: onPipit(PROJECT),
  [`${REVISION}/artwork`]: onPipit(PROJECT),
  [`${REVISION}/bends`]: onPipit(PROJECT),
  [`${REVISION}/brief`]: onPipit(PROJECT),
  [`${REVISION}/catalogue`]: onPipit(TEAM),
  [`${REVISION}/checklist`]: onPipit(PROJECT),
  [`${REVISION}/construction`]: onPipit(PROJECT),
  [`${REVISION}/drawing`]: onPipit(PROJECT),
  [`${REVISION}/fabrication`]: onPipit(PROJECT),
  [`${REVISION}/fabrication/cost`]: onPipit(PROJECT),
  [`${REVISION}/fabrication/panels`]: onPipit(PROJECT),
  [`${REVISION}/fabrication/quotation`]: onPipit(PROJECT),
  [`${REVISION}/features`]: onPipit(PROJECT),
  [`${REVISION}/lines`]: onPipit(PROJECT),
  [`${REVISION}/meetings`]: onPipit(TEAM),
  [`${REVISION}/meetings/[meetingId]`]: { ids: 'of Skua B', seenBy: TEAM },
  [`${REVISION}/needs`]: onPipit(TEAM),
  [`${REVISION}/plan`]: onPipit(PROJECT),
  [`${REVISION}/proposals`]: onPipit(PROJECT),
  // Brackenfold's, which the other fabricator does not learn of.
  [`${REVISION}/proposals/[proposalId]`]: { ids: 'of Skua B', seenBy: [...TEAM, 'brackenfold'] },
  [`${REVISION}/sign-off`]: onPipit(PROJECT),
  [`${REVISION}/threads`]: onPipit(PROJECT),
  [`${REVISION}/trail`]: onPipit(TEAM),
  [`${REVISION}/way-out`]: onPipit(PROJECT),

  '/companies/[companyId]': ofBrackenfold(SHEET_READERS),
  '/companies/[companyId]/access': ofBrackenfold(KEEPERS),
  '/companies/[companyId]/flex-tests': ofBrackenfold(SHEET_READERS),
  '/companies/[companyId]/limits': ofBrackenfold(SHEET_READERS),
  '/companies/[companyId]/matrix': ofBrackenfold(SHEET_READERS),
  '/companies/[companyId]/panels': ofBrackenfold(SHEET_READERS),
  '/companies/[companyId]/rates': ofBrackenfold(SHEET_READERS),
  '/companies/[companyId]/shelf': ofBrackenfold(SHEET_READERS),
  '/companies/[companyId]/versions/[kind]/[version]': ofBrackenfold(KEEPERS),

  '/workspace': onPipit(ADMINS),
  '/workspace/catalogue': onPipit([...MAKERS, 'admin']),
  '/workspace/companies': onPipit(ADMINS),
  '/workspace/flex-tests': onPipit([...MAKERS, 'admin']),
  '/workspace/library': onPipit([...MAKERS, 'admin']),
  '/workspace/mail': onPipit(ADMINS),
  '/workspace/mail/[mailId]': onPipit(ADMINS),
  '/workspace/refused-sign-ins': onPipit(ADMINS),
  '/workspace/signing-keys': onPipit(ADMINS),

  '/api/artwork/[artworkId]': onPipit(PROJECT),
  '/api/attachments/[attachmentId]': onPipit(PROJECT),
  '/api/companies/[companyId]/access': ofBrackenfold(KEEPERS),
  '/api/companies/[companyId]/sheets/[kind]/[format]': ofBrackenfold(SHEET_READERS, '?unit=mm'),
  '/api/design-schema': OPEN,
  '/api/health': OPEN,
  '/api/jobs/[jobId]/stop': POSTED,
  '/api/keys': onPipit(ALL),
  // To this machine, where the test runs.
  '/api/metrics': OPEN,
  '/api/passkey-challenge': POSTED,
  '/api/projects/[projectId]/access': onPipit(LEADS),
  '/api/ready': OPEN,
  '/api/revisions/[revisionId]/artwork-picture': onPipit(PROJECT),
  '/api/revisions/[revisionId]/design': onPipit(PROJECT),
  '/api/revisions/[revisionId]/drawing': onPipit(PROJECT, '?format=svg&sheet=1'),
  '/api/revisions/[revisionId]/events': onPipit(PROJECT, '?after=0'),
  '/api/revisions/[revisionId]/package': onPipit(PROJECT),
  // For Brackenfold, on Skua B: the other fabricator learns nothing of it.
  '/api/revisions/[revisionId]/quotation': {
    ids: 'of Skua B',
    query: '?format=json&fabricator=[companyId]',
    seenBy: [...TEAM, 'brackenfold'],
  },
  '/api/revisions/[revisionId]/remedies': POSTED,
  '/api/revisions/[revisionId]/remedy-bases': onPipit(PROJECT),
  '/api/revisions/[revisionId]/results': onPipit(PROJECT),
  '/api/revisions/[revisionId]/trail': onPipit(TEAM, '?format=csv'),
  '/api/revisions/[revisionId]/way-out': POSTED,
  '/api/status': onPipit(ALL),
  '/api/uploads/[purpose]': POSTED,
  '/api/workspace/catalogue': onPipit(ADMINS),
  '/api/workspace/trail': onPipit(ADMINS),
}

/** The session library's own: test/e2e/doors.spec.ts knocks at it. */
export const ENTRIES_OF_OTHERS: readonly string[] = ['/api/auth/[...nextauth]']

/** Acts that somebody without an account carries out. */
export const VISITORS_ACTS: readonly string[] = [
  'acceptInvitation',
  'askForReset',
  'confirmAddress',
  'createFirstAdmin',
  'setPassword',
]
