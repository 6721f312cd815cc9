import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { BASIS_WORDS, ITEM_BASES, type ItemResult, TALLY_WORDS, tallyVerdicts, type VerdictTally } from '@/lib/engine'

/** Items that came to nothing are left out. */
const SHOWN = (Object.keys(TALLY_WORDS) as (keyof typeof TALLY_WORDS)[]).filter(
  (verdict) => verdict !== 'not-applicable',
)

/** How many items came to which verdict, by what that rests on; a cause counts once, and those that came to nothing are left out. */
export function VerdictCounts({ counts }: { counts: VerdictTally }) {
  const groups = ITEM_BASES.flatMap((basis) => {
    const shown = SHOWN.flatMap((verdict) => {
      const count = counts[basis][verdict] ?? 0
      const { ofOne, ofMany } = TALLY_WORDS[verdict]
      return count === 0 ? [] : [{ verdict, word: `${count} ${count === 1 ? ofOne : ofMany}` }]
    })
    return shown.length === 0 ? [] : [{ basis, shown }]
  })
  if (groups.length === 0) return <span className="muted">not evaluated yet</span>
  return (
    <span className="verdict-bases">
      {groups.map(({ basis, shown }) => (
        <span key={basis} className="verdict-counts">
          <span className="muted">{BASIS_WORDS[basis]}:</span>
          {shown.map(({ verdict, word }) => (
            <VerdictMark key={verdict} verdict={verdict} word={word} />
          ))}
        </span>
      ))}
    </span>
  )
}

export function countVerdicts(
  items: readonly { readonly result: Pick<ItemResult, 'basis' | 'verdict' | 'followsFrom'> }[],
) {
  return tallyVerdicts(items.map(({ result }) => result))
}
