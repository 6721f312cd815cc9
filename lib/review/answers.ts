import {
  getOutcomeVerdict,
  type Issue,
  type ItemBasis,
  type ItemResult,
  keepFollowers,
  type Result,
} from '@/lib/engine'
import { roundToDigits } from '@/lib/engine/numerics'
import { hashJson } from './canonical'
import {
  ANSWER_WORDS,
  type AnswerState,
  type LookedAt,
  type RecordedAnswer,
  type ReviewItem,
  type ReviewSnapshot,
  type Waiver,
} from './snapshot'
import { explainDependentWaiver } from './waiver-independence'

/** What a person may say about an item, given what the calculation says. `open` takes an answer back. */
const LEGAL_STATES: Readonly<Record<ItemResult['verdict'], readonly AnswerState[]>> = {
  meets: ['open', 'meets', 'concern'],
  'thin-margin': ['open', 'concern'],
  fails: ['open', 'concern'],
  'cannot-tell': ['open', 'meets', 'concern'],
  // What is missing is filled in: nobody's word stands in for an input.
  'not-computed': ['open', 'concern', 'not-applicable'],
  'not-applicable': ['open', 'not-applicable', 'concern'],
  'needs-judgment': ['open', 'meets', 'concern', 'not-applicable'],
}

export interface AnswerInput {
  readonly state: AnswerState
  readonly reason: string
  /** Where the person looked; needed where the answer is a statement. */
  readonly lookedAt?: { readonly sheet: string; readonly layer: string; readonly sha256: string } | undefined
}

/** What an answer is recorded as; `lookedAt` is null where the answer is no statement. */
interface CheckedAnswer {
  readonly state: AnswerState
  readonly reason: string
  readonly lookedAt: LookedAt | null
}

/**
 * "Meets" on what somebody recorded as seen, or on what no calculation covers, is that person's word, and says where they looked: at the artwork, the drawing
 * or the report of a test.
 */
export function needsLookedAt(result: Pick<ItemResult, 'basis' | 'verdict'>, state: AnswerState): boolean {
  return state === 'meets' && (result.basis === 'stated' || result.verdict === 'cannot-tell')
}

/** A file of the revision that a statement may rest on. */
export interface ViewedFile {
  readonly fileName: string
  readonly sha256: string
}

/** States that a person may choose for an item with this verdict; the first is always `open`. */
export function listLegalStates(verdict: ItemResult['verdict']): readonly AnswerState[] {
  return LEGAL_STATES[verdict]
}

/** Whether this state needs a reason in words, given the verdict. */
export function needsReason(verdict: ItemResult['verdict'], state: AnswerState): boolean {
  if (state === 'not-applicable') return verdict !== 'not-applicable'
  // "Meets" on what no calculation covers stands on a person's evidence alone.
  return state === 'waived' || (state === 'meets' && verdict === 'cannot-tell')
}

/**
 * Is this answer legal? A failed calculation cannot be overruled by an answer; that takes a waiver.
 *
 * @param result  the item's present result; null where nothing has been evaluated yet
 * @param files  what a statement may have been looked at in: artwork of the revision, and evidence attached to the item
 */
export function checkAnswer(
  result: ItemResult | null,
  input: AnswerInput,
  files: readonly ViewedFile[] = [],
): Result<CheckedAnswer> {
  const refuse = (code: string, path: string, message: string): Result<CheckedAnswer> => ({
    ok: false,
    issues: [{ code, path: [path], message } satisfies Issue],
  })
  if (result === null) return refuse('not-evaluated', 'state', 'the item has no result yet: save the design first')
  const { verdict } = result
  if (input.state === 'waived') {
    return refuse('waiver-needed', 'state', 'an item becomes waived when a lead approves a waiver; propose one instead')
  }
  if (!LEGAL_STATES[verdict].includes(input.state)) {
    return refuse('overrules-calculation', 'state', OVERRULED[verdict])
  }
  const reason = input.reason.trim()
  if (needsReason(verdict, input.state) && reason === '') {
    return refuse(
      'reason-missing',
      'reason',
      input.state === 'meets'
        ? 'state the evidence that the item is met, since no calculation covers it'
        : 'say why the item does not apply',
    )
  }
  if (!needsLookedAt(result, input.state)) return { ok: true, value: { state: input.state, reason, lookedAt: null } }
  const sheet = input.lookedAt?.sheet.trim() ?? ''
  const layer = input.lookedAt?.layer.trim() ?? ''
  if (sheet === '') return refuse('sheet-missing', 'lookedAt.sheet', 'name the sheet on which you looked')
  if (layer === '') return refuse('layer-missing', 'lookedAt.layer', 'name the layer or view on which you looked')
  const file = files.find(({ sha256 }) => sha256 === input.lookedAt?.sha256)
  if (file === undefined) {
    return refuse(
      'file-missing',
      'lookedAt.sha256',
      'choose the file in which you looked: artwork, or one attached here',
    )
  }
  return { ok: true, value: { state: input.state, reason, lookedAt: { sheet, layer, ...file } } }
}

