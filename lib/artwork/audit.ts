/** How much an issue matters: an `error` left something out or had to guess, a `note` is old or loose writing that was understood. */
export type IssueSeverity = 'error' | 'note'

/** Something that a reader has to say of a place in a file. Lines and columns count from 1. */
export interface Issue {
  readonly severity: IssueSeverity
  readonly line: number
  readonly column: number
  readonly reason: string
}

/** What a reader cannot decide from the file: somebody has to say. */
export interface Question {
  /** Which option of the reader answers it. */
  readonly about: 'unit' | 'format' | 'zeros' | 'plating'
  readonly text: string
  /** What was taken until somebody answers, or null where nothing was read. */
  readonly taken: string | null
}

/** Of one reason, and of all together: a file of a million broken lines must not become a million sentences. */
const MOST_OF_ONE_REASON = 20
const MOST_ISSUES = 500

/** Collects what a reader has to say; nothing that a file holds is thrown. */
export class Auditor {
  readonly #issues: Issue[] = []
  readonly #counts = new Map<string, number>()
  #unlisted = 0

  error(line: number, column: number, reason: string): void {
    this.#add('error', line, column, reason)
  }

  note(line: number, column: number, reason: string): void {
    this.#add('note', line, column, reason)
  }

  /** Said once, where it is seen first. */
  noteOnce(line: number, column: number, reason: string): void {
    if (!this.#counts.has(reason)) this.#add('note', line, column, reason)
  }

  get errorCount(): number {
    return this.#issues.filter(({ severity }) => severity === 'error').length
  }

  finish(): Issue[] {
    if (this.#unlisted === 0) return this.#issues
    const { line, column } = this.#issues.at(-1) ?? { line: 1, column: 1 }
    const reason = `${this.#unlisted} more places are not listed: each reason is listed ${MOST_OF_ONE_REASON} times at most`
    return [...this.#issues, { severity: 'error', line, column, reason }]
  }

  #add(severity: IssueSeverity, line: number, column: number, reason: string): void {
    const seen = this.#counts.get(reason) ?? 0
    // Reasons that quote the file differ each time: their number is bounded too.
    if (this.#counts.size < MOST_ISSUES || seen > 0) this.#counts.set(reason, seen + 1)
    if (seen >= MOST_OF_ONE_REASON || this.#issues.length >= MOST_ISSUES) this.#unlisted += 1
    else this.#issues.push({ severity, line, column, reason })
  }
}

/** What a file holds, short enough to stand in a sentence, without what a terminal or page would act on. */
export function quote(text: string): string {
  const MOST_CHARACTERS = 40
  // Control characters are replaced by what is seen as one.
  const seen = [...text.slice(0, MOST_CHARACTERS)]
    .map((sign) => (sign < ' ' || sign === '\u007f' ? '·' : sign))
    .join('')
  return text.length > MOST_CHARACTERS ? `“${seen}…”` : `“${seen}”`
}
