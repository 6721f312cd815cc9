import { expect } from 'vitest'
import {
  BAKE_PROFILES_IN_GUIDES,
  FINISH_COATS,
  NICKEL_FOR_BENDS_UM,
  POLYIMIDE_WATER_PCT,
} from '@/lib/engine/catalogue/process-figures'
import { checkTopic, expectNear, listOf } from '../check-values'

interface Profile {
  readonly temperatureC: number | readonly [number, number]
  readonly hours?: readonly [number, number]
  readonly minMinutes?: number
  readonly solderWithinMinutes?: number
  readonly maxHoursBeforeSoldering?: number
}

checkTopic('14 process', [
  [
    /^proc-moisture/,
    (check) => {
      const [low = Number.NaN, high = Number.NaN] = listOf(check.expected, 'waterUptakeRange')
      expectNear(POLYIMIDE_WATER_PCT.immersed.low, low, check.tolerance)
      expectNear(POLYIMIDE_WATER_PCT.immersed.high, high, check.tolerance)
      expectNear(POLYIMIDE_WATER_PCT.inRoomAir, Number(check.expected.at20C50RHPercent), check.tolerance)
    },
  ],
  [
    /^proc-bake/,
    (check) => {
      const printed = (check.expected.spread as Profile[]).map((profile) => {
        const [low, high] = [profile.temperatureC, profile.temperatureC].flat()
        return {
          temperatureDegC: { low, high },
          hours:
            profile.hours !== undefined
              ? { low: profile.hours[0], high: profile.hours[1] }
              : profile.minMinutes !== undefined
                ? { low: profile.minMinutes / 60, high: null }
                : null,
          solderWithinMinutes:
            profile.solderWithinMinutes ??
            (profile.maxHoursBeforeSoldering === undefined ? null : 60 * profile.maxHoursBeforeSoldering),
        }
      })
      expect(BAKE_PROFILES_IN_GUIDES).toEqual(printed)
    },
  ],
  [
    /^proc-enig/,
    (check) => {
      const [nickel] = FINISH_COATS['immersion-gold-over-electroless-nickel']?.coats ?? []
      expect([nickel?.lowUm, nickel?.highUm]).toEqual(listOf(check.expected, 'rigidNickelUm'))
      expect([NICKEL_FOR_BENDS_UM.low, NICKEL_FOR_BENDS_UM.high]).toEqual(
        listOf(check.expected, 'flexRequestedNickelUm'),
      )
    },
  ],
])
