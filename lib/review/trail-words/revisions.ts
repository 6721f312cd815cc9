import { isStage, STAGE_LABELS } from '../stages'
import { because, countInputs, type StoredDetails, word } from './word'

interface Move {
  readonly from: string
  readonly to: string
}

function stage(details: StoredDetails<Move>, key: keyof Move): string {
  const value = details.text(key)
  return isStage(value) ? STAGE_LABELS[value] : value
}

type DesignChange = { designVersion: number; designHash: string; changeCount: number; changes: string[] }
type Confirmed = { meaning?: string; confirmedBy?: string }
type WaiverDecision = Confirmed & {
  itemId: string
  question: string
  reason: string
  /** Where the waiver asks for it. */
  customerConsent?: string
}
type Declaration = Confirmed & { company: string; note: string; contentHash: string; conditions?: string[] }
type Condition = { company: string; condition: string; reason: string; done?: string }
type OffRelease = { company: string; reason: string }
type PolicyMove = { tightened: string[]; loosened: string[]; reason: string }
type Released = Confirmed & {
  contentHash: string
  /** In records from before the package held its own release. */
  packageSha256?: string
  /** When its documents were made; it stands in each of them. */
  releasedAt?: string
  isConditional?: boolean
  /** In words: for what, how many, until when. */
  terms?: string
  conditions?: string
  changeNumber?: string
  reason: string
  effectivity?: string
  replaces?: string | null
}
type Artwork = { fileName: string; sha256: string }

/** Records of before say nothing of it. */
const leaveOut = (count: string) =>
  count === '' || count === '0' ? '' : `, and left ${count} that tell what somebody saw`

