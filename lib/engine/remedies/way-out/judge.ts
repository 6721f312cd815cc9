import type { Assembly } from '../../assembly'
import { assemble } from '../../assembly'
import { evaluateItem, type ItemDefinition, type Severity, USUAL_ITEMS } from '../../catalogue'
import type { EvaluationContext } from '../../context'
import type { Design } from '../../design'
import { buildContext } from '../../evaluate'
import { type DecidedOutcome, getOutcomeVerdict, type ItemResult, type Outcome } from '../../results'
import type { RemedyOptions } from '../options'

/** A failing outcome that a changed number may clear. */
export interface Failure {
  readonly item: ItemDefinition
  readonly outcome: DecidedOutcome
  /** Item and place: the same failure in another design has the same key. */
  readonly key: string
}

/** A design with what its items come to. */
export interface Judged {
  readonly design: Design
  readonly assembly: Assembly
  readonly context: EvaluationContext
  readonly results: ReadonlyMap<string, ItemResult>
  readonly failures: readonly Failure[]
  /** Question and severity of an item that was judged. */
  readonly describe: (itemId: string) => { readonly question: string; readonly severity: Severity }
}

/** The way of the part to its folded state takes longer than all other items together: it is judged once, at the end. */
const FOLD_ITEM_ID = 'folded-clearance'

export type Judge = (design: Design, basis?: Judged, withFold?: boolean) => Judged

export function makeJudge({ limits = [], testedLives = [], facts = {}, items = USUAL_ITEMS }: RemedyOptions): Judge {
  const definitions = new Map(items.map((item) => [item.id, item]))
  const describe = (itemId: string) => {
    const { question = itemId, severity = 'advice' } = definitions.get(itemId) ?? {}
    return { question, severity }
  }
  return (design, basis, withFold = false) => {
    const assembly = assemble(design, {
      detail: 'figures',
      testedLives,
      ...(basis === undefined ? {} : { basis: basis.assembly }),
    })
    const context = buildContext(design, { limits, testedLives, facts }, assembly)
    const results = new Map<string, ItemResult>()
    const failures: Failure[] = []
    for (const item of items) {
      if (item.id === FOLD_ITEM_ID && !withFold) continue
      const result = evaluateItem(item, context)
      results.set(item.id, result)
      if (result.verdict !== 'fails') continue
      for (const outcome of result.outcomes) {
        if (isCalculatedFailure(outcome)) failures.push({ item, outcome, key: keyOf(item.id, outcome) })
      }
    }
    return { design, assembly, context, results, failures, describe }
  }
}

/** A number against a limit; what somebody stated is theirs to change. */
export function isCalculatedFailure(outcome: Outcome): outcome is DecidedOutcome {
  return outcome.kind === 'decided' && outcome.verdict === 'fails' && outcome.isStated !== true
}

/** Which layer decides at a bend or in a zone may change: the place is the same. */
export function keyOf(itemId: string, { places, ...outcome }: Outcome): string {
  const others = places.filter(({ kind }) => kind !== 'layer')
  const place = (others.length > 0 ? others : places).map(({ kind, id }) => `${kind} ${id}`).join(', ')
  return `${itemId}|${outcome.kind === 'decided' ? outcome.limit.key : ''}|${place}`
}

/** Failures that the earlier design did not have. */
export function listNewFailures(before: Judged, after: Judged): readonly Failure[] {
  const known = new Set(before.failures.map(({ key }) => key))
  return after.failures.filter(({ key }) => !known.has(key))
}

/**
 * Is the failure gone for a reason that can be told? Where the item's verdict came to be unknown it is not cleared: a blank means "cannot tell".
 */
export function isCleared({ item, key }: Failure, before: Judged, after: Judged): boolean {
  if (after.failures.some((failure) => failure.key === key)) return false
  return !isUnknown(after.results.get(item.id)) || isUnknown(before.results.get(item.id))
}

/** Items of which the later design can tell less than the earlier one. */
export function hasNewUnknown(before: Judged, after: Judged): boolean {
  for (const [itemId, result] of after.results) {
    if (isUnknown(result) && !isUnknown(before.results.get(itemId)) && before.results.get(itemId)?.verdict !== 'fails')
      return true
  }
  return false
}

const isUnknown = (result: ItemResult | undefined): boolean =>
  result?.outcomes.some((outcome) => {
    const verdict = getOutcomeVerdict(outcome)
    return verdict === 'cannot-tell'
  }) === true

/** By how many times a value misses its limit, at least 1. */
export function missOf({ value, limit, decidingEnd }: DecidedOutcome): number {
  const [is, held] = decidingEnd === undefined ? [value.value, limit.value] : [decidingEnd.value, decidingEnd.limit]
  const isLow = decidingEnd === undefined ? limit.sense === 'at-least' : decidingEnd.end === 'lower'
  const multiple = isLow ? held / is : is / held
  return Number.isFinite(multiple) && multiple > 1 ? multiple : 1
}
