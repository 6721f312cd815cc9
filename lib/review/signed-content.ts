import { z } from 'zod'
import {
  type Design,
  type Evaluation,
  parseStoredJson,
  readStoredDesignDocument,
  readStoredResultsDocument,
  requireStoredShape,
} from '@/lib/engine'
import { listItemStates } from './answers'
import { hashJson } from './canonical'
import type { DeclarationCondition, Done } from './declared'
import { listSignedActions, type SignedAction } from './review-actions'
import { type PinnedSignOffPolicy, pinnedSignOffPolicySchema } from './sign-off-policy'
import type { AnswerState, LookedAt, ReviewSnapshot, ReviewTemplate, Signature, SignedThread, Waiver } from './snapshot'
import { isOpenStage } from './stages'
import { listStandings, type StandingKind } from './standings'

export const SIGNED_CONTENT_FORMAT = 'bendworthy-signed-content'

/** What an item came to at signing. */
export interface SignedAnswer {
  readonly itemId: string
  readonly question: string
  readonly state: AnswerState
  readonly reason: string
  readonly evidence: readonly string[]
  /** Where the person looked; left out where the answer is no statement, so that older content keeps its hash. */
  readonly lookedAt?: LookedAt
}

export interface SignedWaiver {
  readonly itemId: string
  readonly reason: string
  readonly proposedBy: string
  readonly approvedBy: string
  /** Left out where there is none, so that older content keeps its hash. */
  readonly consequence?: string
  readonly validUntil?: string
  readonly quantityLimit?: number
  readonly customerConsent?: string
}

/** A condition with what was decided on it; an action that it became is listed with the actions. */
export interface SignedCondition {
  readonly text: string
  readonly field: string
  readonly fieldLabel: string
  readonly value: string
  readonly state: DeclarationCondition['state']
  readonly decisionNote: string
  readonly done: Done | null
}

/** How one fabricator stood to the content at signing, in its latest words. */
export interface SignedDeclaration {
  readonly companyId: string
  readonly companyName: string
  readonly standing: StandingKind
  readonly takenOffBecause: string
  readonly verdict: string | null
  readonly note: string
  readonly madeByName: string
  readonly madeAt: string
  readonly conditions: readonly SignedCondition[]
}

/** A difference that somebody let stand. */
export interface SignedDifference {
  readonly fact: string
  readonly said: string
  readonly against: string
  readonly reason: string
  readonly acknowledgedBy: string
}

/** Everything that a signature covers, and nothing else. */
export interface SignedContent {
  readonly format: typeof SIGNED_CONTENT_FORMAT
  /** 1 had neither declarations nor threads. */
  readonly formatVersion: 1 | 2
  readonly projectId: string
  readonly revisionId: string
  readonly label: string
  /** Brief, materials, construction, bends and features. */
  /** As stored, in the format of its time: read it by `readSignedDesign`. */
  readonly design: unknown
  /** In the order of file names. */
  readonly artwork: readonly { readonly fileName: string; readonly sha256: string }[]
  readonly answers: readonly SignedAnswer[]
  readonly waivers: readonly SignedWaiver[]
  /** What remains to be done, by whom and by when; left out where there is nothing, so that older content keeps its hash. */
  readonly actions?: readonly SignedAction[]
  /** Absent in format 1, as are the threads. */
  readonly declarations?: readonly SignedDeclaration[]
  /** Threads that are not closed. */
  readonly threads?: readonly SignedThread[]
  /** Where words and numbers differ and somebody let it stand; left out where nobody did. */
  readonly differences?: readonly SignedDifference[]
  /** Left out where the review goes by the catalogue as delivered, which the engine's version stands for. */
  readonly template?: ReviewTemplate
  /** Left out where the review began before there were policies. */
  readonly signOffPolicy?: PinnedSignOffPolicy
  /** Who made design and artwork; left out with the policy. */
  readonly authors?: readonly { readonly name: string; readonly parts: readonly string[] }[]
  readonly engineVersion: string | null
  readonly limitsHash: string
  readonly results: Evaluation | null
}

const byText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

