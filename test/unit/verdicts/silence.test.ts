import { describe, expect, test } from 'vitest'
import { type Design, evaluate, evaluateDraft, MARKABLE_LISTS, type MarkableList, parseDesign } from '@/lib/engine'
import { findContradictedMarks } from '@/lib/engine/catalogue/listed'
import { buildContext } from '@/lib/engine/evaluate'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { drawPlan } from '../catalogue/drawn-plan'
import { makeExampleDesign } from '../catalogue/example-design'
import { DEMO_DESIGNS, readDemoDesign } from '../engine-assembly/demo-design-files'
import { completeStart } from './complete-start'

const DESIGNS: readonly Design[] = [
  ...DEMO_DESIGNS.map(readDemoDesign),
  ...listStartingConstructions().map(({ makeDesign }) => makeDesign('Start')),
  makeExampleDesign(),
]

/** The share of the items that meet, of all and of those that apply: neither may grow by saying less. */
function countShares(design: Design) {
  // Which failures follow from another moves no verdict.
  const { items } = evaluateDraft(design)
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
    const { holes, pads, widthSteps, coverlayOpenings, components } = copy.features
    for (const each of [...holes, ...pads, ...widthSteps, ...coverlayOpenings, ...components]) {
      each.nearestBend = null
    }
    for (const stiffener of copy.features.stiffeners) stiffener.nearestBend = null
  } else if (list === 'crossings') for (const conductor of copy.features.conductors) conductor.crossings = []
  else copy.features[list] = []
  return copy
}

/** Paths of all lists of a design that hold something. */
function listLists(value: unknown, path: readonly string[] = []): string[][] {
  if (value === null || typeof value !== 'object') return []
  const inner = Object.entries(value).flatMap(([key, each]) => listLists(each, [...path, key]))
  return Array.isArray(value) && value.length > 0 && typeof value[0] === 'object' ? [[...path], ...inner] : inner
}

function liesBesideAnother({ features: { conductors } }: Design, at: number): boolean {
  const layerId = conductors[at]?.layerId
  const others = conductors.filter((other, index) => index !== at && other.layerId === layerId)
  return (conductors[at]?.crossings ?? []).every(({ bendId }) =>
    others.some(({ crossings }) => crossings.some((crossing) => crossing.bendId === bendId)),
  )
}

const LISTS_THAT_MAY_BE_EMPTY: readonly string[] = [
  'brief.outgassing',
  'features.conductors.crossings',
  ...'components conductors connectors coverlayOpenings holes outlineCorners pads registrations slits stiffeners widthSteps'
    .split(' ')
    .map((list) => `features.${list}`),
  'plan.areas',
  'plan.bendLines',
  'plan.dividingLines',
]

function makeDrawnExample(): Design {
  const design = makeExampleDesign()
  drawPlan(design)
  return design
}

/** Paths of all numbers, choices and groups of fields. */
function listValues(value: unknown, path: readonly string[] = []): string[][] {
  if (typeof value === 'number' || (typeof value === 'string' && value !== '')) return [[...path]]
  if (value === null || typeof value !== 'object') return []
  const inner = Object.entries(value).flatMap(([key, each]) => listValues(each, [...path, key]))
  return Array.isArray(value) || path.length === 0 ? inner : [[...path], ...inner]
}

/** Fields in which null says something, and hides nothing. */
const NULL_IS_AN_ANSWER: ReadonlySet<string> = new Set([
  // Nothing is stated beside the sum of the layers: there is nothing to compare.
  'construction.zones.statedThicknessUm',
])

const FILLED_DESIGNS: readonly (readonly [name: string, design: Design])[] = [
  ...listStartingConstructions().map(({ id, makeDesign }) => [id, completeStart(makeDesign('Start'))] as const),
  ...DEMO_DESIGNS.map((name) => [name, readDemoDesign(name)] as const),
  ['the example', makeExampleDesign()],
]

describe('silence', () => {
  test.each(MARKABLE_LISTS)('emptying the list of %s never raises the share that meets', (list) => {
    for (const design of DESIGNS) {
      const [before, after] = [countShares(design), countShares(empty(design, list))]
      expect(after.ofAll, `${design.name} of all`).toBeLessThanOrEqual(before.ofAll)
      expect(after.ofApplicable, `${design.name} of what applies`).toBeLessThanOrEqual(before.ofApplicable)
    }
  })

  /** Every other list: what a zone holds, own materials, contacts, lists of the plan. */
  test('emptying any list at all never raises the share that meets', () => {
    const tried = new Set<string>()
    const raised: string[] = []
    for (const design of [...DESIGNS, makeDrawnExample()]) {
      const before = countShares(design)
      for (const path of listLists(design)) {
        const pattern = path.filter((key) => !/^[0-9]+$/.test(key)).join('.')
        // Where another conductor of its layer crosses a bend, this one may lie beside: that is an answer, and no silence.
        if (pattern === 'features.conductors.crossings' && liesBesideAnother(design, Number(path[2]))) continue
        const after = structuredClone(design)
        const parent = path.slice(0, -1).reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], after)
        Object.assign(parent as object, { [path.at(-1) ?? '']: [] })
        const parsed = parseDesign(after)
        if (!parsed.ok) continue
        tried.add(pattern)
        const { ofAll, ofApplicable } = countShares(parsed.value)
        if (ofAll > before.ofAll || ofApplicable > before.ofApplicable) raised.push(`${design.name}: ${path.join('.')}`)
      }
    }
    expect(raised).toEqual([])
    // Others are refused when they are empty: a zone without layers, an outline without corners.
    expect(LISTS_THAT_MAY_BE_EMPTY.filter((list) => !tried.has(list))).toEqual([])
  }, 300_000)

  test('turning any yes or no to unknown never raises the share that meets', () => {
    let tried = 0
    const raised = new Set<string>()
    for (const design of [...DESIGNS, makeDrawnExample()]) {
      const before = countShares(design)
      const text = JSON.stringify(design)
      for (const match of text.matchAll(/"(\w+)":(true|false)(?=[,}])/g)) {
        const [whole, field] = match
        const changed = `${text.slice(0, match.index)}"${field}":null${text.slice(match.index + whole.length)}`
        tried += 1
        const after = countShares(JSON.parse(changed) as Design)
        if (after.ofAll > before.ofAll || after.ofApplicable > before.ofApplicable)
          raised.add(`${design.name}: ${field}`)
      }
    }
    expect([...raised]).toEqual([])
    expect(tried).toBeGreaterThan(100)
  }, 300_000)

  /** Every choice, number and group of numbers that may be unknown: one of each kind of field in each design. */
  test.each(FILLED_DESIGNS)(
    'turning a choice or a number of %s to unknown never raises the share that meets',
    (_, design) => {
      const before = countShares(design)
      const tried = new Set<string>()
      const raised: string[] = []
      for (const path of listValues(design)) {
        const pattern = path.filter((key) => !/^[0-9]+$/.test(key)).join('.')
        if (tried.has(pattern) || NULL_IS_AN_ANSWER.has(pattern)) continue
        const after = structuredClone(design)
        const parent = path.slice(0, -1).reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], after)
        Object.assign(parent as object, { [path.at(-1) ?? '']: null })
        const parsed = parseDesign(after)
        if (!parsed.ok) continue
        tried.add(pattern)
        const { ofAll, ofApplicable } = countShares(parsed.value)
        if (ofAll > before.ofAll || ofApplicable > before.ofApplicable) raised.push(pattern)
      }
      expect(raised).toEqual([])
      expect(tried.size).toBeGreaterThan(40)
    },
    300_000,
  )

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
