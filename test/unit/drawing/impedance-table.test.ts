import { expect, test } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing/sheet/contents'
import { evaluate } from '@/lib/engine'
import { asComputed } from '@/lib/engine/units'
import { makeLineDesign } from '../lines/example-lines'

const findTable = (...given: Parameters<typeof makeSheetContents>) => {
  const block = makeSheetContents(...given).find(({ id }) => id === 'impedances')
  return block?.kind === 'table' ? block : undefined
}

test('the drawing prints each stated impedance with what the build gives, by zone, and its coupon', () => {
  const design = makeLineDesign('single')
  const results = evaluate(design)
  const outcome = results.items.find(({ itemId }) => itemId === 'impedance-value')?.outcomes[0]
  if (outcome?.kind !== 'decided') throw new Error('not decided')
  const [row, ...others] = findTable(design, results, FILE_UNITS)?.rows ?? []
  expect(others).toEqual([])
  expect(row?.cells).toEqual([
    design.features.conductors[0]?.name,
    outcome.places.find(({ kind }) => kind === 'zone')?.name,
    '45',
    '±30 %',
    expect.stringMatching(/^45\.9$/),
    `${asComputed(outcome.range?.low, 'impedanceOhm').replace(' Ω', '')} to ${asComputed(outcome.range?.high, 'impedanceOhm')}`,
    expect.stringMatching(/^yes/),
  ])
})

test('what nobody can tell, and what was not computed, is said in place of a figure', () => {
  const design = makeLineDesign('single')
  Object.assign(design.features.conductors[0] ?? {}, { widthMm: null })
  expect(findTable(design, evaluate(design), FILE_UNITS)?.rows[0]?.cells.slice(4, 6)).toEqual(['not computed', '–'])
  expect(findTable(design, null, FILE_UNITS)).toBeUndefined()
  Object.assign(design.features.conductors[0] ?? {}, { impedanceOhm: null })
  expect(findTable(design, evaluate(design), FILE_UNITS)).toBeUndefined()
})
