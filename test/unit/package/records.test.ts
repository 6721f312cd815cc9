import { expect, test } from 'vitest'
import { FEATURE_FIELDS, listLibraryMaterials } from '@/lib/engine'
import { digitsAsEntered } from '@/lib/engine/units'
import { describeRecord } from '@/lib/package/report/records'
import { makeExampleDesign } from '../catalogue/example-design'

const design = makeExampleDesign()

test('a record reads as labels and values, and ends with what nobody stated', () => {
  const [bend] = design.bends
  const text = describeRecord(
    design,
    {
      id: 'h1',
      name: 'Vias',
      drillMm: 0.25,
      plated: true,
      filling: null,
      nearestBend: { bendId: bend?.id, distanceMm: 11 },
    },
    FEATURE_FIELDS.holes.entry,
    ['name'],
  )
  expect(text).toBe(`Drill: 0.25 mm; Plated: yes; Nearest bend: ${bend?.name}, distance: 11 mm. Not stated: filling`)
})

test('a record of which nothing is stated says so', () => {
  expect(describeRecord(design, { filling: null }, FEATURE_FIELDS.holes.entry)).toBe('Not stated: filling')
})

test('no constant of the library carries the last bits of an addition', () => {
  const ends = listLibraryMaterials().flatMap((material) =>
    [...Object.values(material), ...Object.values(material.foil ?? {})].flatMap((constant: unknown) =>
      typeof constant === 'object' && constant !== null && 'spread' in constant
        ? Object.values(constant.spread ?? {}).filter((end): end is number => typeof end === 'number')
        : [],
    ),
  )
  expect(ends.length).toBeGreaterThan(200)
  expect(ends.filter((end) => digitsAsEntered(end).replace(/^0\.0*|\D/g, '').length > 9)).toEqual([])
})
