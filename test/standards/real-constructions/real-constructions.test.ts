import { describe, expect, test } from 'vitest'
import { evaluate } from '@/lib/engine'
import { readDesignFile } from '../../unit/engine-assembly/demo-design-files'

/**
 * Published, openly licensed circuits, entered as their documents describe them and cited in test/fixtures/README.md by
 * their place in its list. Expected values are those that the documents state.
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

describe('two layers with a finger end (circuit 3, fabrication notes)', () => {
  const { getZone, getItem } = evaluateFixture('two-layer-finger-end')

  test('the layers that the notes list add up to 132 um', () => {
    expect(getZone('body').thicknessUm).toBeCloseTo(12 + 20 + 28 + 12 + 28 + 20 + 12, 9)
  })

  test('the 133 um that the notes state are 1 um off, which rounding of layers explains', () => {
    const item = getItem('stated-thickness')
    expect(item.verdict).toBe('meets')
    const body = item.outcomes.find((outcome) => outcome.places.some(({ id }) => id === 'body'))
    if (body?.kind !== 'decided') throw new Error('not decided')
    expect(body.value).toMatchObject({ unit: 'pct' })
    expect(body.value.value).toBeCloseTo(100 / 133, 9)
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
})

describe('two-layer jumper (circuit 4, README)', () => {
  const { getZone, getItem } = evaluateFixture('two-layer-jumper')

  test('the usual two-layer sheets (assumed: 25 um films and adhesives, 18 um foil) come near the 0.15 mm that is stated', () => {
    const jumper = getZone('jumper')
    expect(jumper.worstCaseUm.low).toBeLessThan(150)
    expect(jumper.worstCaseUm.high).toBeGreaterThan(150)
    expect(Math.abs(jumper.thicknessUm - 150)).toBeLessThan(10)
  })

  test('the stated and the added-up thickness agree within a twentieth', () => {
    expect(getItem('stated-thickness').verdict).toBe('meets')
  })

  test('a 0.15 mm stiffener doubles the thickness at the soldered end', () => {
    expect(getZone('solder-end').thicknessUm - getZone('jumper').thicknessUm).toBeCloseTo(150, 9)
  })
})
