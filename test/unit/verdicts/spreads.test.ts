import { describe, expect, test } from 'vitest'
import { listLibraryMaterials, SOURCES } from '@/lib/engine'

const isConstant = (
  value: unknown,
): value is { value: number; sourceKey: string; spread: { low: number; high: number; sourceKey: string } | null } =>
  typeof value === 'object' && value !== null && 'spread' in value

/** What a material is rated for: a bound that is held to as it stands, and no figure that is computed with. */
const RATINGS: readonly string[] = ['maxSolderDegC']

describe('spread of constants', () => {
  test.each(listLibraryMaterials().map((material) => [material.id, material] as const))(
    'every constant of %s has a low and a high value with a source',
    (_, material) => {
      const constants = Object.entries({ ...material, ...material.foil }).filter(([, value]) => isConstant(value))
      expect(constants.length).toBeGreaterThan(2)
      for (const [name, constant] of constants) {
        if (!isConstant(constant) || RATINGS.includes(name)) continue
        const { value, spread } = constant
        if (spread === null) throw new Error(`${name} has no spread`)
        expect(spread.low).toBeLessThanOrEqual(value)
        expect(spread.high).toBeGreaterThanOrEqual(value)
        expect(Object.hasOwn(SOURCES, spread.sourceKey)).toBe(true)
        // Only what a text prints as a limit has no spread.
        if (!name.startsWith('allowable')) expect(spread.high).toBeGreaterThan(spread.low)
      }
    },
  )
})
