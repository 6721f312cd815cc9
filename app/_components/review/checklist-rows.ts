import type { RevisionView } from '@/lib/data'
import { roundToDigits } from '@/lib/engine/numerics'
import {
  BASIS_WORDS,
  describeLimitOwner,
  getBoundPrefix,
  getShownVerdict,
  ITEM_SECTION_WORDS,
  LIMIT_SENSE_WORDS,
  type Limit,
  type Outcome,
  type Quantity,
  TALLY_WORDS,
  VERDICT_WORDS,
} from '@/lib/engine/results'
import { getUnitSymbol } from '@/lib/engine/units'
import type { ItemText } from './item-text'
import { ANSWER_WORDS, WAIVER_WORDS } from './words'

type Item = RevisionView['items'][number]

const HEADINGS = [
  'Section',
  'Item',
  'Question',
  'Severity',
  'Result',
  'Rests on',
  'What it says',
  'Answer',
  'Reason',
  'Answered by',
  'Answered at',
  'Waivers',
]

/** The checklist with its results as a table for a spreadsheet, an item to a row, in the order of the screen. */
export function makeChecklistRows(
  items: readonly Item[],
  texts: Readonly<Record<string, ItemText>>,
): readonly (readonly (string | null)[])[] {
  const rows = items.flatMap(({ itemId, result, follows, state, answer, waivers }) => {
    const text = texts[itemId]
    if (text === undefined) return []
    return [
      [
        ITEM_SECTION_WORDS[text.section],
        itemId,
        text.question,
        text.severity,
        TALLY_WORDS[follows.length > 0 ? 'follows' : result.verdict].word,
        BASIS_WORDS[result.basis],
        result.headline,
        ANSWER_WORDS[state],
        answer?.reason ?? null,
        answer?.by.name ?? null,
        answer?.at ?? null,
        waivers.length === 0
          ? null
          : waivers.map(({ state: stands, reason }) => `${WAIVER_WORDS[stands]}: ${reason}`).join('; '),
      ],
    ]
  })
  return [HEADINGS, ...rows]
}

const FIGURE_HEADINGS = [
  'Item',
  'Where',
  'Result',
  'Value',
  'Lowest',
  'Highest',
  'Unit',
  'Limit is',
  'Limit',
  'Upper limit',
  'Limit unit',
  'Margin',
  'Limit set by',
  'Relation',
  'Source',
  'What was found',
]

/** More than any figure here is known to, and none of the last bits of arithmetic. */
const FIGURE_DIGITS = 6

type FigureCell = string | number | null

/**
 * What each item rests on: a row for each place, with figures as numbers in the units of the record (µm and mm for lengths). What the person may not
 * see (a limit that its owner keeps) is not in the results that reach this page.
 */
export function makeFigureRows(
  items: readonly Item[],
  texts: Readonly<Record<string, ItemText>>,
  citations: Readonly<Record<string, string>>,
): readonly (readonly FigureCell[])[] {
  const rows = items.flatMap(({ itemId, result }) =>
    texts[itemId] === undefined ? [] : result.outcomes.map((outcome) => makeFigureRow(itemId, outcome, citations)),
  )
  return [FIGURE_HEADINGS, ...rows]
}

function makeFigureRow(
  itemId: string,
  outcome: Outcome,
  citations: Readonly<Record<string, string>>,
): readonly FigureCell[] {
  const where = outcome.places.map(({ name }) => name).join(', ') || 'Design'
  const cite = (...keys: readonly string[]) => [...new Set(keys)].map((key) => citations[key] ?? key).join('; ')
  const row = (cells: { value?: Quantity | null | undefined; limit?: Limit | undefined; rest?: FigureRest }) => {
    const { value, limit, rest } = cells
    const range = rest?.range
    return [
      itemId,
      where,
      VERDICT_WORDS[getShownVerdict(outcome)].word,
      ...writeQuantity(value ?? null),
      range === undefined ? null : round(range.low),
      range === undefined ? null : round(range.high),
      value == null ? null : getUnitSymbol(value.unit),
      limit === undefined ? null : LIMIT_SENSE_WORDS[limit.sense],
      limit === undefined ? null : round(limit.value),
      limit?.upperValue === undefined ? null : round(limit.upperValue),
      limit === undefined ? null : getUnitSymbol(limit.unit),
      rest?.margin === undefined ? null : round(rest.margin),
      rest?.owner ?? null,
      rest?.equation ?? null,
      rest?.source ?? null,
      outcome.summary,
    ]
  }
  switch (outcome.kind) {
    case 'decided': {
      const { value, limit, range, margin, equation, sourceKey } = outcome
      const owner = describeLimitOwner(limit.owner)
      return row({
        value,
        limit,
        rest: { range, margin, owner, equation, source: cite(limit.sourceKey, sourceKey) },
      })
    }
    case 'said':
      return row({ rest: { source: cite(outcome.sourceKey) } })
    case 'withheld':
      return row({ value: outcome.value, rest: { owner: describeLimitOwner(outcome.owner) } })
    case 'cannot-tell':
      return row({ value: outcome.value, limit: outcome.limit })
    default:
      return row({})
  }
}

interface FigureRest {
  readonly range?: { readonly low: number; readonly high: number } | undefined
  readonly margin?: number
  readonly owner?: string
  readonly equation?: string
  readonly source?: string
}

const round = (value: number) => roundToDigits(value, FIGURE_DIGITS)

/** A bound is no figure: it is written with its sign, so that nobody adds it up. */
function writeQuantity(quantity: Quantity | null): readonly FigureCell[] {
  if (quantity === null) return [null]
  const prefix = getBoundPrefix(quantity.bound)
  return [prefix === '' ? round(quantity.value) : `${prefix}${round(quantity.value)}`]
}
