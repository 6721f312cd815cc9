import { describe, expect, test } from 'vitest'
import { type Design, evaluate, MARKABLE_LISTS, type MarkableList } from '@/lib/engine'
import { findContradictedMarks } from '@/lib/engine/catalogue/listed'
import { buildContext } from '@/lib/engine/evaluate'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { makeExampleDesign } from '../catalogue/example-design'
import { DEMO_DESIGNS, readDemoDesign } from '../engine-assembly/demo-design-files'

const DESIGNS: readonly Design[] = [
  ...DEMO_DESIGNS.map(readDemoDesign),
  ...listStartingConstructions().map(({ makeDesign }) => makeDesign('Start')),
  makeExampleDesign(),
]

/** The share of the items that meet, of all and of those that apply: neither may grow by saying less. */
function countShares(design: Design) {
  const { items } = evaluate(design)
  const meets = items.filter(({ verdict }) => verdict === 'meets').length
  const applicable = items.filter(({ verdict }) => verdict !== 'not-applicable').length
  return { ofAll: meets / items.length, ofApplicable: meets / Math.max(1, applicable) }
}

function empty(design: Design, list: MarkableList): Design {
  const copy = structuredClone(design)
  copy.features.none = copy.features.none.filter((marked) => marked !== list)
  if (list === 'bends') {
    copy.bends = []
    for (const conductor of copy.features.conductors) conductor.crossings = []
    for (const each of [...copy.features.holes, ...copy.features.coverlayOpenings, ...copy.features.components]) {
      each.nearestBend = null
    }
    for (const stiffener of copy.features.stiffeners) stiffener.nearestBend = null
  } else if (list === 'crossings') for (const conductor of copy.features.conductors) conductor.crossings = []
  else copy.features[list] = []
  return copy
}

describe('silence', () => {
  test.each(MARKABLE_LISTS)('emptying the list of %s never raises the share that meets', (list) => {
    for (const design of DESIGNS) {
      const [before, after] = [countShares(design), countShares(empty(design, list))]
      expect(after.ofAll, `${design.name} of all`).toBeLessThanOrEqual(before.ofAll)
      expect(after.ofApplicable, `${design.name} of what applies`).toBeLessThanOrEqual(before.ofApplicable)
    }
  })

  test('turning any yes or no to unknown never raises the share that meets', () => {
    let tried = 0
    for (const design of DESIGNS) {
      const before = countShares(design)
      const text = JSON.stringify(design)
      for (const match of text.matchAll(/:(true|false)(?=[,}])/g)) {
        const changed = `${text.slice(0, match.index)}:null${text.slice(match.index + match[0].length)}`
        tried += 1
        const after = countShares(JSON.parse(changed) as Design)
        expect(after.ofAll, changed.slice(match.index - 60, match.index + 5)).toBeLessThanOrEqual(before.ofAll)
      }
    }
    expect(tried).toBeGreaterThan(100)
  }, 300_000)

  test('emptying all lists makes no item inapplicable that applied', () => {
    for (const design of DESIGNS) {
      const silent = MARKABLE_LISTS.reduce(empty, design)
      const before = new Map(evaluate(design).items.map(({ itemId, verdict }) => [itemId, verdict]))
      const vanished = evaluate(silent)
        .items.filter(({ itemId, verdict }) => verdict === 'not-applicable' && before.get(itemId) !== verdict)
        .map(({ itemId }) => itemId)
      expect(vanished, design.name).toEqual([])
    }
  })

  test('a flex zone without a bend is questioned until somebody says that the part is never bent', () => {
    const silent = empty(makeExampleDesign(), 'bends')
    const find = (design: Design) => evaluate(design).items.find(({ itemId }) => itemId === 'bend-strain')
    expect(find(silent)).toMatchObject({
      verdict: 'not-computed',
      headline: expect.stringContaining('no bend is listed, and the list is not marked as empty'),
    })
    silent.features.none.push('bends')
    expect(find(silent)?.verdict).toBe('not-applicable')
  })

  test('a mark against what the construction says is named, and makes nothing inapplicable', () => {
    const design = empty(makeExampleDesign(), 'holes')
    design.features.none.push('holes')
    const found = findContradictedMarks(buildContext(design))
    expect(found).toEqual([
      { list: 'holes', because: 'the list is marked as having no hole, but layers L1 rigid and L2 flex are plated' },
    ])
    const ring = evaluate(design).items.find(({ itemId }) => itemId === 'annular-ring')
    expect(ring).toMatchObject({ verdict: 'not-computed', headline: expect.stringContaining('but layers') })
  })
})