const OVERRULED: Readonly<Record<ItemResult['verdict'], string>> = {
  meets: 'the calculation decided this item; it applies to this design',
  'thin-margin':
    'the calculation holds at nominal only, not at the worst corner of tolerances and material constants; answer "concern", change the design, or propose a waiver',
  fails: 'the calculation failed; change the design, or propose a waiver',
  'cannot-tell': 'the item applies, and no calculation covers it: answer on the evidence of a test, or raise a concern',
  'not-computed':
    'an input is missing: fill it in, say why the item does not apply, raise a concern or propose a waiver',
  'not-applicable': 'the design rules this item out; if it does apply, answer "concern" and say why',
  'needs-judgment': 'this answer is not possible for the item',
}

/** Significant digits that a waiver's basis keeps: the last ones differ between machines. */
const BASIS_DIGITS = 6

/**
 * Hash of the numbers that a waiver is about: verdict, and value, limit and places of each decided outcome.
 *
 * @param followers  what follows from the item and is waived with it: by item, verdict and places, so that another one is not waived unseen
 */
export function hashWaiverBasis(result: ItemResult, followers: readonly ItemResult[] = []): string {
  const round = (value: number) => roundToDigits(value, BASIS_DIGITS)
  return hashJson({
    itemId: result.itemId,
    verdict: result.verdict,
    outcomes: result.outcomes.map((outcome) =>
      outcome.kind === 'decided'
        ? {
            verdict: outcome.verdict,
            value: round(outcome.value.value),
            unit: outcome.value.unit,
            limit: round(outcome.limit.value),
            // Left out where there is none, so that a waiver on anything but a window keeps its hash.
            upperLimit: outcome.limit.upperValue === undefined ? undefined : round(outcome.limit.upperValue),
            places: outcome.places.map((place) => `${place.kind}:${place.id}`),
          }
        : outcome.kind === 'withheld'
          ? {
              verdict: outcome.verdict,
              band: outcome.band,
              value: outcome.value === null ? null : round(outcome.value.value),
              places: outcome.places.map((place) => `${place.kind}:${place.id}`),
            }
          : outcome.kind === 'said'
            ? { verdict: outcome.verdict, places: outcome.places.map((place) => `${place.kind}:${place.id}`) }
            : { verdict: outcome.kind },
    ),
    // Left out where nothing follows, so that a waiver of one item alone keeps its hash.
    followers:
      followers.length === 0
        ? undefined
        : followers.map(({ itemId, verdict, outcomes }) => ({
            itemId,
            verdict,
            places: outcomes
              .filter((outcome) => getOutcomeVerdict(outcome) === verdict)
              .map(({ places }) => places.map((place) => `${place.kind}:${place.id}`)),
          })),
  })
}

