import { describe, expect, it } from 'vitest'
import { umFromLength } from '@/lib/engine'
import { getDefaultLimit, LIMITS, type LimitKey } from '@/lib/engine/catalogue'

/**
 * What guides of the trade print for each dimension, as far as found; guides disagree, so a default limit has to lie
 * within the spread and, where its source prints one figure, on it.
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
    key: 'holeToTransitionMm',
    printed: 1.27,
    spread: [0.76, 3.18],
    source: 'fabricator guides (2012, 2023, no date); 3.18 mm from IPC-2223, from memory',
  },
  {
    key: 'bendToRigidMm',
    printed: 2.5,
    spread: [2, 5],
    source: 'fabricator guides (2012, 2023): 5 mm, least 2.5 mm; 2 mm',
  },
  {
    key: 'stiffenerToBendMm',
    printed: 2,
    spread: [2, 2],
    source: 'fabricator guide (2023): bends 2 mm from a connector end',
  },
  {
    key: 'copperToOutlineMm',
    printed: 0.5,
    spread: [0.1, 0.7],
    source: 'fabricator guides (2012, 2023, no date), design magazine (2023)',
  },
  {
    key: 'coverlayOpeningMm',
    printed: 0.5,
    spread: [0.2, 0.8],
    source: 'fabricator guides (no date): 0.8 (0.5), 0.5, 0.20 mm',
  },
  {
    key: 'coverlayWebMm',
    printed: 0.2,
    spread: [0.2, 0.2],
    source: 'fabricator guide with a capability table (no date)',
  },
  {
    key: 'coverlayCaptureMm',
    printed: 0.1,
    spread: [0.1, 0.1],
    source: 'fabricator guide on design rules (no date): opening 0.2 mm smaller than the land',
  },
  {
    key: 'annularRingMm',
    printed: 0.2,
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
  it('inside corners get a radius of at least 30 mil', () => {
    expect(getDefaultLimit('cornerInsideRadiusMm')).toMatchObject({
      value: umFromLength(30, 'mil') / 1000,
      sense: 'at-least',
      sourceKey: 'commonPractice',
    })
    // Beside it: 0.75 mm in a design magazine of 2023, the same to within a hundredth of a millimetre or so.
    expect(Math.abs(getDefaultLimit('cornerInsideRadiusMm').value - 0.75)).toBeLessThan(0.013)
  })

  it('a stiffener overlaps the end of the coverlay by 30 to 50 mil', () => {
    expect(getDefaultLimit('stiffenerOverlapMm')).toMatchObject({
      value: umFromLength(30, 'mil') / 1000,
      sourceKey: 'commonPractice',
    })
    expect(LIMITS.stiffenerOverlapMm.allowed.max).toBeGreaterThan(umFromLength(50, 'mil') / 1000)
  })

  it('adhesive of about 1 mil goes to an ounce of copper, spoken of as 1.4 mil', () => {
    expect(getDefaultLimit('coverlayAdhesivePerCopperRatio').value).toBeCloseTo(1 / 1.4, 1)
  })
})
