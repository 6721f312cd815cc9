import { describe, expect, test } from 'vitest'
import { evaluate } from '@/lib/engine'
import { listOutcomes, listVerdicts, makeOneBend } from './one-bend'

const RULES = ['bend-strain', 'radius-rules'] as const

describe('cycles that a bend which stands still cannot mean', () => {
  const make = (requiredCycles: number | null, use: 'flex-to-install' | 'fold-once' = 'flex-to-install') =>
    makeOneBend({ insideRadiusMm: 20, requiredCycles, bends: [{ use }] })

  test.each(RULES)(
    '%s meets by what is allowed a few times, and cannot tell where many cycles are asked for',
    (itemId) => {
      expect(new Set(listVerdicts(make(null), itemId))).toEqual(new Set(['meets']))
      expect(new Set(listVerdicts(make(100), itemId))).toEqual(new Set(['meets']))
      expect(new Set(listVerdicts(make(5000), itemId))).toEqual(new Set(['cannot-tell']))
      // Of a fold the handbook formula says nothing for this section.
      const folded = listVerdicts(make(2, 'fold-once'), itemId).filter((verdict) => verdict !== 'not-applicable')
      expect(new Set(folded)).toEqual(new Set(['cannot-tell']))
    },
  )

  test('the item on the use of bends fails, and says what to state', () => {
    // The bend itself; of the part's uses nobody said anything here.
    expect(listVerdicts(make(null), 'bend-use')).toEqual(['meets', 'not-computed'])
    expect(listVerdicts(make(5000), 'bend-use')).toEqual(['fails', 'not-computed'])
    const [outcome] = listOutcomes(evaluate(make(5000)), 'bend-use')
    expect(outcome?.summary).toContain('5000 cycles')
    expect(outcome?.summary).toContain('state it as dynamic')
  })

  test('what fails by what is allowed a few times fails all the same', () => {
    const tight = makeOneBend({ insideRadiusMm: 0.1, requiredCycles: 5000, bends: [{ use: 'flex-to-install' }] })
    expect(listVerdicts(tight, 'bend-strain')).toEqual(
      listVerdicts({ ...tight, bends: tight.bends.map((bend) => ({ ...bend, requiredCycles: null })) }, 'bend-strain'),
    )
  })
})
