import { describe, expect, test } from 'vitest'
import { findSheetLacks } from '@/lib/drawing'
import { type Design, evaluate } from '@/lib/engine'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

const judge = (design: Design, itemId: string) =>
  evaluate(design, { facts: { sheetLacks: findSheetLacks(design) } }).items.find((item) => item.itemId === itemId)

describe('what the drawing sheet states', () => {
  test('is calculated: nobody is asked about a sheet that is made from the design', () => {
    const design = readDemoDesign('skua-rev-b')
    // Nobody recorded anything about a drawing.
    for (const key of ['layersNamedOnDrawing', 'bendsCalledOutOnDrawing', 'coverlayDetailOnDrawing'] as const) {
      design.features.routing[key] = null
    }
    for (const stiffener of design.features.stiffeners) stiffener.onDrawing = null
    expect(findSheetLacks(design)).toEqual({ layers: [], bends: [], coverlay: [], stiffeners: [] })
    for (const itemId of ['layer-table', 'bend-call-out', 'coverlay-detail', 'stiffener-detail']) {
      expect(judge(design, itemId)).toMatchObject({ basis: 'computed', verdict: 'meets' })
    }
  })

  test('names what it leaves open, whatever somebody recorded', () => {
    const design = readDemoDesign('skua-rev-b')
    for (const stiffener of design.features.stiffeners) stiffener.coverlayOverlapMm = null
    const [bend] = design.bends
    if (bend === undefined) throw new Error('the design has a bend')
    bend.use = null
    const lacks = findSheetLacks(design)
    expect(lacks.bends).toEqual([`${bend.name} (use)`])
    expect(lacks.stiffeners).toEqual([expect.stringMatching(/overlap with the coverlay end/)])
    expect(judge(design, 'stiffener-detail')).toMatchObject({
      basis: 'computed',
      verdict: 'fails',
      headline: expect.stringContaining('Open: '),
    })
  })

  test('a recorded no about a drawing fails all the same, and without the sheet a yes waits for a person', () => {
    const design = readDemoDesign('skua-rev-b')
    design.features.routing.layersNamedOnDrawing = false
    expect(judge(design, 'layer-table')).toMatchObject({ basis: 'stated', verdict: 'fails' })
    design.features.routing.layersNamedOnDrawing = true
    const alone = evaluate(design).items.find(({ itemId }) => itemId === 'layer-table')
    expect(alone).toMatchObject({ basis: 'stated', verdict: 'needs-judgment' })
  })
})
