import { describe, expect, it } from 'vitest'
import { umFromLength } from '@/lib/engine'
import { getDefaultLimit, LIMITS, type LimitKey } from '@/lib/engine/catalogue'

/**
 * What guides of the trade print for each dimension, as far as found; guides disagree, so a default limit has to lie
 * within the spread and, where its source prints one figure, on it. `printed` is our choice where several do.
 */
const PUBLISHED: readonly { key: LimitKey; printed: number; spread: readonly [number, number]; source: string }[] = [
  {
    key: 'holeToBendMm',
    printed: 1.27,
    spread: [1.27, 1.27],
    source: 'fabricator guide on circuit construction (no date): plated hole to bend 0.050 in',
  },
  {
    key: 'openingToBendMm',
    printed: 2.54,
    spread: [2.54, 2.54],
    source: 'fabricator guide on circuit construction (no date): coverlay opening to bend 0.100 in',
  },
  {
    key: 'transitionStripMm',
    printed: 1.5,
    spread: [0.5, 3.18],
    source:
      'IPC-6013, transition area of 3 mm, as quoted by a trade article of 2025; fabricator guides (2012, 2023, no date); 3.18 mm from IPC-2223, from memory',
  },
  {
    key: 'bendToRigidMm',
    printed: 2.5,
    spread: [2, 5],
    source: 'fabricator guides (2012, 2023): 5 mm, least 2.5 mm; 2 mm',
  },
  {
    key: 'copperToOutlineMm',
    printed: 0.5,
    spread: [0.1, 0.7],
    source: 'fabricator guides (2012, 2023, no date), design magazine (2023)',
  },
  {
    key: 'coverlayOpeningDrillMm',
    printed: 0.5,
    spread: [0.2, 0.8],
    source: 'fabricator guides (no date): 0.8 (0.5), 0.5, 0.20 mm',
  },
  {
    key: 'coverlayWebDrillMm',
    printed: 0.25,
    spread: [0.2, 0.3],
    source: 'fabricator guide with a capability table (no date)',
  },
  {
    key: 'coverlayCaptureMm',
    printed: 0.15,
    spread: [0.1, 0.3],
    source: 'fabricator guide on design rules (no date): opening 0.2 mm smaller than the land',
  },
  {
    key: 'annularRingMm',
    printed: 0.125,
    spread: [0.075, 0.25],
    source: 'fabricator guides (2012, 2023, no date): hole + 0.40; + 0.15 to 0.26; + 0.50 mm',
  },
]

describe('default limits against published guides', () => {
  it.each(PUBLISHED)('$key: $source', ({ key, printed, spread }) => {
    const { value } = getDefaultLimit(key)
    expect(value).toBe(printed)
    expect(value).toBeGreaterThanOrEqual(spread[0])
    expect(value).toBeLessThanOrEqual(spread[1])
    const { allowed } = LIMITS[key]
    expect(allowed.min, 'the whole spread can be set').toBeLessThanOrEqual(spread[0])
    expect(allowed.max, 'the whole spread can be set').toBeGreaterThanOrEqual(spread[1])
  })
})

describe('facts of the trade (common practice, no published source)', () => {
  it('inside corners away from flex may be sharper than 30 mil, those beside flex are rounder', () => {
    const thirtyMil = umFromLength(30, 'mil') / 1000
    expect(getDefaultLimit('cornerElsewhereRadiusMm').value).toBeLessThan(thirtyMil)
    expect(getDefaultLimit('cornerInsideRadiusMm').value).toBeGreaterThan(thirtyMil)
    // The guide of 2012 prints 1.0 mm beside flex.
    expect(getDefaultLimit('cornerInsideRadiusMm')).toMatchObject({ value: 1, sourceKey: 'guideRigidFlex2012' })
  })

  it('a stiffener overlaps the end of the coverlay by 30 to 50 mil', () => {
    const { value } = getDefaultLimit('stiffenerOverlapMm')
    expect(value).toBeGreaterThanOrEqual(umFromLength(30, 'mil') / 1000)
    expect(value).toBeLessThanOrEqual(umFromLength(50, 'mil') / 1000)
    expect(LIMITS.stiffenerOverlapMm.allowed.max).toBeGreaterThan(umFromLength(50, 'mil') / 1000)
  })

  it('adhesive of about 1 mil goes to an ounce of copper, spoken of as 1.4 mil', () => {
    expect(getDefaultLimit('coverlayAdhesivePerCopperRatio').value).toBeCloseTo(1 / 1.4, 1)
  })
})
