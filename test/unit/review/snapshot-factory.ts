import type { Design, Evaluation, ItemResult } from '@/lib/engine'
import { findStartingConstruction, listStartingConstructions } from '@/lib/engine/starting-constructions'
import {
  DEFAULT_REVIEW_SETTINGS,
  DELIVERED_REVIEW_TEMPLATE,
  hashDeclaredContent,
  hashDesign,
  makeReviewItem,
  type ProjectRole,
  type ReviewItem,
  type ReviewSnapshot,
  type Rights,
  USUAL_SIGN_OFF_POLICY,
} from '@/lib/review'

export const PROJECT = 'project-skua'
export const TEAM = 'company-quillmoor'
export const BRACKENFOLD = 'company-brackenfold'
export const OSTREL = 'company-ostrel'

const person = (userId: string, role: ProjectRole, companyId: string): Rights => ({
  userId,
  isAdmin: false,
  memberships: [{ projectId: PROJECT, role, companyId }],
  companies: role === 'fabricator' ? [{ companyId, role: 'administrator' }] : [],
})

export const LEAD = person('lead', 'lead', TEAM)
export const SECOND_LEAD = person('second-lead', 'lead', TEAM)
export const MEMBER = person('member', 'member', TEAM)
export const QUALITY = person('quality', 'quality', TEAM)
export const AUDITOR = person('auditor', 'auditor', TEAM)
export const OBSERVER = person('observer', 'observer', TEAM)
export const FABRICATOR = person('fabricator', 'fabricator', BRACKENFOLD)
export const OTHER_FABRICATOR = person('other-fabricator', 'fabricator', OSTREL)
export const ADMIN: Rights = { userId: 'admin', isAdmin: true, memberships: [], companies: [] }
export const OUTSIDER: Rights = {
  userId: 'outsider',
  isAdmin: false,
  memberships: [{ projectId: 'project-other', role: 'lead', companyId: TEAM }],
  companies: [],
}
/** Of Brackenfold, in the project too; only the right over the company differs. */
export const SHEET_WRITER: Rights = {
  ...FABRICATOR,
  userId: 'sheet-writer',
  companies: [{ companyId: BRACKENFOLD, role: 'sheet-writer' }],
}
export const COMPANY_MEMBER: Rights = {
  ...FABRICATOR,
  userId: 'company-member',
  companies: [{ companyId: BRACKENFOLD, role: 'member' }],
}
/** In the project under the company's name, and admitted by nobody of the company. */
export const IMPOSTOR: Rights = { ...FABRICATOR, userId: 'impostor', companies: [] }

/** A starting construction with the brief filled in, so that nothing blocks for want of inputs. */
export function makeDesign(change: (design: Design) => void = () => {}): Design {
  const first = listStartingConstructions()[0]
  const found = first === undefined ? null : findStartingConstruction(first.id)
  if (found === null) throw new Error('no starting construction')
  const design = { ...structuredClone(found.makeDesign('Skua')), assumed: [] }
  for (const zone of design.construction.zones) {
    if (zone.kind === 'finger') zone.connectorWindow = { minUm: 270, maxUm: 330 }
  }
  Object.assign(design.brief, {
    partNumber: 'QM-100',
    purpose: 'Scanning head',
    performanceClass: 'class-2',
    circuitType: 'type-1',
    installationUses: ['use-a'],
    operatingMinDegC: -10,
    operatingMaxDegC: 60,
    quantityPerYear: 200,
    surfaceFinish: 'immersion-tin',
    solderedAssembly: true,
  })
  change(design)
  return design
}

export const ITEMS: readonly ReviewItem[] = [
  makeReviewItem({
    id: 'bend-strain',
    section: 'materials',
    question: 'Does the copper stay below its allowable strain?',
    severity: 'blocking',
    decidedWhen: 'early',
    answeredBy: ['member', 'lead'],
  }),
  makeReviewItem({
    id: 'inside-corners',
    section: 'geometry',
    question: 'Are inside corners rounded?',
    severity: 'major',
    decidedWhen: 'early',
    answeredBy: ['member', 'lead'],
  }),
  makeReviewItem({
    id: 'packing-notes',
    section: 'fabrication',
    question: 'Are packing and handling stated?',
    severity: 'minor',
    decidedWhen: 'fabricator',
    answeredBy: ['member', 'lead', 'fabricator'],
  }),
]

