import { describe, expect, it } from 'vitest'
import { type LimitOverride, SOURCES } from '@/lib/engine'
import {
  CATALOGUE,
  describeLimit,
  evaluateItem,
  findLimitProblem,
  getDefaultLimit,
  LIMIT_KEYS,
  LIMITS,
  type LimitKey,
  makeLimitLookup,
} from '@/lib/engine/catalogue'
import { buildContext } from '@/lib/engine/evaluate'
import { makeExampleDesign } from './example-design'
import { listExamples } from './examples'

const WORKSPACE = { kind: 'workspace', name: 'Quillmoor Instruments' } as const
const FABRICATOR = { kind: 'fabricator', name: 'Brackenfold Circuits' } as const

describe('the dictionary of limits', () => {
  it.each(LIMIT_KEYS)('%s has a label, a source, a note, a default inside its range and a unit in its name', (key) => {
    const { label, unit, value, allowed, sourceKey, note } = LIMITS[key]
    expect(label).not.toBe('')
    expect(note).toMatch(/[.]$/)
    expect(SOURCES).toHaveProperty(sourceKey)
    expect(value).toBeGreaterThanOrEqual(allowed.min)
    expect(value).toBeLessThanOrEqual(allowed.max)
    const suffixes: Record<string, string> = { degc: 'degc', pct: 'pct' }
    expect(key.toLowerCase()).toMatch(new RegExp(`${suffixes[unit.toLowerCase()] ?? unit}$`))
  })

  it('is used up: every limit is asked for by an item', () => {
    const asked = new Set<string>(CATALOGUE.flatMap((item) => item.limits))
    expect(LIMIT_KEYS.filter((key) => !asked.has(key))).toEqual([])
  })

  it('names the standard or common practice as owner until somebody else sets the value', () => {
    expect(getDefaultLimit('cornerInsideRadiusMm')).toEqual({
      key: 'cornerInsideRadiusMm',
      value: 1,
      unit: 'mm',
      sense: 'at-least',
      sourceKey: 'guideRigidFlex2012',
      owner: { kind: 'common-practice', name: 'common practice' },
    })
    expect(getDefaultLimit('stiffenerOverlapMm').owner).toMatchObject({ kind: 'own-choice' })
    expect(getDefaultLimit('shieldStiffnessShareFraction').owner).toEqual({ kind: 'own-choice', name: 'our choice' })
  })

  it('refuses values outside the range and keys that it lacks, in words', () => {
    expect(findLimitProblem('crossingAngleDeg', 95)).toBe(
      'Angle of conductors to the bend axis must lie between 0 and 90 deg; 95 was given.',
    )
    expect(findLimitProblem('crossingAngleDeg', Number.NaN)).toContain('NaN was given')
    expect(findLimitProblem('crossingAngleDeg', 80)).toBeNull()
    expect(findLimitProblem('noSuchLimit', 1)).toBe('There is no limit "noSuchLimit".')
  })
})

/** The part itself asks for more than the least that may be set: then that decides. */
const FLOORS: readonly string[] = [
  'coverlayOpeningLaserMm',
  'coverlayOpeningDrillMm',
  'coverlayOpeningPunchMm',
  'coverlayWebLaserMm',
  'coverlayWebDrillMm',
  'coverlayWebPunchMm',
  'conductorWidthMm',
  'conductorSpaceMm',
  'coverlayOpeningMm',
  'coverlayWebMm',
  'thicknessTolerancePct',
  'thicknessToleranceUm',
  'statedThicknessDifferenceUm',
]

describe('overrides', () => {
  const lookup = (...overrides: LimitOverride[]) => makeLimitLookup(overrides)

  it('replace value and owner, the later one winning', () => {
    const getLimit = lookup(
      { key: 'holeToBendMm', value: 2, owner: WORKSPACE },
      { key: 'holeToBendMm', value: 3, owner: FABRICATOR },
    )
    expect(getLimit('holeToBendMm')).toMatchObject({ value: 3, owner: FABRICATOR, unit: 'mm', sense: 'at-least' })
  })

  it('are passed over when the key is unknown or the value may not be set', () => {
    const getLimit = lookup(
      { key: 'noSuchLimit', value: 1, owner: WORKSPACE },
      { key: 'holeToBendMm', value: Number.NaN, owner: WORKSPACE },
      { key: 'holeToBendMm', value: -1, owner: WORKSPACE },
    )
    expect(getLimit('holeToBendMm')).toEqual(getDefaultLimit('holeToBendMm'))
  })

  it('throw for a key that no dictionary has', () => {
    expect(() => lookup()('noSuchLimit')).toThrow('no limit "noSuchLimit" in the dictionary of limits')
  })

  it.each(LIMIT_KEYS)('of %s reach an outcome, which then says whose limit it is', (key) => {
    const { min, max } = LIMITS[key].allowed
    for (const value of FLOORS.includes(key) ? [max] : [min, max]) {
      const limits = findLimitsInOutcomes(key, { key, value, owner: FABRICATOR })
      expect(limits.length).toBeGreaterThan(0)
      for (const limit of limits) expect(limit).toMatchObject({ value, owner: FABRICATOR })
    }
  })

  it('can turn a verdict', () => {
    const item = CATALOGUE.find(({ id }) => id === 'hole-to-bend')
    if (item === undefined) throw new Error('item is gone')
    const verdict = (value: number) =>
      evaluateItem(
        item,
        buildContext(makeExampleDesign(), { limits: [{ key: 'holeToBendMm', value, owner: WORKSPACE }] }),
      ).verdict
    expect(verdict(8)).toBe('meets')
    expect(verdict(8.001)).toBe('fails')
  })
})

it('limits read as people say them', () => {
  expect(describeLimit(getDefaultLimit('platingInBendUm'))).toBe('none allowed')
  expect(describeLimit(getDefaultLimit('holeToBendMm'))).toBe('at least 1.27 mm')
})

/** The limit as it arrives in outcomes, over all examples of the items that ask for it. */
function findLimitsInOutcomes(key: LimitKey, override: LimitOverride) {
  return CATALOGUE.filter((item) => item.limits.includes(key)).flatMap((item) =>
    listExamples(item.id).flatMap((example) => {
      const design = makeExampleDesign()
      example.change?.(design)
      const { outcomes } = evaluateItem(item, buildContext(design, { limits: [override], facts: example.facts ?? {} }))
      return outcomes.flatMap((outcome) =>
        (outcome.kind === 'decided' || outcome.kind === 'cannot-tell') && outcome.limit?.key === key
          ? [outcome.limit]
          : [],
      )
    }),
  )
}
