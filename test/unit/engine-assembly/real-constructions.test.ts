import { describe, expect, test } from 'vitest'
import { evaluate } from '@/lib/engine'
import { readDesignFile } from './demo-design-files'

/** What the engine makes of the circuits of test/fixtures/README.md where their documents are silent: assumptions are ours. */
function evaluateFixture(name: string) {
  const evaluation = evaluate(readDesignFile(`test/fixtures/designs/${name}.json`))
  const getItem = (itemId: string) => {
    const item = evaluation.items.find((candidate) => candidate.itemId === itemId)
    if (item === undefined) throw new Error(`no item ${itemId}`)
    return item
  }
  return { evaluation, getItem }
}

describe('two layers with a finger end', () => {
  const { evaluation } = evaluateFixture('two-layer-finger-end')

  test('a hundredth of a millimetre more stiffener leaves a thin margin; 0.04 mm more does not fit', () => {
    for (const [extraUm, verdict] of [
      [10, 'thin-margin'],
      [40, 'fails'],
    ] as const) {
      const design = readDesignFile('test/fixtures/designs/two-layer-finger-end.json')
      const stiffener = design.construction.layers.find(({ id }) => id === 'stiffener-finger')
      if (stiffener === undefined) throw new Error('no stiffener')
      stiffener.thicknessUm += extraUm
      const item = evaluate(design).items.find(({ itemId }) => itemId === 'finger-thickness')
      expect(item?.verdict).toBe(verdict)
    }
  })

  test('a symmetric construction has its neutral axis in the middle (rolled-annealed foil and equal coverage assumed)', () => {
    const [bend] = evaluation.bends
    expect(bend?.leaves[0]?.neutralAxisDepthUm).toBeCloseTo(66, 9)
    const [inner, outer] = bend?.conductors ?? []
    expect(inner?.innerStrainPct).toBeCloseTo(-(outer?.outerStrainPct ?? 0), 12)
    // 54 um from the axis to the outer copper face, 3 mm inside radius (assumed): 54 / 3066.
    expect(bend?.peakStrainPct).toBeCloseTo((100 * 54) / 3066, 9)
  })
})

describe('two-layer jumper', () => {
  const { evaluation, getItem } = evaluateFixture('two-layer-jumper')

  test('the filled area on the bottom is a plane in the bend: it moves the axis, and the signals see more than the formula assumes', () => {
    expect(getItem('plane-in-bend').verdict).toBe('fails')
    const [bend] = evaluation.bends
    const signals = bend?.conductors.find(({ layerId }) => layerId === 'l1')
    const plane = bend?.conductors.find(({ layerId }) => layerId === 'l2')
    expect(signals?.peakStrainPct).toBeGreaterThan(1.5 * (plane?.peakStrainPct ?? 0))
    expect(bend?.minRadiusByStrainMm).toBeGreaterThan(bend?.handbook.minRadiusMm ?? 0)
    expect(bend?.disagreement.join(' ')).toContain('neutral axis')
  })

  test('one bend to install is within what rolled-annealed foil allows (foil assumed), and needs naming of what is unknown', () => {
    expect(getItem('bend-strain').verdict).toBe('meets')
    expect(getItem('surface-finish').verdict).toBe('not-computed')
  })
})
