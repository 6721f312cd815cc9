import type { DecidedWhen } from '@/lib/engine/catalogue'
import type { ProjectRole } from '@/lib/review'

/** What the catalogue says about an item, as the screens need it: plain values that can cross to the browser. */
export interface ItemText {
  readonly id: string
  readonly section: 'materials' | 'geometry' | 'fabrication'
  readonly severity: string
  readonly question: string
  readonly why: string
  readonly howToCheck: string
  /** Whom to ask where "the team" is too wide; empty where it is anybody's. */
  readonly askedOf: readonly string[]
  /** Which designs it applies to, in words. */
  readonly appliesTo: string
  readonly decidedWhen: DecidedWhen
  readonly answeredBy: readonly ProjectRole[]
  /** What evidence a person's judgment should rest on; null where the engine decides alone. */
  readonly evidence: string | null
  readonly isComputed: boolean
  readonly sources: readonly string[]
  /** What the project's profiles changed about it, as sentences. */
  readonly becauseOf: readonly string[]
}
