import { describe, expect, test } from 'vitest'
import { findLibraryMaterial, listLibraryMaterials, materialSchema, SOURCES } from '@/lib/engine'

/** Every key of a source in a record, wherever it stands. */
function listSourceKeys(value: unknown): string[] {
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, each]) =>
    key === 'sourceKey' && typeof each === 'string' ? [each] : listSourceKeys(each),
  )
}

describe('material library', () => {
  test('has about thirty materials of every kind, each a valid record with an id of its own', () => {
    const materials = listLibraryMaterials()
    expect(materials.length).toBeGreaterThanOrEqual(28)
    expect(new Set(materials.map(({ id }) => id)).size).toBe(materials.length)
    expect(new Set(materials.map(({ kind }) => kind)).size).toBe(8)
    for (const material of materials) {
      expect(materialSchema.parse(structuredClone(material))).toEqual(material)
      expect(findLibraryMaterial(material.id)).toBe(material)
    }
    expect(findLibraryMaterial('no-such-material')).toBeNull()
  })

  test('names a registered source for each constant, and the spread of what is uncertain', () => {
    for (const material of listLibraryMaterials()) {
      const keys = listSourceKeys(material)
      expect(keys.length).toBeGreaterThanOrEqual(2)
      for (const key of keys) expect(Object.keys(SOURCES)).toContain(key)
      expect(material.note).toMatch(/\d/)
      expect(material.specification).not.toBe('')
    }
  })

  test('gives foil data to copper foils, and to them only', () => {
    for (const { kind, foil } of listLibraryMaterials()) expect(foil !== null).toBe(kind === 'copper-foil')
  })

  test('rolled-annealed foil has the allowables of IPC-2223 as reproduced in fabricator guides', () => {
    const foil = findLibraryMaterial('copper-ra')?.foil
    expect(foil?.allowableFoldOncePct).toMatchObject({ value: 16, sourceKey: 'ipc2223' })
    expect(foil?.allowableInstallPct).toMatchObject({ value: 10, sourceKey: 'ipc2223' })
    expect(findLibraryMaterial('copper-ed')?.foil?.allowableFoldOncePct).toMatchObject({
      value: 11,
      sourceKey: 'ipc2223',
    })
    expect(findLibraryMaterial('copper-ed')?.foil?.allowableInstallPct).toBeNull()
  })

  test('film moduli are those of the tables cited (2.5 GPa; 430 000 and 700 000 psi)', () => {
    const gpaPerPsi = 6.894757e-6
    expect(findLibraryMaterial('pi-coverlay')?.modulusGpa.value).toBe(2.5)
    expect(findLibraryMaterial('pi-base-adhesive')?.modulusGpa.value).toBeCloseTo(430_000 * gpaPerPsi, 1)
    expect(findLibraryMaterial('pi-base-adhesiveless')?.modulusGpa.value).toBeCloseTo(700_000 * gpaPerPsi, 1)
  })
})