/** May a waiver be proposed for this item, with this reason? */
export function checkWaiverProposal(
  result: ItemResult | null,
  answer: RecordedAnswer | null,
  reason: string,
  { followers, follows }: Pick<ItemState, 'followers' | 'follows'> = { followers: [], follows: [] },
): Result<{ reason: string; basisHash: string }> {
  const refuse = (code: string, path: string, message: string): Result<{ reason: string; basisHash: string }> => ({
    ok: false,
    issues: [{ code, path: [path], message }],
  })
  if (result === null) return refuse('not-evaluated', 'itemId', 'the item has no result yet: save the design first')
  const isConcern =
    ['fails', 'thin-margin', 'cannot-tell', 'not-computed'].includes(result.verdict) ||
    (answer !== null && answer.state === 'concern')
  if (!isConcern) {
    return refuse('nothing-to-waive', 'itemId', 'a waiver is for an item that failed or raised a concern')
  }
  if (follows.length > 0) {
    const questions = follows.map(({ question }) => `"${question}"`).join(' and ')
    return refuse('follows', 'itemId', `this item follows from ${questions}; a waiver of that covers it`)
  }
  const trimmed = reason.trim()
  if (trimmed === '') {
    return refuse('reason-missing', 'reason', 'say why the revision may be released against this item')
  }
  return { ok: true, value: { reason: trimmed, basisHash: hashWaiverBasis(result, followers) } }
}

/**
 * May this person decide on the waiver now? The role is policy's question; this is about the waiver itself.
 *
 * @param decision  `whyNot`: what `explainNoApproval` says of the person who decides
 */
export function checkWaiverDecision(
  waiver: Waiver,
  result: ItemResult | null,
  decision: { readonly approve: boolean; readonly whyNot: string },
  followers: readonly ItemResult[] = [],
): Result<Waiver> {
  const refuse = (code: string, message: string): Result<Waiver> => ({
    ok: false,
    issues: [{ code, path: ['waiverId'], message }],
  })
  if (waiver.state !== 'proposed') return refuse('clash', `the waiver is already ${waiver.state}`)
  if (decision.approve && decision.whyNot !== '') return refuse('not-independent', decision.whyNot)
  if (decision.approve && (result === null || !coversBasis(waiver, result, followers))) {
    return refuse('stale', 'the numbers have changed since the waiver was proposed; propose it again')
  }
  return { ok: true, value: waiver }
}

/** Is the waiver about these numbers: with all that follows from them, or of the item alone? */
export function coversBasis(
  waiver: Pick<Waiver, 'basisHash'>,
  result: ItemResult,
  followers: readonly ItemResult[],
): boolean {
  return waiver.basisHash === hashWaiverBasis(result, followers) || waiver.basisHash === hashWaiverBasis(result)
}

/** Where an item stands when calculation, person and waiver are taken together. */
export interface ItemState {
  readonly item: ReviewItem
  readonly result: ItemResult | null
  readonly state: AnswerState
  readonly decidedBy: 'calculation' | 'statement' | 'person' | 'waiver' | 'nobody'
  /** What the state rests on: a calculation, a typed number or term, what somebody saw and stands by, or a person's judgment. */
  readonly basis: ItemBasis
  readonly answer: RecordedAnswer | null
  /** The waiver that stands, or the one proposed. */
  readonly waiver: Waiver | null
  /** Why a recorded answer or waiver does not count; empty where all counts. */
  readonly setAside: string
  /** The concern must be waived before release. */
  readonly needsWaiver: boolean
  /** Items whose failure brings this one's: they must be mended or waived, and this one goes with them. Empty where it stands by itself. */
  readonly follows: readonly ReviewItem[]
  /** Results of the items that follow from this one. */
  readonly followers: readonly ItemResult[]
}

/** `Follows from "..."`; empty where the item stands by itself. The one wording of every exit. */
export function describeFollows(follows: readonly { readonly question: string }[]): string {
  return follows.length === 0 ? '' : `Follows from ${follows.map(({ question }) => `"${question}"`).join(' and ')}`
}

/** Blockers, views, waits and signed content each ask it of one snapshot, which nobody changes. */
const known = new WeakMap<ReviewSnapshot, readonly ItemState[]>()

/** State of every catalogue item of the review, in catalogue order. */
export function listItemStates(snapshot: ReviewSnapshot): readonly ItemState[] {
  const found = known.get(snapshot) ?? computeItemStates(snapshot)
  known.set(snapshot, found)
  return found
}

