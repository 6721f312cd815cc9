import { describe, expect, it } from 'vitest'
import {
  type CurrentLocation,
  currentCapacityAmp,
  findLightestFoil,
  IACS_RESISTIVITY_OHM_MM2_PER_M,
  requiredAreaMm2,
  resistanceOhm,
  sectionAreaMm2,
  sheetResistanceMilliohm,
  skinDepthFrequencyHz,
  skinDepthUm,
  temperatureRiseDegC,
} from '@/lib/engine/conductors'
import { type CheckCase, checkTopic, expectNear, expectValue, input } from '../check-values'

const MM_PER_MIL = 0.0254

function locationOf(check: CheckCase): CurrentLocation {
  return input(check, 'k') === 0.048 ? 'external' : 'internal'
}

checkTopic('7 current, resistance, skin depth', [
  [
    /^cur-(ext|int)-/,
    (check) => {
      const section = {
        widthMm: input(check, 'widthMil') * MM_PER_MIL,
        thicknessUm: input(check, 'thicknessMil') * 25.4,
      }
      const riseDegC = input(check, 'temperatureRiseC')
      const location = locationOf(check)
      const amp = currentCapacityAmp(section, { temperatureRiseDegC: riseDegC, location })
      expectValue(check, 'areaSqMil', sectionAreaMm2(section) / MM_PER_MIL ** 2)
      expectValue(check, 'currentA', amp)
      expectNear(temperatureRiseDegC(section, amp, location), riseDegC, { rel: 1e-12 })
    },
  ],
  [
    /^cur-width-/,
    (check) => {
      const areaMm2 = requiredAreaMm2({
        currentAmp: input(check, 'currentA'),
        temperatureRiseDegC: input(check, 'temperatureRiseC'),
        location: locationOf(check),
      })
      expectValue(check, 'areaSqMil', areaMm2 / MM_PER_MIL ** 2)
      expectValue(check, 'widthMil', areaMm2 / MM_PER_MIL ** 2 / input(check, 'thicknessMil'))
    },
  ],
  [
    /^res-iacs/,
    (check) => {
      expectValue(check, 'resistivityOhmM', IACS_RESISTIVITY_OHM_MM2_PER_M * 1e-6)
      expectValue(check, 'conductivitySPerM', 1e6 / IACS_RESISTIVITY_OHM_MM2_PER_M)
    },
  ],
  [
    /^res-sheet-/,
    (check) =>
      expectValue(check, 'sheetResistanceMilliOhmPerSquare', sheetResistanceMilliohm(input(check, 'thicknessUm'))),
  ],
  [
    /^res-\d/,
    (check) =>
      expectValue(
        check,
        'resistanceOhm',
        resistanceOhm({
          runs: [
            {
              lengthMm: input(check, 'lengthMm'),
              widthMm: input(check, 'widthMm'),
              thicknessUm: input(check, 'thicknessUm'),
            },
          ],
          temperatureDegC: input(check, 'temperatureC'),
        }),
      ),
  ],
  [
    /^skin-18um/,
    (check) =>
      expectValue(
        check,
        'frequencyWhereDepthEqualsThicknessMHz',
        skinDepthFrequencyHz(input(check, 'thicknessUm')) / 1e6,
      ),
  ],
  [/^skin-/, (check) => expectValue(check, 'skinDepthUm', skinDepthUm(input(check, 'frequencyHz')))],
])

describe('lightest foil that serves', () => {
  const bare = { platingThicknessUm: 0, processingLossUm: 0 }

  it('1 A, 10 degC, external: one ounce needs 11.9 mil, so at 12 mil it serves and at 11.8 mil it does not [IPC-2221]', () => {
    const at = (widthMil: number) =>
      findLightestFoil(
        {
          widthMm: widthMil * MM_PER_MIL,
          current: { amp: 1, temperatureRiseDegC: 10, location: 'external' },
        },
        bare,
      )
    expect(at(12.2)?.foil?.weightOzPerFt2).toBe(1)
    expect(at(11.8)?.foil?.weightOzPerFt2).toBe(2)
    expect(at(12.2)?.governedBy).toBe('current')
  })

  it('the resistance need is the resistance relation turned round [IEC 60028]', () => {
    const found = findLightestFoil(
      { widthMm: 0.1, resistance: { ohm: 1.202538285, lengthMm: 100, temperatureDegC: 85 } },
      bare,
    )
    expectNear(found?.neededThicknessUm ?? Number.NaN, 18, { rel: 1e-7 })
    expect(found?.foil?.weightOzPerFt2).toBe(1)
    expect(found?.governedBy).toBe('resistance')
  })

  it('no need stated, no finding', () => {
    expect(findLightestFoil({ widthMm: 0.2 }, bare)).toBeNull()
  })
})
