import { expect, it } from 'vitest'
import { readSources } from './source-imports'

/** Numbers become text in one folder: a rounding elsewhere is how one radius came to be two on two sheets. */
const WRITES_NUMBERS = /\.(toFixed|toPrecision|toExponential|toLocaleString)\(|\bIntl\.NumberFormat\b/
const MAY_WRITE = [/^lib\/engine\/units\//, /^lib\/engine\/numerics\/round\.ts$/]

function findWriters(sources: readonly { readonly file: string; readonly code: string }[]): string[] {
  return sources
    .filter(({ file, code }) => WRITES_NUMBERS.test(code) && !MAY_WRITE.some((allowed) => allowed.test(file)))
    .map(({ file }) => file)
}

it('numbers are written by lib/engine/units alone', () => {
  const sources = ['app', 'lib', 'seed'].flatMap(readSources)
  expect(sources.length).toBeGreaterThan(500)
  expect(findWriters(sources)).toEqual([])
})

it('and a file that writes one itself is found', () => {
  const file = 'lib/package/report/bends.ts'
  expect(findWriters([{ file, code: 'const text = radiusMm.toFixed(1)' }])).toEqual([file])
  expect(findWriters([{ file, code: 'const format = new Intl.NumberFormat()' }])).toEqual([file])
  expect(findWriters([{ file, code: 'const text = asEntered(radiusMm, "mm")' }])).toEqual([])
})