/** A revision on its way from the first design to release. */
export const REVISION_WORDS = {
  'revision-created': word<{ label: string; origin: string; basedOn: string | null; designHash: string }>()({
    subject: 'revision',
    concernsFabricators: true,
    sentence: (details) => `created the revision (${details.text('origin')})`,
  }),
  // Which project got it is not said: not everybody here may know of it.
  'design-copied-elsewhere': word<{ label: string; designHash: string; toRevisionId: string }>()({
    subject: 'revision',
    sentence: () => 'began a revision of another project with a copy of this design',
  }),
  'construction-kept': word<{ entryId: string; name: string; designHash: string }>()({
    subject: 'revision',
    sentence: (details) => `kept this construction for the workspace's other projects as “${details.text('name')}”`,
  }),
  'answers-carried-over': word<{ from: string; fromId: string; answerCount: number; leftCount: number }>()({
    subject: 'revision',
    sentence: (details) =>
      `carried over ${details.text('answerCount')} answers from revision ${details.text('from')}${leaveOut(details.text('leftCount'))}`,
  }),
  'design-saved': word<DesignChange>()({
    subject: 'revision',
    concernsFabricators: true,
    sentence: (details) => `changed the design (${countInputs(details)})`,
  }),
  'design-imported': word<DesignChange>()({
    subject: 'revision',
    concernsFabricators: true,
    sentence: (details) => `imported a design (${countInputs(details)} changed)`,
  }),
  'results-recorded': word<{ engineVersion: string }>()({
    subject: 'revision',
    sentence: (details) => `recorded results of engine ${details.text('engineVersion')}`,
  }),
  'catalogue-updated': word<{
    from: number
    to: number
    changes: string[]
    reopened: string[]
    engineVersion: string
    /** Absent where the project follows none. */
    profiles?: string[]
  }>()({
    subject: 'revision',
    sentence: (details) =>
      `updated the review from version ${details.text('from')} of the catalogue to version ${details.text('to')}`,
  }),
  'sign-off-policy-moved': word<PolicyMove & { version: number }>()({
    subject: 'revision',
    sentence: (details) =>
      `changed the sign-off policy of the project to version ${details.text('version')}: what was tightened holds here at once${because(details)}`,
  }),
  'sign-off-policy-followed': word<PolicyMove & { from: number | null; to: number }>()({
    subject: 'revision',
    sentence: (details) =>
      `put the revision under version ${details.text('to')} of the sign-off policy${because(details)}`,
  }),
  'declared-reviewed': word<Confirmed & { note: string; contentHash: string }>()({
    subject: 'review',
    sentence: () => 'declared design and artwork reviewed',
  }),
  'review-withdrawn': word<Confirmed & { reason: string }>()({
    subject: 'review',
    sentence: (details) => `withdrew their review${because(details)}`,
  }),
  'revision-shared': word<{ company: string }>()({
    subject: 'company',
    audience: 'sharing-company',
    sentence: (details) => `shared the revision with ${details.text('company')}`,
  }),
  'revision-unshared': word()({ subject: 'company', sentence: () => 'ended the sharing of the revision' }),
  'revision-looked-at': word<{ designHash: string }>()({
    subject: 'revision',
    sentence: () => 'looked at the design',
  }),
  'item-answered': word<{
    question: string
    state: string
    reason: string
    verdict: string | undefined
    /** The answer that it replaced. */
    before?: { state: string; reason: string }
    /** Where the person looked, of a statement of what they saw. */
    lookedAt?: { sheet: string; layer: string; fileName: string; sha256: string }
  }>()({
    subject: 'item',
    sentence: (details) => `answered "${details.text('question')}": ${details.text('state')}`,
  }),
  'waiver-proposed': word<{
    itemId: string
    question: string
    reason: string
    headline: string | undefined
    validUntil?: string
    quantityLimit?: number
    needsCustomerConsent?: boolean
  }>()({
    subject: 'waiver',
    sentence: (details) => `proposed a waiver of "${details.text('question')}"${because(details)}`,
  }),
  'waiver-approved': word<WaiverDecision>()({
    subject: 'waiver',
    sentence: (details) => `approved the waiver of "${details.text('question')}"`,
  }),
  'waiver-declined': word<WaiverDecision>()({
    subject: 'waiver',
    sentence: (details) => `declined the waiver of "${details.text('question')}"${because(details)}`,
  }),
  'artwork-added': word<Artwork & { replaced: string | undefined }>()({
    subject: 'artwork',
    sentence: (details) => `added the artwork ${details.text('fileName')}`,
  }),
  'artwork-removed': word<Artwork>()({
    subject: 'artwork',
    sentence: (details) => `removed the artwork ${details.text('fileName')}`,
  }),
  'artwork-read': word<{ fileCount: number; readingKey: string }>()({
    subject: 'revision',
    sentence: (details) => `read the artwork: ${details.text('fileCount')} files`,
  }),
  'artwork-role-said': word<{ fileName: string; role: string }>()({
    subject: 'revision',
    sentence: (details) =>
      details.text('role') === ''
        ? `set the role of ${details.text('fileName')} back to what the files say`
        : `set the role of ${details.text('fileName')} to ${details.text('role')}`,
  }),
  'declared-buildable': word<Declaration>()({
    subject: 'declaration',
    audience: 'declaration-readers',
    sentence: (details) => `declared for ${details.text('company')}: buildable`,
  }),
  'declared-with-conditions': word<Declaration>()({
    subject: 'declaration',
    audience: 'declaration-readers',
    sentence: (details) => `declared for ${details.text('company')}: buildable with conditions`,
  }),
  'declared-not-buildable': word<Declaration>()({
    subject: 'declaration',
    audience: 'declaration-readers',
    sentence: (details) => `declared for ${details.text('company')}: not buildable`,
  }),
  'condition-taken-over': word<Condition>()({
    subject: 'condition',
    audience: 'condition-readers',
    sentence: (details) =>
      `took over the condition of ${details.text('company')} "${details.text('condition')}": ${details.text('done')}`,
  }),
  'condition-declined': word<Condition>()({
    subject: 'condition',
    audience: 'condition-readers',
    sentence: (details) =>
      `declined the condition of ${details.text('company')} "${details.text('condition')}"${because(details)}`,
  }),
  'condition-made-action': word<Condition & { action: string; owner: string; due: string }>()({
    subject: 'condition',
    audience: 'condition-readers',
    sentence: (details) =>
      `turned the condition of ${details.text('company')} "${details.text('condition')}" into an action of ${details.text('owner')}, due ${details.text('due')}: ${details.text('action')}`,
  }),
  'taken-off-release': word<OffRelease>()({
    subject: 'company',
    audience: 'condition-readers',
    sentence: (details) => `took ${details.text('company')} off this release${because(details)}`,
  }),
  'put-back-on-release': word<OffRelease>()({
    subject: 'company',
    audience: 'condition-readers',
    sentence: (details) => `put ${details.text('company')} back on this release`,
  }),
  'stage-moved': word<Confirmed & { from: string; to: string; reason: string }>()({
    subject: 'revision',
    audience: 'stage-readers',
    concernsFabricators: true,
    sentence: (details) =>
      `moved the revision from ${stage(details, 'from')} to ${stage(details, 'to')}${because(details)}`,
  }),
  'revision-signed': word<
    Confirmed & { capacity: string; statement: string; contentHash: string; partsRoot?: string }
  >()({
    subject: 'signature',
    sentence: (details) => `signed the revision as ${details.text('capacity')}`,
  }),
  'signature-voided': word<{ reason: string; changes: string[]; because?: string }>()({
    subject: 'signature',
    audience: 'signer-and-leads',
    sentence: (details) =>
      `voided a signature${details.text('because') === '' ? '' : `, because of a change by ${details.text('because')}`} (${details.text('reason')})`,
  }),
  'act-refused': word<{ act: string; reason: string }>()({
    subject: 'revision',
    sentence: (details) => `was refused (${details.text('act').replaceAll('-', ' ')}): ${details.text('reason')}`,
  }),
  'revision-released': word<Released>()({
    subject: 'revision',
    concernsFabricators: true,
    sentence: (details) => {
      const how = details.isTrue('isConditional') ? 'released the revision conditionally' : 'released the revision'
      const terms = details.text('terms')
      return `${how}${terms === '' ? '' : `, ${terms}`}${because(details)}`
    },
  }),
  'package-issued': word<{ edition: string; sha256: string; sizeBytes: number }>()({
    subject: 'package',
    audience: 'release-readers',
    sentence: (details) => `issued the package for ${details.text('edition')}`,
  }),
  'package-fetched': word<{ edition: string; sha256: string; stage: string }>()({
    subject: 'receipt',
    sentence: (details) =>
      `fetched the package for ${details.text('edition')}${details.text('stage') === 'released' ? '' : `, marked ${details.text('stage')}`}`,
  }),
} as const