function computeItemStates(snapshot: ReviewSnapshot): ItemState[] {
  const ids = new Set(snapshot.items.map(({ id }) => id))
  const recorded = (snapshot.evaluation?.results.items ?? []).filter(({ itemId }) => ids.has(itemId))
  const results = new Map(keepFollowers(recorded).map((result) => [result.itemId, result]))
  const answers = new Map(snapshot.answers.map((answer) => [answer.itemId, answer]))
  const followers = new Map<string, ItemResult[]>()
  for (const result of results.values()) {
    for (const rootId of result.followsFrom ?? []) followers.set(rootId, [...(followers.get(rootId) ?? []), result])
  }
  const own = snapshot.items.map((item) => {
    const all = snapshot.waivers.filter((waiver) => waiver.itemId === item.id)
    const waivers = all.filter((waiver) => explainDependentWaiver(snapshot, item, waiver) === '')
    const result = results.get(item.id) ?? null
    const itemState = getItemState(item, result, answers.get(item.id) ?? null, waivers, followers.get(item.id))
    return itemState.state === 'waived' ? itemState : explainSetAside(snapshot, itemState, all)
  })
  const byId = new Map(own.map((itemState) => [itemState.item.id, itemState]))
  return own.map((itemState) => joinFamily(itemState, byId))
}

/** An approval that the policy does not count is no waiver, and the checklist says why. */
function explainSetAside(
  snapshot: Pick<ReviewSnapshot, 'signOffPolicy' | 'authors' | 'answers'>,
  itemState: ItemState,
  waivers: readonly Waiver[],
): ItemState {
  const covering = waivers.findLast(
    (waiver) => itemState.result !== null && coversBasis(waiver, itemState.result, itemState.followers),
  )
  const why = covering === undefined ? '' : explainDependentWaiver(snapshot, itemState.item, covering)
  return why === '' ? itemState : { ...itemState, setAside: why }
}

/**
 * What follows from another item neither blocks nor is waived by itself: its root does and is. It stands by itself where a person raised a concern of their own, or where the
 * root's waiver was given on the root alone.
 */
function joinFamily(itemState: ItemState, byId: ReadonlyMap<string, ItemState>): ItemState {
  const rootIds = itemState.result?.followsFrom ?? []
  const roots = rootIds.flatMap((id) => byId.get(id) ?? [])
  const isOwnConcern = itemState.state === 'concern' && itemState.decidedBy === 'person'
  const isAlone = roots.some(({ state, waiver, result, followers }) => {
    const hash = result === null ? '' : hashWaiverBasis(result, followers)
    return state === 'waived' && waiver?.basisHash !== hash
  })
  if (roots.length === 0 || isOwnConcern || isAlone) return itemState
  const follows = roots.map(({ item }) => item)
  const [first] = roots
  const isWaived = itemState.state === 'waived'
  if (!isWaived && first !== undefined && roots.every(({ state }) => state === 'waived')) {
    const { waiver } = first
    return { ...itemState, follows, state: 'waived', decidedBy: 'waiver', waiver, setAside: '', needsWaiver: false }
  }
  return { ...itemState, follows, needsWaiver: false }
}

export function getItemState(
  item: ReviewItem,
  result: ItemResult | null,
  answer: RecordedAnswer | null,
  waivers: readonly Waiver[],
  followers: readonly ItemResult[] = [],
): ItemState {
  const family = { follows: [], followers }
  const base = { item, result, answer, basis: result?.basis ?? ('judgment' as const), ...family }
  if (result === null) {
    return { ...base, state: 'open', decidedBy: 'nobody', waiver: null, setAside: '', needsWaiver: false }
  }
  const own = stateWithoutWaiver(result, answer)
  // A thin margin holds at nominal: the person who answers "concern" there has seen it, which must not cost them a waiver.
  const isRaisedByPerson = own.state === 'concern' && own.decidedBy === 'person' && result.verdict !== 'thin-margin'
  const failed = result.verdict === 'fails' || (isRaisedByPerson && item.concernNeedsWaiver)
  const canBeWaived = own.state === 'concern' || own.state === 'open'
  const approved = waivers.filter((waiver) => waiver.state === 'approved' && waiver.isLapsed !== true)
  const ended = waivers.findLast((waiver) => waiver.state === 'approved' && waiver.isLapsed === true)
  const familyHash = approved.length > 0 ? hashWaiverBasis(result, followers) : ''
  // One that covers what follows too goes before one of the item alone.
  const standing =
    approved.find(({ basisHash }) => basisHash === familyHash) ??
    approved.find((waiver) => coversBasis(waiver, result, followers))
  if (standing !== undefined && canBeWaived) {
    return { ...base, state: 'waived', decidedBy: 'waiver', waiver: standing, setAside: '', needsWaiver: false }
  }
  const proposed = waivers.find((waiver) => waiver.state === 'proposed') ?? null
  const lapsed = canBeWaived && approved.length > 0
  return {
    ...base,
    ...own,
    basis: own.decidedBy === 'person' ? (needsLookedAt(result, own.state) ? 'stated' : 'judgment') : base.basis,
    waiver: proposed,
    setAside: lapsed
      ? 'the approved waiver covers other numbers than the present ones'
      : canBeWaived && ended !== undefined
        ? `the approved waiver lapsed: it was valid until ${ended.validUntil ?? 'a day that is not stated'}`
        : own.setAside,
    needsWaiver: failed,
  }
}

