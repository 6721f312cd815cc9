/**
 * Every address of the application, for its pages, for links in mail and for what the rules of the review point to. The folders
 * under `app` follow the same names. Addresses begin at the server's own: mail puts the installation's before them.
 */
const enc = encodeURIComponent

export const REVISION_TABS = [
  'overview',
  'way-out',
  'brief',
  'construction',
  'bends',
  'features',
  'lines',
  'plan',
  'drawing',
  'fabrication',
  'artwork',
  'checklist',
  'proposals',
  'threads',
  'actions',
  'meetings',
  'needs',
  'sign-off',
  'trail',
] as const

export type RevisionTab = (typeof REVISION_TABS)[number]

/** A place on a revision: a tab and, where there is one, the record on it. */
export interface RevisionTarget {
  readonly tab: RevisionTab
  /** Empty or null for the tab as a whole. */
  readonly id: string | null
}

const AFTER_PROVIDER = {
  failed: 'problem=provider',
  'not-joined': 'problem=not-joined',
  'code-wanted': 'step=code',
} as const

export const paths = {
  passkeyChallenge: () => '/api/passkey-challenge',
  /** Pages of its two lists are counted from 1. */
  home: (
    filter: {
      readonly project?: string
      readonly about?: string
      readonly find?: string
      readonly page?: string
      readonly led?: string
    } = {},
  ) => {
    const query = new URLSearchParams(Object.entries(filter).filter(([, value]) => value !== '')).toString()
    return query === '' ? '/' : `/?${query}`
  },
  signIn: (next?: string) => (next === undefined ? '/sign-in' : `/sign-in?next=${enc(next)}`),
  /** After a sign-in with the provider that did not come to its end. */
  signInAfterProvider: (outcome: 'failed' | 'not-joined' | 'code-wanted') => `/sign-in?${AFTER_PROVIDER[outcome]}`,
  forgotPassword: () => '/forgot-password',
  setup: () => '/setup',
  invitation: (token: string) => `/invitation/${enc(token)}`,
  resetPassword: (token: string) => `/reset-password/${enc(token)}`,
  confirmAddress: (token: string) => `/confirm-address/${enc(token)}`,
  account: (linked?: boolean) => (linked === undefined ? '/account' : `/account?linked=${linked ? 'yes' : 'no'}`),
  /** Pages are counted from 1. */
  questions: (show = 'all', page = 1, groupPage = 1) => {
    const query = [
      ...(show === 'all' ? [] : [`show=${enc(show)}`]),
      ...(page === 1 ? [] : [`page=${page}`]),
      ...(groupPage === 1 ? [] : [`groups=${groupPage}`]),
    ]
    return query.length === 0 ? '/questions' : `/questions?${query.join('&')}`
  },
  projects: (pages: { readonly page?: string; readonly archived?: string } = {}) => {
    const query = new URLSearchParams(Object.entries(pages).filter(([, page]) => page !== '1')).toString()
    return query === '' ? '/projects' : `/projects?${query}`
  },
  newProject: () => '/projects/new',
  project: (projectId: string) => `/projects/${enc(projectId)}`,
  projectAccess: (projectId: string, page = 1) =>
    `/projects/${enc(projectId)}/access${page === 1 ? '' : `?page=${page}`}`,
  projectAccessFile: (projectId: string) => `/api/projects/${enc(projectId)}/access`,
  companyAccess: (companyId: string, page = 1) =>
    `/companies/${enc(companyId)}/access${page === 1 ? '' : `?page=${page}`}`,
  companyAccessFile: (companyId: string) => `/api/companies/${enc(companyId)}/access`,
  invite: (projectId: string) => `/projects/${enc(projectId)}/invite`,
  newRevision: (projectId: string) => `/projects/${enc(projectId)}/revisions/new`,
  revision: (projectId: string, revisionId: string, tab: RevisionTab = 'overview') =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}${tab === 'overview' ? '' : `/${tab}`}`,
  item: (projectId: string, revisionId: string, itemId: string) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/checklist#item-${enc(itemId)}`,
  /** One bend, at its remedies where these are asked for. */
  bend: (projectId: string, revisionId: string, bendId: string, part?: 'remedies') =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/bends?bend=${enc(bendId)}${part === undefined ? '' : '&remedies=1#remedies'}`,
  /** The form for a question or comment, about this; of an artwork file at a place, in mm of the file. */
  ask: (
    projectId: string,
    revisionId: string,
    { kind, id, place }: { readonly kind: string; readonly id: string; readonly place?: readonly [number, number] },
  ) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/threads?about=${enc(`${kind}:${id}`)}${place === undefined ? '' : `&at=${place.join()}`}#ask`,
  thread: (projectId: string, revisionId: string, threadId: string) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/threads#thread-${enc(threadId)}`,
  meeting: (projectId: string, revisionId: string, meetingId: string) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/meetings/${enc(meetingId)}`,
  proposal: (projectId: string, revisionId: string, proposalId: string) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/proposals/${enc(proposalId)}`,
  target: (projectId: string, revisionId: string, { tab, id }: RevisionTarget): string => {
    if (id === null || id === '') return paths.revision(projectId, revisionId, tab)
    if (tab === 'checklist') return paths.item(projectId, revisionId, id)
    if (tab === 'threads') return paths.thread(projectId, revisionId, id)
    if (tab === 'proposals') return paths.proposal(projectId, revisionId, id)
    return `${paths.revision(projectId, revisionId, tab)}#${enc(id)}`
  },
  /** @param sides  as `revision:<id>`; without them the page asks */
  compare: (projectId: string, sides?: { readonly from: string; readonly to: string }) =>
    `/projects/${enc(projectId)}/compare${sides === undefined ? '' : `?from=${enc(sides.from)}&to=${enc(sides.to)}`}`,
  /** @param edition  the workspace's own where it has one, unless the delivered one is asked for */
  catalogue: (edition?: 'delivered') => `/catalogue${edition === undefined ? '' : `?edition=${edition}`}`,
  /** @param termId  the term to begin at */
  glossary: (termId?: string) => `/glossary${termId === undefined ? '' : `#${enc(termId)}`}`,
  workspace: () => '/workspace',
  refusedSignIns: () => '/workspace/refused-sign-ins',
  signingKeys: () => '/workspace/signing-keys',
  workspaceCompanies: () => '/workspace/companies',
  workspaceCatalogue: () => '/workspace/catalogue',
  /** Materials and starting constructions of the workspace's own. */
  library: () => '/workspace/library',
  workspaceFlexTests: () => '/workspace/flex-tests',
  catalogueFile: () => '/api/workspace/catalogue',
  trailFile: (revisionId: string, format: 'csv' | 'pdf') => `/api/revisions/${enc(revisionId)}/trail?format=${format}`,
  projectProfiles: (projectId: string) => `/projects/${enc(projectId)}/profiles`,
  signOffPolicy: (projectId: string) => `/projects/${enc(projectId)}/sign-off-policy`,
  capacities: (projectId: string) => `/projects/${enc(projectId)}/capacities`,
  /** What the newest version of the workspace's catalogue would change in a review. */
  catalogueUpdate: (projectId: string, revisionId: string) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/catalogue`,
  mail: (state?: string) => `/workspace/mail${state === undefined ? '' : `?state=${enc(state)}`}`,
  mailMessage: (mailId: string) => `/workspace/mail/${enc(mailId)}`,
  company: (companyId: string) => `/companies/${enc(companyId)}`,
  companyLimits: (companyId: string) => `/companies/${enc(companyId)}/limits`,
  /** Of the sheets that are lists of rows. */
  companySheet: (companyId: string, kind: string) => `/companies/${enc(companyId)}/${enc(kind)}`,
  sheetVersion: (companyId: string, kind: string, version: number, against?: number) =>
    `/companies/${enc(companyId)}/versions/${enc(kind)}/${version}${against === undefined ? '' : `?against=${against}`}`,
  companyMatrix: (companyId: string) => `/companies/${enc(companyId)}/matrix`,
  companyFlexTests: (companyId: string) => `/companies/${enc(companyId)}/flex-tests`,
  companyShelf: (companyId: string) => `/companies/${enc(companyId)}/shelf`,
  /** A matrix or a shelf as a file, CSV or XLSX. */
  sheetFile: (companyId: string, kind: string, format: string, unit: string) =>
    `/api/companies/${enc(companyId)}/sheets/${enc(kind)}/${enc(format)}?unit=${enc(unit)}`,
  companyPanels: (companyId: string) => `/companies/${enc(companyId)}/panels`,
  companyRates: (companyId: string) => `/companies/${enc(companyId)}/rates`,
  panels: (projectId: string, revisionId: string) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/fabrication/panels`,
  costs: (projectId: string, revisionId: string) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/fabrication/cost`,
  /** @param companyId  whom it asks; without one, the first fabricator */
  quotation: (projectId: string, revisionId: string, companyId?: string) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/fabrication/quotation${companyId === undefined ? '' : `?fabricator=${enc(companyId)}`}`,
  quotationFile: (revisionId: string, companyId: string, format: 'pdf' | 'xlsx' | 'json') =>
    `/api/revisions/${enc(revisionId)}/quotation?format=${format}&fabricator=${enc(companyId)}`,
  issues: (projectId: string) => `/projects/${enc(projectId)}/issues`,
  statusList: () => '/api/status',
  keyRegister: () => '/api/keys',
  verifyPackage: () => '/verify-package',
  stopJob: (jobId: string) => `/api/jobs/${enc(jobId)}/stop`,
  remedyBases: (revisionId: string) => `/api/revisions/${enc(revisionId)}/remedy-bases`,
  wayOut: (revisionId: string) => `/api/revisions/${enc(revisionId)}/way-out`,
  remedies: (revisionId: string) => `/api/revisions/${enc(revisionId)}/remedies`,
  design: (revisionId: string) => `/api/revisions/${enc(revisionId)}/design`,
  results: (revisionId: string) => `/api/revisions/${enc(revisionId)}/results`,
  drawingPdf: (revisionId: string) => `/api/revisions/${enc(revisionId)}/drawing?format=pdf`,
  paperModel: (revisionId: string, paper: 'a4' | 'letter') =>
    `/api/revisions/${enc(revisionId)}/drawing?format=paper-${paper}`,
  /** The part folded, as binary glTF. */
  foldedBodies: (revisionId: string) => `/api/revisions/${enc(revisionId)}/drawing?format=glb`,
  foldedStep: (revisionId: string) => `/api/revisions/${enc(revisionId)}/drawing?format=step`,
  flatStep: (revisionId: string) => `/api/revisions/${enc(revisionId)}/drawing?format=step-flat`,
  /** Ends where the sheet's number follows, counted from 1: how many there are is known where they are drawn. */
  drawingSvg: (revisionId: string) => `/api/revisions/${enc(revisionId)}/drawing?format=svg&sheet=`,
  package: (revisionId: string) => `/api/revisions/${enc(revisionId)}/package`,
  liveEvents: (revisionId: string, after: number) => `/api/revisions/${enc(revisionId)}/events?after=${after}`,
  /** Where a file is sent to, by what it is sent for. */
  upload: (purpose: string) => `/api/uploads/${enc(purpose)}`,
  attachment: (attachmentId: string) => `/api/attachments/${enc(attachmentId)}`,
  artworkFile: (artworkId: string) => `/api/artwork/${enc(artworkId)}`,
  artworkPicture: (revisionId: string) => `/api/revisions/${enc(revisionId)}/artwork-picture`,
  /** A place in the picture of the artwork, in mm of the plan or of the files. */
  artworkAt: (projectId: string, revisionId: string, spot: { frame: string; xMm: number; yMm: number }) =>
    `/projects/${enc(projectId)}/revisions/${enc(revisionId)}/artwork?in=${spot.frame}&at=${spot.xMm},${spot.yMm}#artwork-picture`,
  designSchema: () => '/api/design-schema',
  wholeTrail: () => '/api/workspace/trail',
} as const
