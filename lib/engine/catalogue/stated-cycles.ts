import { type Bend, callByName } from '../design'
import type { Outcome, Place } from '../results'
import { inSentence } from '../units'
import { cannotTell } from './decide'

/**
 * Cycles that a bend which stands still in service may be asked for: a fold is made once, and a part is flexed some times until it is in
 * place. Our choice; no published figure was found.
 */
const MOST_STILL_CYCLES = { 'fold-once': 1, 'flex-to-install': 100 } as const

/** A bend that is stated to be folded once, and is asked for more cycles than that can mean. */
export function isUseContradicted({ use, requiredCycles }: Bend): boolean {
  return use !== null && use !== 'dynamic' && requiredCycles !== null && requiredCycles > MOST_STILL_CYCLES[use]
}

/** What is allowed once or a few times says nothing of many cycles: only what fails even so is certain. */
export function withinStatedUse(bend: Bend, outcome: Outcome, place: Place): Outcome {
  if (!isUseContradicted(bend) || outcome.kind !== 'decided' || outcome.verdict === 'fails') return outcome
  return cannotTell(
    callByName('bend', bend.name),
    {
      because: `it is stated as ${bend.use === 'fold-once' ? 'folded once' : 'flexed to install'} and asked for ${inSentence(bend.requiredCycles ?? 0, 'cycles')}`,
      decidedBy: 'state it as dynamic, or take the cycles out',
    },
    [place],
    { value: outcome.value, limit: outcome.limit },
  )
}
