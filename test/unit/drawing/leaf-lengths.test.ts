import { describe, expect, test } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing'
import { type Design, evaluateDraft } from '@/lib/engine'
import { makeExampleDesign } from '../catalogue/example-design'

/** The example's arm of two like films, parted by an air gap of 100 um, in bends of 180 and 90 degrees. */
function makeLeaved(insideFaces: readonly ('top' | 'bottom')[]): Design {
  const design = structuredClone(makeExampleDesign())
  const arm = design.construction.zones.find(({ id }) => id === 'arm')
  const [bend] = design.bends
  if (arm === undefined || bend === undefined) throw new Error('the example has an arm and a bend')
  const film = (id: string) => ({
    id,
    name: id,
    kind: 'base-film' as const,
    materialId: 'pi-base-adhesiveless',
    thicknessUm: 50,
    tolerancePlusUm: 0,
    toleranceMinusUm: 0,
  })
  design.construction.layers = [
    film('upper'),
    { id: 'gap', name: 'gap', kind: 'unbonded-gap', thicknessUm: 100 },
    film('lower'),
  ]
  const on = (layerId: string) => ({ layerId, coverageFraction: null, platedCopper: null, hatch: null })
  design.construction.zones = [{ ...arm, presence: ['upper', 'gap', 'lower'].map(on) }]
  design.bends = insideFaces.map((insideFace, index) => ({
    ...bend,
    id: `bend-${index + 1}`,
    name: `Bend ${index + 1}`,
    zoneId: arm.id,
    insideFace,
    insideRadiusMm: 2,
    angleDeg: index === 0 ? 180 : 90,
    leafLengths: index === 0 ? ('stepped' as const) : null,
    leafStepMm: index === 0 ? 0.45 : null,
  }))
  return design
}

function tableOf(design: Design) {
  const block = makeSheetContents(design, evaluateDraft(design), FILE_UNITS).find(({ id }) => id === 'leaf-lengths')
  return block?.kind === 'table' ? block.rows.map(({ cells }) => cells) : null
}

describe('lengths of unbonded leaves on the drawing', () => {
  // Axes in the middle of each film, 150 um apart; arcs about one centre, so pi x 0.15 mm at half a turn (exact geometry).
  const halfTurnMm = Math.PI * 0.15

  test('differ by the angle times the distance of their axes, the inner one shorter', () => {
    const rows = tableOf(makeLeaved(['top'])) ?? []
    expect(rows.map((cells) => cells.slice(0, 2))).toEqual([
      ['B1', '1'],
      ['B1', '2'],
    ])
    const [inner, outer] = rows
    expect(inner?.[2]).toBe((Math.PI * 2.025).toFixed(3))
    expect(outer?.[2]).toBe((Math.PI * 2.175).toFixed(3))
    expect([inner?.[3], outer?.[3]]).toEqual(['0.000', halfTurnMm.toFixed(3)])
    expect([inner?.[4], outer?.[4]]).toEqual([halfTurnMm.toFixed(3), '0.000'])
    expect(inner?.[5]).toBe('stepped, outermost longer by 0.45 mm')
  })

  test('add up over the bends of a zone: one the other way takes half of it back', () => {
    const rows = tableOf(makeLeaved(['top', 'bottom'])) ?? []
    expect(rows.slice(2, 4).map((cells) => cells[3])).toEqual([(halfTurnMm / 2).toFixed(3), '0.000'])
    expect(rows.slice(4).map((cells) => [cells[0], cells[3]])).toEqual([
      ['Z1: B1 + B2', '0.000'],
      ['Z1: B1 + B2', (halfTurnMm / 2).toFixed(3)],
    ])
    const same = tableOf(makeLeaved(['top', 'top'])) ?? []
    expect(same.at(-1)?.[3]).toBe((1.5 * halfTurnMm).toFixed(3))
  })

  test('are not there for a part whose layers are bonded, or of which nothing was computed', () => {
    expect(tableOf(makeExampleDesign())).toBeNull()
    const blocks = makeSheetContents(makeLeaved(['top']), null, FILE_UNITS)
    expect(blocks.some(({ id }) => id === 'leaf-lengths')).toBe(false)
  })
})
