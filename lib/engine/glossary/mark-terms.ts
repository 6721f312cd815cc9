import { GLOSSARY, type Term } from './terms'

/** A piece of a text: a term that the glossary explains, or what stands between. */
export interface TextPiece {
  readonly text: string
  readonly term: Term | null
}

const byForm: ReadonlyMap<string, Term> = new Map(
  GLOSSARY.flatMap((entry) => [entry.term, ...entry.forms].map((form) => [form.toLowerCase(), entry] as const)),
)

/** Longer forms first, so that "skin depth" is not taken for part of another; whole words, and plurals in -s. */
const ANY_FORM = new RegExp(
  `(?<![\\p{L}\\d-])(${[...byForm.keys()]
    .toSorted((a, b) => b.length - a.length)
    .map((form) => form.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'))
    .join('|')})(s?)(?![\\p{L}\\d-])`,
  'giu',
)

/**
 * A text cut at the terms that the glossary explains: each term once, where it stands first. The pieces joined are the text.
 *
 * @param text  plain text, as it is shown
 */
export function markTerms(text: string): readonly TextPiece[] {
  const pieces: TextPiece[] = []
  const seen = new Set<Term>()
  let end = 0
  for (const match of text.matchAll(ANY_FORM)) {
    const term = byForm.get((match[1] ?? '').toLowerCase())
    if (term === undefined || seen.has(term)) continue
    seen.add(term)
    if (match.index > end) pieces.push({ text: text.slice(end, match.index), term: null })
    pieces.push({ text: match[0], term })
    end = match.index + match[0].length
  }
  if (end < text.length) pieces.push({ text: text.slice(end), term: null })
  return pieces
}
