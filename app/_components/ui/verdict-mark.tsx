import { VERDICT_WORDS, type Verdict } from '@/lib/engine/results'

/** What a mark may say: the engine's verdicts, a judgment still to be made, and the answers of people. */
export type MarkKind = Verdict | 'needs-judgment' | 'waived' | 'concern' | 'open'

/** Answers of people; the engine's verdicts have their words with the engine. */
const ANSWER_WORDS = { waived: 'Waived', concern: 'Concern', open: 'Open' } as const

function getWord(kind: MarkKind): string {
  if (kind === 'waived' || kind === 'concern' || kind === 'open') return ANSWER_WORDS[kind]
  const { word } = VERDICT_WORDS[kind]
  return word.charAt(0).toUpperCase() + word.slice(1)
}

const TONES: Record<MarkKind, string> = {
  meets: 'meets',
  'thin-margin': 'thin',
  fails: 'fails',
  'cannot-tell': 'thin',
  'not-computed': 'open',
  'not-applicable': 'muted',
  'needs-judgment': 'open',
  waived: 'thin',
  concern: 'thin',
  open: 'open',
}

/**
 * The mark draws what a verdict means: the value as a bar, the limit as an upright line. A bar that stops short meets,
 * one that just touches has a thin margin, one that runs through the line fails, a broken one cannot be placed. Each outline differs without colour.
 */
function Glyph({ kind }: { kind: MarkKind }) {
  const limit = <path d="M12.5 1v12" stroke="currentColor" strokeWidth="1.5" fill="none" />
  switch (kind) {
    case 'meets':
      return (
        <>
          {limit}
          <path d="M1 4.5h7v5H1z" fill="currentColor" />
        </>
      )
    case 'thin-margin':
    case 'concern':
      return (
        <>
          {limit}
          <path d="M1.6 5.1h10.4v3.8H1.6z" fill="none" stroke="currentColor" strokeWidth="1.3" />
        </>
      )
    case 'fails':
      return (
        <>
          {limit}
          <path d="M1 4.5h13l4 2.5-4 2.5H1z" fill="currentColor" />
        </>
      )
    case 'waived':
      return (
        <>
          {limit}
          <path d="M1.6 5.1h12l3.4 1.9-3.4 1.9h-12z" fill="none" stroke="currentColor" strokeWidth="1.3" />
        </>
      )
    case 'cannot-tell':
      return (
        <>
          {limit}
          <path d="M1 7h16" stroke="currentColor" strokeWidth="2" strokeDasharray="2 2" fill="none" />
        </>
      )
    case 'not-computed':
      return (
        <>
          {limit}
          <path d="M1 7h10" stroke="currentColor" strokeWidth="2" strokeDasharray="2 2" fill="none" />
        </>
      )
    case 'needs-judgment':
    case 'open':
      return (
        <>
          {limit}
          <circle cx="5.5" cy="7" r="3" fill="none" stroke="currentColor" strokeWidth="1.4" />
        </>
      )
    case 'not-applicable':
      return <path d="M4 7h8" stroke="currentColor" strokeWidth="1.5" fill="none" />
  }
}

interface VerdictMarkProps {
  verdict: MarkKind
  /** Another word than the usual one, e.g. a count: `3 fail`. */
  word?: string
  /** Leaves the word to assistive tools, where a column already says it. */
  isWordHidden?: boolean
}

/** A verdict as a word and a small shape; colour only repeats what both already say. */
export function VerdictMark({ verdict, word, isWordHidden = false }: VerdictMarkProps) {
  return (
    <span className="verdict" data-tone={TONES[verdict]}>
      <svg viewBox="0 0 19 14" width="19" height="14" aria-hidden="true" focusable="false">
        <Glyph kind={verdict} />
      </svg>
      <span className={isWordHidden ? 'sr-only' : undefined}>{word ?? getWord(verdict)}</span>
    </span>
  )
}
