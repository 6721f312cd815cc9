import { describe, expect, it } from 'vitest'
import { getDefaultLimit, getItem, LIMITS } from '@/lib/engine/catalogue'
import { readItemProse } from '@/lib/engine/catalogue/prose'

/** What items say in words, and the choices that go with it. */
describe('words of the catalogue', () => {
  it('bake profiles are contested: no profile is printed as ours', () => {
    const { sourceKeys } = getItem('floor-life')
    const { why, howToCheck } = readItemProse(getItem('floor-life'))
    expect(why).toContain('0.8 to 2.9 %')
    expect(why).toContain('from 65 to 150 °C')
    expect(howToCheck).toContain('makers of film and finish')
    expect(sourceKeys).toContain('ipc1601')
  })

  it('finish thicknesses are given as quoted, to be checked in the edition in force', () => {
    const { howToCheck } = readItemProse(getItem('surface-finish'))
    expect(howToCheck).toContain('nickel 3 to 6 um, gold at least 0.05 um')
    expect(howToCheck).toContain('silver 0.12 to 0.4 um')
    expect(howToCheck).toContain('edition in force')
  })

  it('ordinary plating adds about 1 mil, pads-only plating nothing, to a conductor in the bend', () => {
    expect(getDefaultLimit('platingInBendUm').value).toBe(0)
    expect(LIMITS.platingInBendUm.note).toContain('1 mil')
  })

  it('cost is told by steps and registration, not by a story of layers', () => {
    const { why } = readItemProse(getItem('construction-cost'))
    expect(why).toContain('process steps')
    expect(why).not.toMatch(/three|four|fifth/)
    expect(getDefaultLimit('costOverCheapestRatio')).toMatchObject({ sourceKey: 'ownChoice' })
  })

  it('conductors cross at right angles, on one layer, with no change of width or direction', () => {
    expect(getDefaultLimit('crossingAngleDeg')).toMatchObject({ value: 85, sourceKey: 'ownChoice' })
    expect(getDefaultLimit('conductorLayersInDynamicBendCount').value).toBe(1)
    expect(getItem('width-change-in-bend').check).not.toBeNull()
    expect(getItem('direction-change-in-bend').check).not.toBeNull()
  })
})
