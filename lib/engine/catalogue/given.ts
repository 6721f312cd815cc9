import { isOpen } from '../design'
import type { MissingInput, NotComputedOutcome, Place, SaidOutcome } from '../results'
import type { SourceKey } from '../sources'
import { notComputedFrom } from './decide'

export { isOpen } from '../design'

/** A term that somebody has to give. */
export interface Term extends MissingInput {
  readonly value: unknown
}

/** Terms that are not given, as missing inputs. */
export function listOpen(terms: readonly Term[]): MissingInput[] {
  return terms.filter(({ value }) => isOpen(value)).map(({ path, label }) => ({ path, label }))
}

/** All of several terms are given, or which are not. That they are given says nothing of whether they are right. */
export function checkGiven(options: {
  readonly terms: readonly Term[]
  readonly places: readonly Place[]
  /** A sentence. */
  readonly whenGiven: string
  readonly sourceKey: SourceKey
  /** `stated` where somebody has to stand by it. */
  readonly rests?: SaidOutcome['rests']
}): SaidOutcome | NotComputedOutcome {
  const { terms, places, whenGiven, sourceKey, rests = 'typed' } = options
  const open = listOpen(terms)
  if (open.length > 0) return { ...notComputedFrom(open, places), rests }
  return { kind: 'said', verdict: 'meets', rests, sourceKey, places, summary: whenGiven }
}
