import { ITEM_BASES, type ItemBasis, type ItemResult } from '@/lib/engine/results'
import type { AnswerState } from '../snapshot'

interface CountedItem {
  readonly state: AnswerState
  readonly result: Pick<ItemResult, 'verdict' | 'basis'>
}

/** Where a revision stands, in counts that add up: every item of the checklist is counted once. */
export interface Standing {
  readonly items: number
  /** Fails and is not waived, by what the verdict rests on. */
  readonly failing: Readonly<Record<ItemBasis, number>>
  readonly waived: number
  readonly thin: number
  readonly cannotTell: number
  readonly inputMissing: number
  /** Awaits somebody's judgment, and nobody has answered. */
  readonly toJudge: number
  /** Meets, or was answered. */
  readonly settled: number
  readonly notApplicable: number
}

export function countStanding(items: readonly CountedItem[]): Standing {
  const failing = Object.fromEntries(ITEM_BASES.map((basis) => [basis, 0])) as Record<ItemBasis, number>
  const counts = { waived: 0, thin: 0, cannotTell: 0, inputMissing: 0, toJudge: 0, settled: 0, notApplicable: 0 }
  for (const { state, result } of items) {
    if (state === 'waived') counts.waived += 1
    else if (result.verdict === 'fails') failing[result.basis] += 1
    else if (result.verdict === 'cannot-tell') counts.cannotTell += 1
    else if (result.verdict === 'not-computed' && state === 'open') counts.inputMissing += 1
    else if (result.verdict === 'thin-margin') counts.thin += 1
    else if (result.verdict === 'needs-judgment' && state === 'open') counts.toJudge += 1
    else if (result.verdict === 'not-applicable') counts.notApplicable += 1
    else counts.settled += 1
  }
  return { items: items.length, failing, ...counts }
}
