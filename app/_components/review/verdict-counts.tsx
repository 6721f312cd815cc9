import { type MarkKind, VerdictMark } from '@/app/_components/ui/verdict-mark'

const SHOWN: readonly { verdict: MarkKind; one: string; many: string }[] = [
  { verdict: 'fails', one: 'fails', many: 'fail' },
  { verdict: 'thin-margin', one: 'has a thin margin', many: 'have a thin margin' },
  { verdict: 'cannot-tell', one: 'cannot be told', many: 'cannot be told' },
  { verdict: 'not-computed', one: 'not computed', many: 'not computed' },
  { verdict: 'needs-judgment', one: 'needs judgment', many: 'need judgment' },
  { verdict: 'meets', one: 'meets', many: 'meet' },
]

/** How many items came to which verdict; those that came to nothing are left out. */
export function VerdictCounts({ counts }: { counts: Readonly<Record<string, number>> }) {
  const shown = SHOWN.flatMap(({ verdict, one, many }) => {
    const count = counts[verdict] ?? 0
    return count === 0 ? [] : [{ verdict, word: `${count} ${count === 1 ? one : many}` }]
  })
  if (shown.length === 0) return <span className="muted">nothing evaluated yet</span>
  return (
    <span className="verdict-counts">
      {shown.map(({ verdict, word }) => (
        <VerdictMark key={verdict} verdict={verdict} word={word} />
      ))}
    </span>
  )
}

export function countVerdicts(items: readonly { readonly result: { readonly verdict: string } }[]) {
  const counts: Record<string, number> = {}
  for (const { result } of items) counts[result.verdict] = (counts[result.verdict] ?? 0) + 1
  return counts
}
