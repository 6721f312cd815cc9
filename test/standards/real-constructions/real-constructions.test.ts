import { describe, expect, test } from 'vitest'
import { evaluate } from '@/lib/engine'
import { readDesignFile } from '../../unit/engine-assembly/demo-design-files'

/**
 * Two published, openly licensed circuits, entered as their documents describe them (test/fixtures/designs/README.md).
 * Expected values are those that the documents state; where a document is silent the assumption is named in the title.
 */
function evaluateFixture(name: string) {
  const evaluation = evaluate(readDesignFile(`test/fixtures/designs/${name}.json`))
  const getZone = (zoneId: string) => {
    const zone = evaluation.zones.find((candidate) => candidate.zoneId === zoneId)
    if (zone === undefined) throw new Error(`no zone ${zoneId}`)
    return zone
  }
  const getItem = (itemId: string) => {
    const item = evaluation.items.find((candidate) => candidate.itemId === itemId)
    if (item === undefined) throw new Error(`no item ${itemId}`)
    return item
  }
  return { evaluation, getZone, getItem }
}

describe('hand-held device flex (fabrication notes of the project, CERN OHL v1.2)', () => {
  const { evaluation, getZone, getItem } = evaluateFixture('hand-held-device-flex')

  test('the layers that the notes list add up to 132 um', () => {
    expect(getZone('body').thicknessUm).toBeCloseTo(12 + 20 + 28 + 12 + 28 + 20 + 12, 9)
  })

  test('the 133 um that the notes state is a finding', () => {
    const item = getItem('stated-thickness')
    expect(item.verdict).toBe('fails')
    const body = item.outcomes.find((outcome) => outcome.places.some(({ id }) => id === 'body'))
    if (body?.kind !== 'decided') throw new Error('not decided')
    expect(Math.abs(body.value.value)).toBeCloseTo(1, 9)
    expect(body.summary).toContain('133')
    expect(body.summary).toContain('132')
  })

  test('the connector end is 0.3 mm +/- 0.03 mm thick, which just fits a window of the same width', () => {
    const connector = getZone('connector')
    expect(connector.thicknessUm).toBeCloseTo(300, 9)
    expect(connector.worstCaseUm.low).toBeCloseTo(270, 9)
    expect(connector.worstCaseUm.high).toBeCloseTo(330, 9)
    expect(getItem('finger-thickness').verdict).toBe('meets')
  })

  test('a hundredth of a millimetre more stiffener leaves a thin margin; 0.04 mm more does not fit', () => {
    for (const [extraUm, verdict] of [
      [10, 'thin-margin'],
      [40, 'fails'],
    ] as const) {
      const design = readDesignFile('test/fixtures/designs/hand-held-device-flex.json')
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

describe('console jumper flex (README of the project, CERN-OHL-W-2.0)', () => {
  const { evaluation, getZone, getItem } = evaluateFixture('console-jumper-flex')

  test('the usual two-layer sheets (assumed: 25 um films and adhesives, 18 um foil) come near the 0.15 mm that is stated', () => {
    const jumper = getZone('jumper')
    expect(jumper.worstCaseUm.low).toBeLessThan(150)
    expect(jumper.worstCaseUm.high).toBeGreaterThan(150)
    expect(Math.abs(jumper.thicknessUm - 150)).toBeLessThan(10)
  })

  test('the difference between stated and added-up thickness is a finding', () => {
    expect(getItem('stated-thickness').verdict).toBe('fails')
  })

  test('a 0.15 mm stiffener doubles the thickness at the soldered end', () => {
    expect(getZone('solder-end').thicknessUm - getZone('jumper').thicknessUm).toBeCloseTo(150, 9)
  })

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
