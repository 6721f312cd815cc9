import { it } from 'vitest'
import { evaluate } from '@/lib/engine'
import { makeOneBend, listOutcomes } from '../verdicts/one-bend'
import { livesOf, makeRows } from './rows'
it('x', () => {
  const d0 = makeOneBend({ requiredCycles: 3000 })
  const d = { ...d0, brief: { ...d0.brief, lifeWeibullSlope: null } }
  const lives = livesOf(makeRows({strainRangePct: 0.233}))
  console.log(JSON.stringify(lives))
  for (const t of [[], lives]) {
    const e = evaluate(d, { testedLives: t })
    const b = e.bends[0]
    console.log(b?.peakStrainPct, b?.medianLifeCycles, b?.survivalLifeCycles, b?.survivalLifeRangeCycles, b?.allowableRangePct)
    console.log(listOutcomes(e, 'fatigue-life')[0]?.summary)
  }
})
