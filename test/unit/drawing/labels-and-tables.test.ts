import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { listLayerTable, nameConductorLayers } from '@/lib/drawing'
import { spreadLabels } from '@/lib/drawing/label-spread'
import { chooseScaleStep, formatTick } from '@/lib/drawing/thickness-axis'
import { loadDesign } from './demo-design'

describe('labels beside a section', () => {
  test('are never closer than their spacing, keep their order, and stay inside where they fit', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 500, noNaN: true }), { minLength: 1, maxLength: 40 }), (wanted) => {
        const sorted = [...wanted].sort((a, b) => a - b)
        const placed = spreadLabels(sorted, 12, 0, 500)
        expect(placed).toHaveLength(sorted.length)
        for (let index = 1; index < placed.length; index += 1) {
          expect((placed[index] ?? 0) - (placed[index - 1] ?? 0)).toBeGreaterThanOrEqual(12 - 1e-9)
        }
        expect(placed[0]).toBeGreaterThanOrEqual(-1e-9)
        expect(placed.at(-1)).toBeLessThanOrEqual(500 + 1e-9)
      }),
      { seed: 41, numRuns: 300 },
    )
  })

  test('stay where they are wanted when there is room', () => {
    expect(spreadLabels([10, 50, 90], 12, 0, 100)).toEqual([10, 50, 90])
  })
})

describe('scale steps', () => {
  test('are 1, 2 or 5 times a power of ten', () => {
    expect(chooseScaleStep(213, 5)).toBe(50)
    expect(chooseScaleStep(8.4, 5)).toBe(2)
    expect(chooseScaleStep(0.213, 5)).toBeCloseTo(0.05, 12)
  })

  test('ticks show the digits of their step', () => {
    expect(formatTick(0.15, 0.05)).toBe('0.15')
    expect(formatTick(100, 50)).toBe('100')
  })
})

describe('layer table of the drawing sheet', () => {
  const { design, evaluation } = loadDesign('skua-rev-a.json')
  const table = listLayerTable(design, evaluation.zones, 'um')

  test('lists every layer in order with its designation', () => {
    expect(table.rows.map((row) => row.name)).toEqual(design.construction.layers.map((layer) => layer.name))
    const named = table.rows.map((row) => row.designation).filter((text) => text !== '')
    expect(named).toEqual(['L1', 'F1 (L2)', 'F2 (L3)', 'L4'])
  })

  test('shows a dash where a zone lacks a layer, and its finished thickness where not', () => {
    const zone = evaluation.zones.find((candidate) => candidate.kind === 'flex')
    for (const [index, layer] of design.construction.layers.entries()) {
      const cell = table.rows[index]?.[`zone-${zone?.zoneId}`]
      const present = zone?.layers.find((candidate) => candidate.layerId === layer.id)
      expect(cell).toBe(present === undefined ? '–' : present.nominalUm.toFixed(1))
    }
  })
})

test('conductor layers that no flex zone has carry no flex designation', () => {
  const { design } = loadDesign('skua-rev-a.json')
  const names = [...nameConductorLayers(design.construction).values()]
  expect(names.map((name) => name.flex)).toEqual([null, 'F1', 'F2', null])
})
