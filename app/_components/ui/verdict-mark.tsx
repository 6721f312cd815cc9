import { TALLY_WORDS, type Verdict } from '@/lib/engine/results'
import { capitalise } from '@/lib/engine/units'

/** What the engine may say of an item: a verdict, that it follows from another item's, or that a person has to judge it. What people answer has marks of its own. */
export type MarkedVerdict = Verdict | 'needs-judgment' | 'follows'

const TONES: Record<MarkedVerdict, string> = {
  meets: 'meets',
  'thin-margin': 'thin',
  fails: 'fails',
  follows: 'thin',
  'cannot-tell': 'thin',
  'not-computed': 'open',
  'not-applicable': 'muted',
  'needs-judgment': 'open',
}

/**
 * The mark draws what a verdict means: the value as a bar, the limit as an upright line. A bar that stops short meets, an open
 * one that reaches the line has a thin margin, an arrow through it fails, a bent arrow follows from another item, a broken line cannot be placed, a dot has no value yet.
 * Each outline differs without colour.
 */
function Glyph({ verdict }: { verdict: MarkedVerdict }) {
  switch (verdict) {
    case 'meets':
      return <path d="M1 5h9v6H1z" fill="currentColor" stroke="none" />
    case 'thin-margin':
      return <path d="M1.75 5.75H15v4.5H1.75z" />
    case 'fails':
      return <path d="M1 5h16V2l6 6-6 6v-3H1z" fill="currentColor" stroke="none" />
    case 'follows':
      return <path d="M1.75 4v4H16l-4-4M16 8l-4 4" />
    case 'cannot-tell':
      return <path d="M1 8h22" strokeWidth="2.5" strokeDasharray="3 2.5" />
    case 'not-computed':
      return <path d="M1 8h11" strokeWidth="2.5" strokeDasharray="3 2.5" />
    case 'needs-judgment':
      return <path d="M2 4.5v7h4M2 4.5h4M10 4.5v7" />
    case 'not-applicable':
      return <path d="M6 8h12" />
  }
}

interface VerdictMarkProps {
  verdict: MarkedVerdict
  /** Another word than the usual one, e.g. a count: `3 fail`. */
  word?: string
}

/** A computed verdict as a word and a small shape; colour only repeats what both already say. */
export function VerdictMark({ verdict, word }: VerdictMarkProps) {
  return (
    <span className="verdict" data-tone={TONES[verdict]}>
      <svg viewBox="0 0 24 16" width="24" height="16" aria-hidden="true" focusable="false">
        <g fill="none" stroke="currentColor" strokeWidth="1.5">
          {verdict !== 'not-applicable' && <path d="M15 1v14" />}
          <Glyph verdict={verdict} />
        </g>
      </svg>
      <span>{word ?? getVerdictName(verdict)}</span>
    </span>
  )
}

export function getVerdictName(verdict: MarkedVerdict): string {
  const { word } = TALLY_WORDS[verdict]
  return capitalise(word)
}
