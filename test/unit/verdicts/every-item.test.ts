import { createHash } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { type Design, getOutcomeVerdict, parseDesign, type ReviewFacts, type Verdict } from '@/lib/engine'
import { CATALOGUE, type ItemDefinition } from '@/lib/engine/catalogue'
import { evaluateItem } from '@/lib/engine/catalogue/evaluate-catalogue'
import { findUnmetNeed } from '@/lib/engine/catalogue/needs'
import { buildContext } from '@/lib/engine/evaluate'
import { isInputOf } from '@/lib/review'
import { makeExampleDesign } from '../catalogue/example-design'
import { listExamples } from '../catalogue/examples'
import { readDemoDesign } from '../engine-assembly/demo-design-files'
import { buildFigures } from './figures'
import { makeOneBend } from './one-bend'

/*
 * What properties.test.ts tries at random, gone through item by item: each input that an item declares is made worse, and each that it rests
 * on is taken away, in designs in which the item says something. The counts keep it from passing over an item unseen.
 */

type Path = readonly (string | number)[]
type Root = Record<string, unknown>
type Worse = 'smaller' | 'larger' | 'yes' | 'no'

const COMPUTED = CATALOGUE.filter(({ check }) => check !== null)
const RANK: Record<Verdict, number> = {
  fails: 5,
  'cannot-tell': 4,
  'not-computed': 3,
  'thin-margin': 2,
  meets: 1,
  'not-applicable': 0,
}
const FACTORS = [0.02, 0.3, 2.5]
/** Of a list, as many entries are made worse, one at a time. */
const MOST_PLACES = 4
/** Inputs of an item that are taken away one at a time, at most so many in each design. */
const MOST_REMOVED = 16
/** Those that are looked at for one whose absence leaves the item without a verdict: more, so that a change of the demo designs hides none. */
const MOST_SEARCHED = 64
/** A default stands in for these, and results say so. */
const WITH_DEFAULT = ['lifeSurvivalPct', 'lifeWeibullSlope', 'ratioTableKey']

/** Items that share an input are judged on the same documents, and what is computed of a document takes nearly all of the time. */
const contexts = new Map<string, ReturnType<typeof buildFigures> | null>()
/** More would fill the memory of a small machine. */
const MOST_KEPT = 1500

function findContext(root: Root): ReturnType<typeof buildFigures> | null {
  const key = createHash('sha256').update(JSON.stringify(root)).digest('base64')
  const kept = contexts.get(key)
  if (kept !== undefined) return kept
  const { facts, ...document } = root
  const parsed = parseDesign(document)
  const context = parsed.ok ? buildFigures(withSharedPlan(parsed.value, document.plan), facts as ReviewFacts) : null
  const [oldest] = contexts.keys()
  if (contexts.size >= MOST_KEPT && oldest !== undefined) contexts.delete(oldest)
  contexts.set(key, context)
  return context
}

function judge(item: ItemDefinition, root: Root): Verdict | null {
  const context = findContext(root)
  if (context === null) return null
  if (item.check === null) return 'not-applicable'
  const unmet = findUnmetNeed(item.appliesTo.needs, context)
  if (unmet !== null) return unmet.kind === 'absent' ? 'not-applicable' : 'not-computed'
  let worst: Verdict = 'not-applicable'
  for (const outcome of item.check(context)) {
    const verdict = getOutcomeVerdict(outcome)
    if (RANK[verdict] > RANK[worst]) worst = verdict
  }
  return worst
}

const plans = new WeakMap<object, Design['plan']>()

/** What is measured of a plan is kept with it, so the same plan stays the same object. */
function withSharedPlan(design: Design, source: unknown): Design {
  if (typeof source !== 'object' || source === null) return design
  const plan = plans.get(source) ?? design.plan
  plans.set(source, plan)
  return { ...design, plan }
}

const read = (root: unknown, path: Path): unknown =>
  path.reduce<unknown>((at, key) => (at as Record<string | number, unknown> | null | undefined)?.[key], root)

/** What the path does not touch is shared: what was worked out of a plan is kept with it. */
function write(root: Root, path: Path, value: unknown): Root {
  const set = (at: unknown, [key, ...rest]: Path): unknown => {
    if (key === undefined) return value
    const inner = (at as Record<string | number, unknown>)[key]
    if (Array.isArray(at)) return at.with(Number(key), set(inner, rest))
    return { ...(at as object), [key]: set(inner, rest) }
  }
  return set(root, path) as Root
}

function expand(root: unknown, pattern: string): Path[] {
  let paths: Path[] = [[]]
  for (const part of pattern.split('.')) {
    const key = part.endsWith('[]') ? part.slice(0, -2) : part
    paths = paths.flatMap((path) => {
      const value = read(root, [...path, key])
      if (value === undefined || value === null) return []
      return part.endsWith('[]') ? (value as unknown[]).map((_, at) => [...path, key, at]) : [[...path, key]]
    })
  }
  return paths
}