export function buildSignedContent(snapshot: ReviewSnapshot): SignedContent {
  const itemStates = listItemStates(snapshot)
  const actions = listSignedActions(snapshot.actions)
  return {
    format: SIGNED_CONTENT_FORMAT,
    formatVersion: 2,
    projectId: snapshot.projectId,
    revisionId: snapshot.revisionId,
    label: snapshot.label,
    design: getStoredDesign(snapshot),
    artwork: snapshot.artwork
      .map(({ fileName, sha256 }) => ({ fileName, sha256 }))
      .sort((a, b) => byText(a.fileName, b.fileName) || byText(a.sha256, b.sha256)),
    answers: itemStates.map(({ item, state, answer }) => ({
      itemId: item.id,
      question: item.question,
      state,
      reason: answer?.reason ?? '',
      evidence: (answer?.evidence ?? []).map(({ sha256 }) => sha256),
      ...(answer?.lookedAt == null ? {} : { lookedAt: answer.lookedAt }),
    })),
    waivers: itemStates.flatMap(({ item, state, waiver }) =>
      // One waiver covers a family: it is listed with its own item.
      state === 'waived' && waiver !== null && waiver.itemId === item.id
        ? [
            {
              itemId: item.id,
              reason: waiver.reason,
              proposedBy: waiver.proposedByName,
              approvedBy: waiver.decidedByName ?? '',
              ...listWaiverLimits(waiver),
            },
          ]
        : [],
    ),
    ...(actions.length === 0 ? {} : { actions }),
    declarations: signDeclarations(snapshot),
    threads: snapshot.signedThreads ?? signThreads(snapshot),
    ...(snapshot.acknowledgements.length === 0
      ? {}
      : {
          differences: snapshot.acknowledgements.map(({ fact, said, against, reason, byName }) => ({
            fact,
            said,
            against,
            reason,
            acknowledgedBy: byName,
          })),
        }),
    ...(snapshot.template.contentHash === '' ? {} : { template: snapshot.template }),
    ...(snapshot.signOffPolicy === null
      ? {}
      : {
          signOffPolicy: snapshot.signOffPolicy,
          authors: snapshot.authors.map(({ name, parts }) => ({ name, parts })),
        }),
    engineVersion: snapshot.evaluation?.engineVersion ?? null,
    limitsHash: snapshot.evaluation?.limitsHash ?? '',
    results: snapshot.evaluation?.results ?? null,
  }
}

function signDeclarations(snapshot: ReviewSnapshot): SignedDeclaration[] {
  return listStandings(snapshot, hashDeclaredContent(snapshot)).map(
    ({ companyId, companyName, kind, last, takenOff }) => ({
      companyId,
      companyName,
      standing: kind,
      takenOffBecause: takenOff?.reason ?? '',
      verdict: last?.verdict ?? null,
      note: last?.note ?? '',
      madeByName: last?.madeByName ?? '',
      madeAt: last?.madeAt ?? '',
      conditions: (last?.conditions ?? []).map(({ text, field, fieldLabel, value, state, decisionNote, done }) => ({
        text,
        field,
        fieldLabel,
        value,
        state,
        decisionNote,
        done,
      })),
    }),
  )
}

/** A thread that is closed is settled; what is still being said is what a signer goes by. */
function signThreads({ threads }: ReviewSnapshot): SignedThread[] {
  return threads
    .filter(({ state }) => state !== 'closed')
    .map(({ id, kind, title, state, openedByCompanyName, audienceCompanyId, comments }) => ({
      id,
      kind,
      title,
      state,
      companyName: openedByCompanyName,
      audienceCompanyId,
      textHash: hashJson(comments.map((comment) => [comment.id, comment.text])),
    }))
}

function listWaiverLimits({ consequence = '', validUntil, quantityLimit, customerConsent = '' }: Waiver) {
  return {
    ...(consequence === '' ? {} : { consequence }),
    ...(validUntil == null ? {} : { validUntil }),
    ...(quantityLimit == null ? {} : { quantityLimit }),
    ...(customerConsent === '' ? {} : { customerConsent }),
  }
}

/** SHA-256 of the canonical form (RFC 8785) of everything signed. */
export function hashSignedContent(snapshot: ReviewSnapshot): string {
  return hashJson(buildSignedContent(snapshot))
}

/**
 * What signed content binds: the content without the words in which the application asks. A question that is reworded by a later version of the
 * application asks the same, and a rule of policy that it brings is what was usual before: neither is a change of what somebody signed.
 */
