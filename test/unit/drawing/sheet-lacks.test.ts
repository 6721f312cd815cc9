import { describe, expect, test } from 'vitest'
import { findSheetLacks } from '@/lib/drawing'
import { type Design, evaluate, findLibraryMaterial } from '@/lib/engine'
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

  type Change = (design: Design) => void
  const findLayer = (d: Design, kind: Design['construction']['layers'][number]['kind']) => {
    const layer = d.construction.layers.find((each) => each.kind === kind)
    if (layer === undefined) throw new RangeError(`the design has no ${kind}`)
    return layer
  }
  /** Calls the material of a layer out by a text of its own. */
  const callOut = (d: Design, kind: 'coverlay-film' | 'stiffener', specification: string) => {
    const layer = findLayer(d, kind)
    if (layer.kind === 'unbonded-gap') throw new RangeError('air has no call-out')
    const material = findLibraryMaterial(layer.materialId)
    if (material === null) throw new RangeError('not of the library')
    d.materials.push({ ...structuredClone(material), id: `own-${kind}`, specification })
    layer.materialId = `own-${kind}`
  }
  const takeOut = (d: Design, kind: 'coverlay-film' | 'stiffener') => {
    const { id } = findLayer(d, kind)
    for (const zone of d.construction.zones) zone.presence = zone.presence.filter(({ layerId }) => layerId !== id)
  }

  const ATTACKS: readonly (readonly [name: string, itemId: string, change: Change])[] = [
    ['a call-out that is empty', 'coverlay-detail', (d) => callOut(d, 'coverlay-film', '')],
    ['a call-out that says "tbd"', 'coverlay-detail', (d) => callOut(d, 'coverlay-film', 'TBD')],
    ['a call-out of dashes', 'coverlay-detail', (d) => callOut(d, 'coverlay-film', '--')],
    ['a stiffener of "t.b.d."', 'stiffener-detail', (d) => callOut(d, 'stiffener', 't.b.d.')],
    [
      'a call-out that sends to a paper without naming it',
      'coverlay-detail',
      (d) => callOut(d, 'coverlay-film', 'per spec'),
    ],
    ['a stiffener of "ok"', 'stiffener-detail', (d) => callOut(d, 'stiffener', 'ok')],
    [
      'a stiffener named "-"',
      'stiffener-detail',
      (d) => {
        for (const stiffener of d.features.stiffeners) stiffener.name = '-'
      },
    ],
    [
      'a stiffener for nobody knows what',
      'stiffener-detail',
      (d) => {
        for (const stiffener of d.features.stiffeners) stiffener.purpose = null
      },
    ],
    [
      'a bend named "tbd"',
      'bend-call-out',
      (d) => {
        for (const bend of d.bends) bend.name = 'tbd'
      },
    ],
    ['a stiffener in no zone', 'stiffener-detail', (d) => takeOut(d, 'stiffener')],
    ['a layer in no zone', 'layer-table', (d) => takeOut(d, 'coverlay-film')],
    [
      'a layer named "n/a"',
      'layer-table',
      (d) => {
        findLayer(d, 'conductor').name = 'n/a'
      },
    ],
    [
      'a stiffener that nothing holds',
      'stiffener-detail',
      (d) => {
        for (const { id } of d.construction.layers.filter(({ kind }) => kind === 'adhesive'))
          for (const zone of d.construction.zones.filter(({ kind }) => kind === 'finger'))
            zone.presence = zone.presence.filter(({ layerId }) => layerId !== id)
      },
    ],
    [
      'no operating temperature',
      'bend-call-out',
      (d) => {
        d.brief.operatingMaxDegC = null
      },
    ],
    [
      'no use of the last bend',
      'bend-call-out',
      (d) => {
        Object.assign(d.bends.at(-1) ?? {}, { use: null })
      },
    ],
    [
      'cycles that another bend has',
      'bend-call-out',
      (d) => {
        const [one, other] = d.bends
        Object.assign(one ?? {}, { use: 'dynamic', requiredCycles: 1000 })
        Object.assign(other ?? {}, { use: 'dynamic', requiredCycles: null })
      },
    ],
  ]
  test.each(ATTACKS)('%s: %s does not meet', (_, itemId, change) => {
    const design = readDemoDesign('skua-rev-b')
    expect(judge(design, itemId)?.verdict).toBe('meets')
    change(design)
    expect(['fails', 'not-computed']).toContain(judge(design, itemId)?.verdict)
  })

  test('what a bend that stands still is not asked for leaves nothing open', () => {
    const design = readDemoDesign('skua-rev-b')
    for (const bend of design.bends) Object.assign(bend, { use: 'fold-once', requiredCycles: null })
    expect(findSheetLacks(design).bends).toEqual([])
    expect(judge(design, 'bend-call-out')?.verdict).toBe('meets')
  })

  test('a stiffener does not answer for another whose name begins alike', () => {
    const facts = { sheetLacks: { layers: [], bends: [], coverlay: [], stiffeners: ['Rib (2) (held by)'] } }
    const design = readDemoDesign('skua-rev-b')
    const [stiffener] = design.features.stiffeners
    if (stiffener === undefined) throw new RangeError('the design has a stiffener')
    const verdictFor = (name: string) => {
      stiffener.name = name
      return evaluate(design, { facts }).items.find(({ itemId }) => itemId === 'stiffener-detail')?.verdict
    }
    expect(verdictFor('Rib (2)')).toBe('fails')
    expect(verdictFor('Rib')).toBe('meets')
  })
})
