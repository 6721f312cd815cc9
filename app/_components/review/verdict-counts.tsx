import { type MarkKind, VerdictMark } from '@/app/_components/ui/verdict-mark'
import { ITEM_BASES, type ItemResult, tallyVerdicts, type VerdictTally } from '@/lib/engine'
import { BASIS_WORDS } from './words'

const SHOWN: readonly { verdict: MarkKind; one: string; many: string }[] = [
  { verdict: 'fails', one: 'fails', many: 'fail' },
  { verdict: 'thin-margin', one: 'has a thin margin', many: 'have a thin margin' },
  { verdict: 'cannot-tell', one: 'cannot be told', many: 'cannot be told' },
  { verdict: 'not-computed', one: 'not computed', many: 'not computed' },
  { verdict: 'needs-judgment', one: 'needs judgment', many: 'need judgment' },
  { verdict: 'meets', one: 'meets', many: 'meet' },
]

/** How many items came to which verdict, computed, stated and judged apart; those that came to nothing are left out. */
export function VerdictCounts({ counts }: { counts: VerdictTally }) {
  const groups = ITEM_BASES.flatMap((basis) => {
    const shown = SHOWN.flatMap(({ verdict, one, many }) => {
      const count = counts[basis][verdict] ?? 0
      return count === 0 ? [] : [{ verdict, word: `${count} ${count === 1 ? one : many}` }]
    })
    return shown.length === 0 ? [] : [{ basis, shown }]
  })
  if (groups.length === 0) return <span className="muted">nothing evaluated yet</span>
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

export function countVerdicts(items: readonly { readonly result: Pick<ItemResult, 'basis' | 'verdict'> }[]) {
  return tallyVerdicts(items.map(({ result }) => result))
}
