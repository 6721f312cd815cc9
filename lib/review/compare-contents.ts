import type { DecidedOutcome, DecidingEnd, Design, Evaluation, ItemResult, Limit, Quantity } from '@/lib/engine'
import { listLegalStates } from './answers'
import { compareDesigns, type DesignArea } from './compare-designs'
import { listNumberMoves, listVerdictMoves, type NumberMove } from './compare-results'
import { listChangedInputs } from './item-inputs'
import type { AnswerState } from './snapshot'

/** What an item's answer was, on one side of a comparison. */
export interface ComparedAnswer {
  readonly itemId: string
  readonly question: string
  readonly state: AnswerState
  readonly reason: string
  /** `unknown` where only the state was kept, as in a signed content. */
  readonly decidedBy: 'calculation' | 'statement' | 'person' | 'waiver' | 'nobody' | 'unknown'
  readonly byName: string
}

/** One side of a comparison: a revision as it stands, as it was signed, or as a proposal would have it. */
export interface ComparedContent {
  readonly design: Design
  readonly artwork: readonly { readonly fileName: string; readonly sha256: string }[]
  readonly evaluation: Evaluation | null
  /** Null where the side has none of its own, as a proposal: the answers of the other side are then held against it. */
  readonly answers: readonly ComparedAnswer[] | null
}

export interface InputChange {
  readonly area: DesignArea | 'artwork'
  readonly sentence: string
  readonly before: string | null
  readonly after: string | null
}

/** What an item came to on one side: the outcome that decided, where there is one. */
export interface VerdictSide {
  readonly verdict: ItemResult['verdict']
  readonly headline: string
  readonly place: string
  readonly value: Quantity | null
  readonly limit: Limit | null
  /** Which end decides, where the limit is a window. */
  readonly decidingEnd: DecidingEnd | null
}

export interface MovedVerdict {
  readonly itemId: string
  readonly before: VerdictSide | null
  readonly after: VerdictSide | null
}

/** An answer of the earlier side that does not hold for the later one. */
export interface LapsedAnswer {
  readonly itemId: string
  readonly question: string
  readonly state: AnswerState
  readonly reason: string
  readonly byName: string
  /** Why, a sentence each: inputs that changed, or a calculation that decides otherwise. */
  readonly because: readonly string[]
  /** What the later side says; null where it says nothing of its own. */
  readonly now: AnswerState | null
}

export interface ContentComparison {
  readonly changes: readonly InputChange[]
  readonly verdicts: readonly MovedVerdict[]
  readonly numbers: readonly NumberMove[]
  readonly answers: readonly LapsedAnswer[]
}

/** Differing inputs, moved verdicts with value and limit, moved numbers, and answers that no longer stand. */
export function compareContents(before: ComparedContent, after: ComparedContent): ContentComparison {
  const design = compareDesigns(before.design, after.design)
  const artwork = compareArtwork(before, after)
  return {
    changes: [
      ...design.map(({ area, sentence, before: a, after: b }) => ({ area, sentence, before: a, after: b })),
      ...artwork,
    ],
    verdicts: compareVerdicts(before.evaluation, after.evaluation),
    numbers: listNumberMoves(before.evaluation, after.evaluation),
    answers: listLapsedAnswers(before, after, (itemId) =>
      listChangedInputs(itemId, { design, isArtworkChanged: artwork.length > 0 }),
    ),
  }
}

function compareArtwork(before: ComparedContent, after: ComparedContent): InputChange[] {
  const old = new Map(before.artwork.map((file) => [file.fileName, file.sha256]))
  const changes: InputChange[] = []
  const add = (fileName: string, what: string, a: string | null, b: string | null) =>
    changes.push({ area: 'artwork', sentence: `artwork ${fileName} ${what}`, before: a, after: b })
  for (const { fileName, sha256 } of after.artwork) {
    const earlier = old.get(fileName)
    old.delete(fileName)
    if (earlier === undefined) add(fileName, 'added', null, fileName)
    else if (earlier !== sha256) add(fileName, 'replaced', earlier.slice(0, 12), sha256.slice(0, 12))
  }
  for (const fileName of old.keys()) add(fileName, 'removed', fileName, null)
  return changes
}

