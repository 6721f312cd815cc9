import { renderToString } from 'react-dom/server'
import { expect, test } from 'vitest'
import { FlexTestSets } from '@/app/_components/flex-tests/flex-test-sets'
import { makeRows, WORKSPACE } from './rows'

const render = (rows: Parameters<typeof FlexTestSets>[0]['rows']) =>
  renderToString(<FlexTestSets rows={rows} owner={WORKSPACE} />).replaceAll('<!-- -->', '')

test('a set shows slope, lives with bounds and ductility, and that results use the lower bound', () => {
  const html = render(makeRows({ strainRangePct: 0.233 }))
  expect(html).toContain('Set Hinge 18')
  expect(html).toContain('Weibull slope 1.9, 90 % bounds 1.14 to 2.88; results use the lower bound.')
  expect(html).toContain('Inside radius, mm')
  // Fatigue ductility with both bounds, as the fit has it.
  expect(html).toContain('0.505 (0.355 to 0.709)')
})

test('a set that cannot be used says why, and no figure stands for its life', () => {
  const html = render(makeRows({ result: 'survived' }))
  expect(html).toContain('Not used in results: no specimen failed')
  expect(html).not.toContain('Weibull slope')
  expect(html).not.toMatch(/NaN|undefined|Infinity/)
})

test('bare foil is said to give ductility alone', () => {
  const bare = { kind: 'bare-foil', thicknessUm: 18, insideRadiusMm: 1, strainRangePct: null } as const
  expect(render(makeRows(bare, [300, 340, 380, 430]))).toContain('Used for ductility alone')
})

test('without rows it says so', () => {
  expect(render([])).toContain('No flex test yet.')
})