/** Toward 100 % but never past it; smaller toward 0, a value that is negative further from it. */
function worsen(path: Path, value: unknown, worse: Worse, factor: number): unknown {
  if (worse === 'yes' || worse === 'no') return worse === 'yes'
  if (typeof value !== 'number') return value
  const field = String(path.at(-1))
  if (field === 'lifeSurvivalPct') return value + (100 - value) * Math.min(0.9, factor)
  const isCount = /Count$|^open|^comfortable$|^outside$|^unknown$|Days|SinceFabricator/.test(field)
  const step = Math.max(Math.abs(value), 1) * factor
  const whole = Math.max(1, Math.round(step))
  if (worse === 'larger') return isCount ? value + whole : value + step
  if (isCount) return value < 0 ? value - whole : Math.max(0, value - whole)
  return value < 0 ? value - step : value * (1 - Math.min(0.9, factor))
}

const FACTS: ReviewFacts = {
  evaluatedOn: '2026-11-23',
  openEngineeringQueries: 0,
  openMustChangeThreads: 0,
  daysSinceFabricatorLooked: 4,
  changesSinceFabricatorLooked: 0,
  artworkFileCount: 9,
  artwork: null,
  capability: { comfortable: 9, stretch: 1, outside: 0, notStated: 2 },
  stock: { onShelf: 5, toOrder: 2, unknown: 0 },
  orderSlackDays: 12,
  partsPerPanel: 12,
  panelUtilisationFraction: 0.7,
  costOverCheapestRatio: 1,
}

const MORE: readonly Design[] = [
  readDemoDesign('skua-rev-a'),
  readDemoDesign('skua-rev-b'),
  makeOneBend({ requiredCycles: 30, bends: [{ insideRadiusMm: 20 }, { insideRadiusMm: 30 }] }),
  makeOneBend({ requiredCycles: null, bends: [{ insideRadiusMm: 20, use: 'flex-to-install' }] }),
  // Holds by every rule, and just so: half of the radius does not.
  makeOneBend({ requiredCycles: 100, bends: [{ insideRadiusMm: 4.2, radiusToleranceMm: 0.1 }] }),
]

/** Bends with second states and loads: what they state is made worse, and not taken away, since blank says that there is none. */
const LOADED: readonly Design[] = [
  makeOneBend({
    requiredCycles: 100,
    bends: [
      { insideRadiusMm: 6, flexesFromRadiusMm: 12, foldedToRadiusMm: 3, pullN: 2, twistDeg: 8, twistLengthMm: 30 },
      { insideRadiusMm: 8, flexesFromAngleDeg: 40, foldedToRadiusMm: 5, pullN: 1, twistDeg: 5, twistLengthMm: 40 },
    ],
  }),
]

/** The item's own examples, whatever they come to, and designs with all features. */
function listRoots(item: ItemDefinition): Root[] {
  const examples = listExamples(item.id).map(({ change, facts }) => {
    const design = makeExampleDesign()
    change?.(design)
    return { ...design, facts: { ...FACTS, ...facts } }
  })
  return [...examples, ...MORE.map((design) => ({ ...design, facts: FACTS }))]
}

test('no verdict rests on what only pictures and remarks show', () => {
  for (const design of [...MORE, ...LOADED]) {
    const judgeAll = (context: ReturnType<typeof buildFigures>) =>
      COMPUTED.map((item) => [item.id, evaluateItem(item, context).outcomes.map(getOutcomeVerdict)])
    expect(judgeAll(buildFigures(design, FACTS))).toEqual(judgeAll(buildContext(design, { facts: FACTS })))
  }
})

const declared = COMPUTED.flatMap((item) => item.monotone.map((input) => ({ item, input })))

describe('an input that an item declares, made worse', () => {
  test.each(declared.map(({ item, input }) => [item.id, input.path, input.worse, item] as const))(
    '%s: %s %s',
    (_, path, worse, item) => {
      let judged = 0
      let moved = 0
      for (const root of [...listRoots(item), ...LOADED.map((design) => ({ ...design, facts: FACTS }))]) {
        const was = judge(item, root)
        if (was === null || was === 'not-applicable') continue
        for (const place of thin(expand(root, path), MOST_PLACES)) {
          for (const factor of FACTORS) {
            const is = judge(item, write(root, place, worsen(place, read(root, place), worse, factor)))
            if (is === null) continue
            judged += 1
            if (is !== was) moved += 1
            expect([place.join('.'), factor, was, is, RANK[is] >= RANK[was]]).toEqual([
              place.join('.'),
              factor,
              was,
              is,
              true,
            ])
          }
        }
      }
      expect(judged).toBeGreaterThanOrEqual(3)
      moves.set(`${item.id}: ${path}`, moved)
    },
    120_000,
  )

  const moves = new Map<string, number>()
  /** Here the declared inputs move the figure, and in these designs not past its limit. */
  const FAR_FROM_LIMIT = ['plating-in-bend', 'neutral-axis', 'copper-encapsulation', 'coverlay-opening', 'leaf-length']
  test('moves the verdict of every other item', () => {
    const still = [...new Set(declared.map(({ item }) => item.id))].filter(
      (id) => ![...moves].some(([key, moved]) => key.startsWith(`${id}: `) && moved > 0),
    )
    expect(still).toEqual(FAR_FROM_LIMIT)
  })
})

