import { describe, expect, test } from 'vitest'
import { SOURCES } from '@/lib/engine'
import { evaluateItem, getItem, LIMITS } from '@/lib/engine/catalogue'
import { findLeastWidthMm } from '@/lib/engine/catalogue/width-for-copper'
import { buildContext } from '@/lib/engine/evaluate'
import { makeExampleDesign } from './example-design'
import { PUBLISHED_RANGES } from './published-ranges'

describe('limits beside what public guides print', () => {
  test.each(PUBLISHED_RANGES)('$key is $delivered, and its note says what was found', (row) => {
    const { value, allowed, sourceKey, note } = LIMITS[row.key]
    expect(value).toBe(row.delivered)
    expect(sourceKey).toBe(row.source)
    for (const figure of row.says) expect(note).toContain(figure)
    for (const figure of row.sourceSays ?? []) expect(SOURCES[sourceKey].note).toContain(figure)
    if (row.printed === null) return
    // Whoever follows any of these guides can set its figure.
    expect(allowed.min).toBeLessThanOrEqual(row.printed[0])
    expect(allowed.max).toBeGreaterThanOrEqual(row.printed[1])
  })

  // Guides: 0.05 to 0.10 mm on the thinnest copper, 0.20 mm and more on the heaviest; the steps are our choice within them.
  test.each([
    [15, 0.075],
    [25, 0.1],
    [45, 0.125],
    [70, 0.2],
    [94, 0.25],
  ])('finished copper of %d um asks for %d mm', (finishedUm, leastMm) => {
    expect(findLeastWidthMm(finishedUm)).toBe(leastMm)
  })

  // Table attributed to IPC-2223: 10 where a bend stays, 20 where it is bent now and then, on one conductor layer.
  test.each([
    ['fold-once', 10],
    ['flex-to-install', 20],
  ] as const)('a bend of use %s is held to %d times its thickness', (use, ratio) => {
    const design = makeExampleDesign()
    const at = design.bends.findIndex(({ id }) => id === 'fold')
    Object.assign(design.bends[at] ?? {}, { use })
    expect(buildContext(design).bends[at]?.ratio.required).toBe(ratio)
  })

  test('half an ounce of foil, 17 um, is never too heavy, and twice of it is where nothing asks for it', () => {
    const judge = (thicknessUm: number) => {
      const design = makeExampleDesign()
      for (const layer of design.construction.layers) if (layer.id === 'l2') Object.assign(layer, { thicknessUm })
      return evaluateItem(getItem('foil-weight'), buildContext(design)).verdict
    }
    expect([judge(12), judge(17), judge(34.3)]).toEqual(['meets', 'meets', 'fails'])
  })

  test('panel and cost are advice: no figure was found for either', () => {
    for (const id of ['parts-per-panel', 'construction-cost']) expect(getItem(id).severity, id).toBe('advice')
  })
})