export function hashSubstance(content: SignedContent): string {
  const { answers, declarations, signOffPolicy, ...others } = content
  return hashJson({
    ...others,
    answers: answers.map(({ question: _, ...answer }) => answer),
    ...(declarations === undefined
      ? {}
      : {
          declarations: declarations.map(({ conditions, ...declaration }) => ({
            ...declaration,
            conditions: conditions.map(({ fieldLabel: _, ...condition }) => condition),
          })),
        }),
    ...(signOffPolicy === undefined ? {} : { signOffPolicy: pinnedSignOffPolicySchema.parse(signOffPolicy) }),
  })
}

const substances = new WeakMap<ReviewSnapshot, string>()

/** The same of the present content. Snapshots never change, so each is read once. */
export function hashPresentSubstance(snapshot: ReviewSnapshot): string {
  const known = substances.get(snapshot)
  if (known !== undefined) return known
  const found = hashSubstance(buildSignedContent(snapshot))
  substances.set(snapshot, found)
  return found
}

/** SHA-256 of the canonical form of a design document. */
export function hashDesign(design: unknown): string {
  return hashJson(design)
}

/** The design document that signatures, declarations and evaluations cover. */
export function getStoredDesign(snapshot: Pick<ReviewSnapshot, 'design' | 'storedDesign'>): unknown {
  return snapshot.storedDesign ?? snapshot.design
}

/** The design of signed content, in today's format. */
export function readSignedDesign(content: Pick<SignedContent, 'design'>): Design {
  return readStoredDesignDocument(content.design)
}

/** By what signed content is known; the design and the results in it have readers of their own. */
const signedSchema = z.looseObject({
  format: z.literal(SIGNED_CONTENT_FORMAT),
  formatVersion: z.literal([1, 2]),
  design: z.unknown(),
  artwork: z.array(z.looseObject({ fileName: z.string(), sha256: z.string() })),
  answers: z.array(z.looseObject({ itemId: z.string(), question: z.string(), state: z.string(), reason: z.string() })),
  waivers: z.array(z.looseObject({ itemId: z.string(), reason: z.string() })),
  declarations: z
    .array(z.looseObject({ companyName: z.string(), standing: z.string(), conditions: z.array(z.looseObject({})) }))
    .optional(),
  threads: z
    .array(
      z.looseObject({
        id: z.string(),
        kind: z.string(),
        title: z.string(),
        state: z.string(),
        companyName: z.string(),
        audienceCompanyId: z.string().nullable(),
        textHash: z.string(),
      }),
    )
    .optional(),
  engineVersion: z.string().nullable(),
  limitsHash: z.string(),
  results: z.unknown(),
})

const SIGNED_CONTENT = 'what a signature covers'

function requireSignedContent(document: unknown): asserts document is SignedContent {
  requireStoredShape(SIGNED_CONTENT, signedSchema, document)
}

/**
 * What a signature covers, from the canonical form that was kept with it: its results in today's shape, its design as it was stored.
 *
 * @throws StoredDocumentError for what is damaged
 */
export function readSignedContent(contentJson: string): SignedContent {
  const signed = parseStoredJson(SIGNED_CONTENT, contentJson)
  requireSignedContent(signed)
  return { ...signed, results: signed.results === null ? null : readStoredResultsDocument(signed.results) }
}

/** What a fabricator declares on: the design and the artwork. The team's answers and waivers do not move it. */
export function hashDeclaredContent(snapshot: Pick<ReviewSnapshot, 'design' | 'storedDesign' | 'artwork'>): string {
  return hashJson({
    design: getStoredDesign(snapshot),
    artwork: snapshot.artwork
      .map(({ fileName, sha256 }) => ({ fileName, sha256 }))
      .sort((a, b) => byText(a.fileName, b.fileName) || byText(a.sha256, b.sha256)),
  })
}

/**
 * Signatures that stand: not voided, and the content that is stored with each says what the present content says. What was signed before the release stays signed: actions
 * that live on after it move none of it.
 */
export function listLiveSignatures(snapshot: ReviewSnapshot): Signature[] {
  const unvoided = snapshot.signatures.filter((signature) => signature.voided === null)
  if (unvoided.length === 0 || !isOpenStage(snapshot.stage)) return unvoided
  const substance = hashPresentSubstance(snapshot)
  return unvoided.filter(({ substanceHash }) => substanceHash === substance)
}
