import { generateKeyPairSync } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { type Design, ENGINE_VERSION, evaluate, parseDesignText } from '@/lib/engine'
import { USUAL_ITEMS } from '@/lib/engine/catalogue'
import {
  makeCheckpoint,
  makeDrawingSource,
  makeSignedPartFiles,
  type PackageContent,
  type SigningKeys,
  type TrailCheckpoint,
} from '@/lib/package'
import {
  buildSignedContent,
  canonicalJson,
  chainRecord,
  DEFAULT_REVIEW_SETTINGS,
  DELIVERED_REVIEW_TEMPLATE,
  hashDeclaredContent,
  hashDesign,
  hashPresentSubstance,
  hashWaiverBasis,
  makeReviewItem,
  type RecordedAnswer,
  type ReleaseTerms,
  type ReviewSnapshot,
  sha256Hex,
  type TrailRecord,
  USUAL_SIGN_OFF_POLICY,
  type Waiver,
} from '@/lib/review'

export function readSeedDesign(name: string): Design {
  const read = parseDesignText(readFileSync(`seed/designs/${name}.json`, 'utf8'))
  if (!read.ok) throw new Error(`${name}: ${read.issues.map(({ message }) => message).join('; ')}`)
  return read.value
}

export function makeKeys(): SigningKeys {
  const { privateKey, publicKey } = generateKeyPairSync('ed25519')
  return {
    signingKeyPem: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    verifyingKeyPem: publicKey.export({ type: 'spki', format: 'pem' }).toString(),
  }
}

const encode = (text: string) => new TextEncoder().encode(text)

interface ArtworkFile {
  readonly fileName: string
  readonly bytes: Uint8Array
}
const ARTWORK: readonly ArtworkFile[] = [
  { fileName: 'skua_top copper.gbr', bytes: encode('G04 top copper*\n%FSLAX46Y46*%\nM02*\n') },
  { fileName: 'skua_outline.gbr', bytes: encode('G04 outline*\nM02*\n') },
]

/** A released Skua revision: real design, real results, every answer given, failures waived, one query answered. */
export function makeSnapshot(
  design: Design = readSeedDesign('skua-rev-b'),
  artworkFiles: readonly ArtworkFile[] = ARTWORK,
): ReviewSnapshot {
  const results = evaluate(design, {
    facts: { evaluatedOn: '2027-03-01', artworkFileCount: 2, openEngineeringQueries: 0 },
  })
  const items = USUAL_ITEMS.map(makeReviewItem)
  const answers = results.items.flatMap((result): RecordedAnswer[] => {
    if (result.verdict !== 'needs-judgment' && result.verdict !== 'not-computed') return []
    return [
      {
        itemId: result.itemId,
        state: 'meets',
        reason: result.verdict === 'not-computed' ? 'Measured on the paper model.' : '',
        answeredBy: 'member',
        answeredByName: 'Mara Tolland',
        answeredAt: '2027-03-01T10:00:00.000Z',
        evidence: [],
      },
    ]
  })
  const waivers = results.items.flatMap((result): Waiver[] =>
    result.verdict === 'fails'
      ? [
          {
            id: `waiver-${result.itemId}`,
            itemId: result.itemId,
            state: 'approved',
            reason: 'Accepted for the first build of 20 parts; the fold test decides for the series.',
            proposedBy: 'member',
            proposedByName: 'Mara Tolland',
            proposedAt: '2027-03-02T10:00:00.000Z',
            decidedBy: 'lead',
            decidedByName: 'Ines Calder',
            decidedAt: '2027-03-02T11:00:00.000Z',
            decisionNote: 'Agreed with the fabricator by telephone.',
            basisHash: hashWaiverBasis(result),
          },
        ]
      : [],
  )
  const artwork = artworkFiles.map(({ fileName, bytes }, index) => ({
    id: `artwork-${index}`,
    fileName,
    sizeBytes: bytes.length,
    sha256: sha256Hex(bytes),
  }))
  const unsigned: ReviewSnapshot = {
    revisionId: 'revision-b',
    projectId: 'project-skua',
    projectName: 'Skua',
    label: 'B',
    version: 31,
    stage: 'released',
    today: '2027-03-03',
    design,
    evaluation: {
      designHash: hashDesign(design),
      limitsHash: '',
      engineVersion: ENGINE_VERSION,
      evaluatedAt: '2027-03-01T09:00:00.000Z',
      results,
    },
    engineVersion: ENGINE_VERSION,
    limitsHash: '',
    items,
    template: DELIVERED_REVIEW_TEMPLATE,
    answers,
    waivers,
    takenOff: [],
    threads: [
      {
        id: 'thread-1',
        kind: 'engineering-query',
        state: 'answered',
        title: 'Which face carries the stiffener at the finger end?',
        anchor: { kind: 'zone', id: 'finger', label: 'Finger' },
        audienceCompanyId: 'company-brackenfold',
        openedBy: 'fabricator',
        openedByName: 'Joss Pell',
        openedAt: '2027-02-26T08:30:00.000Z',
        openedByCompanyId: 'company-brackenfold',
        openedByCompanyName: 'Brackenfold Circuits',
        comments: [
          {
            id: 'c1',
            authorId: 'fabricator',
            authorName: 'Joss Pell',
            companyName: 'Brackenfold Circuits',
            at: '2027-02-26T08:30:00.000Z',
            text: 'The drawing shows it on both faces. The connector takes 0.3 mm: one face only?',
            editedAt: null,
            attachments: [],
          },
          {
            id: 'c2',
            authorId: 'member',
            authorName: 'Mara Tolland',
            companyName: 'Quillmoor Instruments',
            at: '2027-02-26T13:05:00.000Z',
            text: 'On the bottom face only, opposite the contacts. The drawing follows from the construction now.',
            editedAt: '2027-02-26T13:10:00.000Z',
            attachments: [{ fileName: 'finger end.pdf', sha256: 'c'.repeat(64) }],
          },
        ],
        closed: null,
      },
    ],
    actions: [],
    sharedWith: [{ companyId: 'company-brackenfold', companyName: 'Brackenfold Circuits' }],
    declarations: [
      {
        id: 'declaration-1',
        companyId: 'company-brackenfold',
        companyName: 'Brackenfold Circuits',
        verdict: 'buildable',
        note: '',
        conditions: [],
        madeBy: 'fabricator',
        madeByName: 'Joss Pell',
        madeAt: '2027-03-02T09:00:00.000Z',
        contentHash: hashDeclaredContent({ design, artwork }),
      },
    ],
    signatures: [],
    artwork,
    artworkFacts: null,
    editors: [
      { userId: 'member', name: 'Mara Tolland' },
      { userId: 'lead', name: 'Ines Calder' },
    ],
    authors: [
      {
        userId: 'member',
        name: 'Mara Tolland',
        parts: ['design'],
        changes: { count: 1, firstVersion: 2, lastVersion: 2 },
      },
    ],
    reviews: [],
    acknowledgements: [],
    capacityGrants: [],
    signOffPolicy: { version: 0, rules: USUAL_SIGN_OFF_POLICY },
    settings: DEFAULT_REVIEW_SETTINGS,
  }
  return {
    ...unsigned,
    signatures: [
      {
        id: 'signature-0',
        userId: 'lead',
        name: 'Ines Calder',
        capacity: 'lead engineer',
        statement: 'I have reviewed this revision and release it for fabrication as it stands.',
        signedAt: '2027-03-02T15:00:00.000Z',
        contentHash: 'd'.repeat(64),
        substanceHash: '',
        voided: {
          at: '2027-03-02T16:00:00.000Z',
          reason: 'the content changed after signing',
          changes: ['L2 foil 18 um to 12 um', 'answer open to meets: Are packing and handling stated?'],
        },
      },
      {
        id: 'signature-1',
        userId: 'lead',
        name: 'Ines Calder',
        capacity: 'lead engineer',
        statement: 'I have reviewed this revision and release it for fabrication as it stands.',
        signedAt: '2027-03-03T09:00:00.000Z',
        contentHash: sha256Hex(canonicalJson(buildSignedContent(unsigned))),
        substanceHash: hashPresentSubstance(unsigned),
        voided: null,
      },
    ],
  }
}