function listLeaves(value: unknown, path: Path = []): Path[] {
  const inner = Array.isArray(value)
    ? value.flatMap((each, at) => listLeaves(each, [...path, at]))
    : value !== null && typeof value === 'object'
      ? Object.entries(value).flatMap(([key, each]) => listLeaves(each, [...path, key]))
      : []
  return path.length === 0 ? inner : [path, ...inner]
}

/** The path with ids in place of indices, as inputs are declared. */
function withIds(root: Root, path: Path): string[] {
  return path.map((key, at) => {
    if (typeof key === 'string') return key
    const entry = read(root, path.slice(0, at + 1)) as { id?: string; layerId?: string } | null
    return entry?.id ?? entry?.layerId ?? String(key)
  })
}

/** Every n-th of a list, so that at most so many are left. */
function thin<T>(list: readonly T[], most: number): T[] {
  const step = Math.max(1, Math.ceil(list.length / most))
  return list.filter((_, at) => at % step === 0)
}

/** An item's inputs in a document that are there to be taken away. */
function listRemovable(id: string, root: Root): Path[] {
  return listLeaves(root).filter(
    (path) =>
      path[0] !== 'facts' &&
      !WITH_DEFAULT.includes(String(path.at(-1))) &&
      read(root, path) !== null &&
      isInputOf(id, withIds(root, path)),
  )
}

const emptied = (value: unknown): unknown => (Array.isArray(value) ? [] : typeof value === 'string' ? '' : null)

/** Documents in which an item says something else than "meets", some of them for want of an input that was taken away. */
function listConcerns(item: ItemDefinition): { root: Root; was: Verdict }[] {
  const found: { root: Root; was: Verdict }[] = []
  let gapCount = 0
  const examples = listRoots(item).slice(0, -MORE.length + 1)
  for (const root of examples) {
    const was = judge(item, root)
    if (was !== null && was !== 'meets') found.push({ root, was })
    for (const path of thin(listRemovable(item.id, root), MOST_SEARCHED)) {
      if (gapCount >= MOST_GAPS) break
      const without = write(root, path, emptied(read(root, path)))
      const is = judge(item, without)
      if (is === null || (!GAPS.has(is) && is !== 'fails') || is === was) continue
      gapCount += GAPS.has(is) ? 1 : 0
      found.push({ root: without, was: is })
    }
  }
  return found
}

const GAPS: ReadonlySet<Verdict> = new Set(['not-applicable', 'not-computed', 'cannot-tell'])
const MOST_GAPS = 3

/** A brief whose finish has no metal says by itself that the contacts have none: then no finish is a statement, not a gap. */
const STATED_BY_ABSENCE = new Set(['finger-thickness: contactFinish'])

/** Two statements contradict each other; where one of them is taken away, nothing does. */
const CURED_BY_ABSENCE: readonly string[] = ['statements-agree']

/** Items that no single missing input of these designs leaves without a verdict: they count, or rest on facts of the review. */
const WITHOUT_GAP: readonly string[] = [
  'conductor-corners',
  'conductor-spacing',
  'stock-materials',
  'layer-names',
  // It rests on files.
  'netlist',
  'stiffener-detail',
  'electrical-test',
  'parts-per-panel',
  'construction-cost',
  'engineering-queries',
  'prepreg-set-back',
]

describe('an input that an item rests on, taken away', () => {
  /** How many comparisons were made from a verdict that is a gap. */
  const gaps = new Map<string, number>()

  test.each(COMPUTED.map((item) => [item.id, item] as const))(
    '%s',
    (id, item) => {
      let gap = 0
      const faults = new Set<string>()
      for (const { root, was } of listConcerns(item)) {
        for (const path of thin(listRemovable(id, root), MOST_REMOVED)) {
          const nothing = emptied(read(root, path))
          for (const value of new Set([null, nothing])) {
            const is = judge(item, write(root, path, value))
            if (is === null) continue
            if (GAPS.has(was)) gap += 1
            if (is !== 'meets' || STATED_BY_ABSENCE.has(`${id}: ${String(path.at(-1))}`)) continue
            if (GAPS.has(was) || value === null) faults.add(`without ${path.join('.')}: ${was} to meets`)
          }
        }
      }
      if (!CURED_BY_ABSENCE.includes(id)) expect([...faults]).toEqual([])
      gaps.set(id, gap)
    },
    240_000,
  )

  test('begins from a gap for every item that can have one', () => {
    const without = COMPUTED.filter(({ id }) => (gaps.get(id) ?? 0) === 0).map(({ id }) => id)
    expect(without).toEqual(WITHOUT_GAP)
  })
})