function stateWithoutWaiver(
  result: ItemResult,
  answer: RecordedAnswer | null,
): Pick<ItemState, 'state' | 'decidedBy' | 'setAside'> {
  const computed = COMPUTED_STATE[result.verdict]
  const byCalculation = {
    state: computed,
    decidedBy:
      computed === 'open'
        ? ('nobody' as const)
        : result.basis === 'stated'
          ? ('statement' as const)
          : ('calculation' as const),
    setAside: '',
  }
  if (answer === null || answer.state === 'open') return byCalculation
  // A concern is about the part, whatever the question was; any other answer was about another question.
  if (answer.earlierQuestion !== undefined && answer.state !== 'concern') {
    const word = ANSWER_WORDS[answer.state]
    return {
      ...byCalculation,
      setAside: `to confirm: the answer "${word}" was given to "${answer.earlierQuestion}", which this item replaces`,
    }
  }
  if (!LEGAL_STATES[result.verdict].includes(answer.state)) {
    return {
      ...byCalculation,
      setAside: `the answer "${answer.state}" was given before the calculation decided otherwise`,
    }
  }
  if (needsReason(result.verdict, answer.state) && answer.reason.trim() === '') {
    return { ...byCalculation, setAside: `the answer "${answer.state}" lacks the reason that it needs now` }
  }
  const isStatement = needsLookedAt(result, answer.state)
  // An answer from before statements said where somebody looked confirms nothing.
  if (isStatement && (answer.lookedAt ?? null) === null) {
    return {
      ...byCalculation,
      setAside: `the answer "${ANSWER_WORDS[answer.state]}" does not say where somebody looked`,
    }
  }
  const lapsed = explainLapse(answer)
  if (lapsed !== '') return { ...byCalculation, setAside: byCalculation.state === answer.state ? '' : lapsed }
  return { state: answer.state, decidedBy: 'person', setAside: '' }
}

/**
 * Why an answer that lets the revision pass no longer does: it was about other inputs. A concern stays until somebody
 * takes it back, whatever becomes of the inputs.
 */
function explainLapse(answer: RecordedAnswer): string {
  if (answer.state === 'concern') return ''
  if (answer.isFromElsewhere === true) {
    return `the answer "${ANSWER_WORDS[answer.state]}" comes from a fabricator who does not see this revision`
  }
  if (answer.isFileGone === true) {
    return `the answer "${ANSWER_WORDS[answer.state]}" was given on ${answer.lookedAt?.fileName ?? 'a file'}, which is no longer there`
  }
  return (answer.changedInputs ?? []).length > 0
    ? `the answer "${ANSWER_WORDS[answer.state]}" was given on inputs that have changed since`
    : ''
}

/** What the calculation alone makes of an item. A thin margin is a concern that is seen, not a failure. */
const COMPUTED_STATE: Readonly<Record<ItemResult['verdict'], AnswerState>> = {
  meets: 'meets',
  'thin-margin': 'concern',
  fails: 'concern',
  'cannot-tell': 'open',
  'not-computed': 'open',
  'not-applicable': 'not-applicable',
  'needs-judgment': 'open',
}