function compareVerdicts(before: Evaluation | null, after: Evaluation | null): MovedVerdict[] {
  const itemsOf = (evaluation: Evaluation | null) =>
    new Map((evaluation?.items ?? []).map((item) => [item.itemId, item] as const))
  const old = itemsOf(before)
  const now = itemsOf(after)
  return listVerdictMoves(before, after).map(({ itemId }) => {
    const a = old.get(itemId) ?? null
    const b = now.get(itemId) ?? null
    const first = a === null ? null : findDeciding(a, null)
    const last = b === null ? null : findDeciding(b, first)
    return { itemId, before: toSide(a, first), after: toSide(b, last) }
  })
}

/**
 * The outcome that gives the item its verdict; of several, the one at the same places as on the other side, so that the
 * two numbers are of the same thing.
 */
function findDeciding(item: ItemResult, other: DecidedOutcome | null): DecidedOutcome | null {
  const decided = item.outcomes.filter((outcome): outcome is DecidedOutcome => outcome.kind === 'decided')
  const worst = decided.filter(({ verdict }) => verdict === item.verdict)
  const atSamePlaces = (outcome: DecidedOutcome) => other !== null && placesOf(outcome) === placesOf(other)
  return worst.find(atSamePlaces) ?? worst[0] ?? decided.find(atSamePlaces) ?? decided[0] ?? null
}

const placesOf = (outcome: DecidedOutcome) => outcome.places.map(({ kind, id }) => `${kind} ${id}`).join()

function toSide(item: ItemResult | null, deciding: DecidedOutcome | null): VerdictSide | null {
  if (item === null) return null
  return {
    verdict: item.verdict,
    headline: item.headline,
    // Of the design as a whole there is no place to name.
    place: (deciding?.places ?? []).flatMap(({ kind, name }) => (kind === 'design' ? [] : [name])).join(', '),
    value: deciding?.value ?? null,
    limit: deciding?.limit ?? null,
    decidingEnd: deciding?.decidingEnd ?? null,
  }
}

function listLapsedAnswers(
  before: ComparedContent,
  after: ComparedContent,
  changedInputsOf: (itemId: string) => string[],
): LapsedAnswer[] {
  const results = new Map((after.evaluation?.items ?? []).map((item) => [item.itemId, item]))
  const later = new Map((after.answers ?? []).map((answer) => [answer.itemId, answer]))
  return (before.answers ?? []).flatMap((answer) => {
    const isOfPerson = answer.decidedBy === 'person'
    if (!isOfPerson && answer.decidedBy !== 'unknown') return []
    const now = later.get(answer.itemId) ?? null
    const because = isOfPerson && answer.state !== 'concern' ? changedInputsOf(answer.itemId) : []
    const result = results.get(answer.itemId)
    if (isOfPerson && result !== undefined && !listLegalStates(result.verdict).includes(answer.state)) {
      because.push(`the calculation decides now: ${result.headline}`)
    }
    if (after.answers !== null && result === undefined) because.push('the item is no longer in the checklist')
    const isOther = now !== null && now.state !== answer.state
    if (isOther && because.length === 0) because.push(explainOther(now))
    if (because.length === 0) return []
    const { itemId, question, state, reason, byName } = answer
    return [{ itemId, question, state, reason, byName, because, now: now?.state ?? null }]
  })
}

function explainOther(now: ComparedAnswer): string {
  if (now.decidedBy === 'person') return `${now.byName} answered otherwise`
  if (now.decidedBy === 'waiver') return 'a waiver was approved'
  if (now.decidedBy === 'statement') return 'what the design states decides now'
  return now.decidedBy === 'calculation' ? 'the calculation decides now' : 'nobody has answered here'
}