export function makeResult(itemId: string, verdict: ItemResult['verdict'], valuePct = 0.1): ItemResult {
  const isDecided = verdict === 'meets' || verdict === 'fails' || verdict === 'thin-margin'
  return {
    itemId,
    basis: verdict === 'needs-judgment' ? 'judgment' : 'computed',
    verdict,
    headline: `${itemId} ${verdict}`,
    outcomes: isDecided
      ? [
          {
            kind: 'decided',
            verdict,
            value: { value: valuePct, unit: 'pct' },
            limit: {
              key: 'strain',
              value: 0.3,
              unit: 'pct',
              sense: 'at-most',
              owner: { kind: 'common-practice', name: 'common practice' },
              sourceKey: 'commonPractice',
            },
            margin: 0.3 - valuePct,
            equation: 'comparison',
            sourceKey: 'commonPractice',
            cautions: [],
            places: [],
            summary: `${valuePct} %`,
          },
        ]
      : verdict === 'not-computed'
        ? [
            {
              kind: 'not-computed',
              missing: [{ path: ['bends', 0, 'use'], label: 'use of bend Hinge' }],
              places: [],
              summary: 'use is missing',
            },
          ]
        : [],
  }
}

export function makeEvaluation(items: readonly ItemResult[]): Evaluation {
  return {
    engineVersion: '1.0.0',
    designName: 'Skua',
    zones: [],
    bends: [],
    conductors: [],
    damage: [],
    items,
    headlineQuantities: [],
  }
}

/** A snapshot in which nothing blocks but the signature; `change` breaks what a test is about. */
export function makeSnapshot(change: Partial<ReviewSnapshot> = {}): ReviewSnapshot {
  const design = change.design ?? makeDesign()
  const artwork = change.artwork ?? [{ id: 'art-1', fileName: 'top.gbr', sizeBytes: 10, sha256: 'a'.repeat(64) }]
  return {
    revisionId: 'revision-b',
    projectId: PROJECT,
    projectName: 'Skua',
    label: 'B',
    version: 7,
    stage: 'awaiting-signature',
    today: '2027-03-05',
    design,
    evaluation: {
      designHash: hashDesign(design),
      limitsHash: '',
      engineVersion: '1.0.0',
      evaluatedAt: '2027-03-01T09:00:00.000Z',
      results: makeEvaluation([
        makeResult('bend-strain', 'meets'),
        makeResult('inside-corners', 'meets'),
        makeResult('packing-notes', 'needs-judgment'),
      ]),
    },
    engineVersion: '1.0.0',
    limitsHash: '',
    items: ITEMS,
    template: DELIVERED_REVIEW_TEMPLATE,
    answers: [
      {
        itemId: 'packing-notes',
        state: 'meets',
        reason: '',
        answeredBy: 'member',
        answeredByName: 'Mara Tolland',
        answeredAt: '2027-03-01T10:00:00.000Z',
        evidence: [],
      },
    ],
    waivers: [],
    threads: [],
    takenOff: [],
    actions: [],
    sharedWith: [{ companyId: BRACKENFOLD, companyName: 'Brackenfold Circuits' }],
    declarations: [
      {
        id: 'declaration-1',
        companyId: BRACKENFOLD,
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
        changes: { count: 2, firstVersion: 2, lastVersion: 3 },
      },
    ],
    reviews: [
      {
        id: 'review-1',
        userId: 'quality',
        name: 'Senna Ruddock',
        role: 'quality',
        note: '',
        madeAt: '2027-03-02T10:00:00.000Z',
        contentHash: hashDeclaredContent({ design, artwork }),
        withdrawnAt: null,
      },
    ],
    acknowledgements: [],
    capacityGrants: ['lead', 'second-lead', 'quality', 'member'].map((userId) => ({
      userId,
      capacity: userId === 'quality' ? 'quality engineer' : 'lead engineer',
      statement: 'answers for the content of the design',
      grantedByName: 'Rosalind Kettleby',
      grantedAt: '2027-02-01T09:00:00.000Z',
    })),
    signOffPolicy: { version: 0, rules: USUAL_SIGN_OFF_POLICY },
    settings: DEFAULT_REVIEW_SETTINGS,
    ...change,
  }
}
