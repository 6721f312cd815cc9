import type { RevisionView } from '@/lib/data'
import { BASIS_WORDS, ITEM_SECTION_WORDS, TALLY_WORDS } from '@/lib/engine/results'
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
