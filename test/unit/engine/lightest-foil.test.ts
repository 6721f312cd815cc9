import { describe, expect, it } from 'vitest'
import { findLightestFoil } from '@/lib/engine/conductors'

const MM_PER_MIL = 0.0254

describe('lightest foil that serves', () => {
  const bare = { platingThicknessUm: 0, processingLossUm: 0 }

  it('1 A, 10 degC, external: one ounce serves at 12.2 mil and not at 11.8 mil [inverse of the current relation]', () => {
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

  it('the resistance need is the resistance relation turned round', () => {
    const found = findLightestFoil(
      { widthMm: 0.1, resistance: { ohm: 1.202538285, lengthMm: 100, temperatureDegC: 85 } },
      bare,
    )
    expect(found?.neededThicknessUm).toBeCloseTo(18, 5)
    expect(found?.foil?.weightOzPerFt2).toBe(1)
    expect(found?.governedBy).toBe('resistance')
  })

  it('no need stated, no finding', () => {
    expect(findLightestFoil({ widthMm: 0.2 }, bare)).toBeNull()
  })
})