/** A whole trail, of which a package holds an extract. */
export function makeTrail(): TrailRecord[] {
  const records: TrailRecord[] = []
  for (const [index, action] of [
    'revision-created',
    'other',
    'design-saved',
    'revision-signed',
    'other',
    'released',
  ].entries()) {
    records.push(
      chainRecord(records.at(-1) ?? null, {
        at: `2027-03-0${index + 1}T09:00:00.000Z`,
        actor: { userId: 'lead', name: 'Ines Calder' },
        action,
        subject: {
          kind: 'revision',
          id: 'revision-b',
          projectId: 'project-skua',
          revisionId: 'revision-b',
          companyId: null,
        },
        details: { step: index },
      }),
    )
  }
  return records
}

/** The newest record vouched for, as a release has it. */
export function makeCheckpoints(records: readonly TrailRecord[], { signingKeyPem }: SigningKeys): TrailCheckpoint[] {
  const last = records.at(-1)
  if (last === undefined) return []
  const { sequence, hash, at } = last
  return [makeCheckpoint({ sequence, hash, trailId: records[0]?.hash ?? '', at, previousHash: '' }, signingKeyPem)]
}

const RELEASED_AT = '2027-03-03T09:30:00.000Z'

export const RELEASE_TERMS: ReleaseTerms = {
  isConditional: false,
  purpose: 'series',
  quantityLimit: null,
  validUntil: null,
  conditions: '',
  changeNumber: '',
  reason: '',
  effectivity: '',
}

export function makeContent(
  snapshot: ReviewSnapshot = makeSnapshot(),
  artworkFiles: readonly ArtworkFile[] = ARTWORK,
): PackageContent {
  const signedContent = canonicalJson(buildSignedContent(snapshot))
  return {
    workspaceName: 'Quillmoor Instruments',
    snapshot,
    edition: { kind: 'team' },
    release: { at: RELEASED_AT, byName: 'Ines Calder', terms: RELEASE_TERMS, replaces: null },
    drawing: makeDrawingSource(snapshot, 'Quillmoor Instruments', RELEASED_AT),
    artwork: artworkFiles.map(({ bytes }) => ({ sha256: sha256Hex(bytes), bytes })),
    artworkPicture: null,
    flexTests: [],
    changes: { sinceIssue: null, sinceLooked: [] },
    members: [],
    chronology: [],
    minutes: { meetings: [], needs: [] },
    signedContent,
    trail: makeTrail().filter(({ action }) => action !== 'other'),
    checkpoints: [],
    signedParts: makeSignedPartFiles(signedContent),
  }
}
