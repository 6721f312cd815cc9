import type { Auditor } from '../audit'
import type { GerberWords } from './words'

/** Issues at the command that is being read. */
export class GerberReport {
  constructor(
    private readonly auditor: Auditor,
    private readonly words: GerberWords,
  ) {}

  error(reason: string): void {
    this.auditor.error(this.words.line, this.words.column, reason)
  }

  /** Once in a file. */
  note(reason: string): void {
    this.auditor.noteOnce(this.words.line, this.words.column, reason)
  }
}
