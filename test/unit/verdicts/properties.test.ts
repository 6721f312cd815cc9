import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Design, getOutcomeVerdict, parseDesign, type ReviewFacts, type Verdict } from '@/lib/engine'
import { CATALOGUE, type ItemDefinition } from '@/lib/engine/catalogue'
import { evaluateItem } from '@/lib/engine/catalogue/evaluate-catalogue'
import { findUnmetNeed } from '@/lib/engine/catalogue/needs'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { makeExampleDesign } from '../catalogue/example-design'
import { DEMO_DESIGNS, readDemoDesign } from '../engine-assembly/demo-design-files'
import { buildFigures } from './figures'
import { makeOneBend } from './one-bend'

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

type Document = { design: Design; facts: ReviewFacts }
type Path = readonly (string | number)[]

const DESIGNS: readonly Design[] = [
  ...DEMO_DESIGNS.map(readDemoDesign),
  ...listStartingConstructions().map(({ makeDesign }) => makeDesign('Start')),
  makeExampleDesign(),
  makeOneBend({ foilId: 'copper-ed', requiredCycles: 300, bends: [{}, { insideRadiusMm: 6 }] }),
  makeOneBend({ requiredCycles: 2500, bends: [{}, { insideRadiusMm: 6, use: 'flex-to-install' }] }),
]

/** The demo designs, the starting constructions, and ones like them with other radii, cycles, foils, currents and temperatures. */
const anyDesign = fc
  .record({
    base: fc.constantFrom(...DESIGNS),
    radius: fc.double({ min: 0.3, max: 3, noNaN: true }),
    logCycles: fc.double({ min: 0, max: 9, noNaN: true }),
    survivalPct: fc.constantFrom(50, 90, 99, 99.9999),
    tolerance: fc.constantFrom(null, 0, 0.05, 0.3),
    foilId: fc.constantFrom(null, 'copper-ra', 'copper-ed'),
    currentAmp: fc.constantFrom(0, 0.05, 0.5, 3),
    operatingMaxDegC: fc.constantFrom(40, 85, 125),
    use: fc.constantFrom(null, 'fold-once', 'flex-to-install', 'dynamic'),
  })
  .map(({ base, radius, logCycles, survivalPct, tolerance, foilId, currentAmp, operatingMaxDegC, use }): Design => {
    const design = structuredClone(base)
    design.brief.lifeSurvivalPct = survivalPct
    design.brief.operatingMaxDegC = operatingMaxDegC
    for (const bend of design.bends) {
      bend.radiusToleranceMm *= Math.min(1, radius)
      bend.insideRadiusMm *= radius
      if (use !== null) bend.use = use
      if (bend.use === 'dynamic') bend.requiredCycles = 10 ** logCycles
    }
    for (const layer of design.construction.layers) {
      if (layer.kind === 'unbonded-gap') continue
      if (layer.kind === 'conductor' && foilId !== null) layer.materialId = foilId
      if (tolerance !== null) layer.tolerancePlusUm = tolerance * layer.thicknessUm
      if (tolerance !== null) layer.toleranceMinusUm = tolerance * layer.thicknessUm
    }
    for (const conductor of design.features.conductors) {
      conductor.currentAmp = currentAmp
      conductor.lengthMm ??= 80
      conductor.allowedRiseDegC ??= 20
      conductor.allowedDropVolt ??= 0.1
    }
    return design
  })

/** One and two bends between two radii or two angles, folded before, pulled and twisted, some of it beyond the models. */
const anyLoadedDesign = fc
  .record({
    insideRadiusMm: fc.double({ min: 0.4, max: 30, noNaN: true }),
    tolerance: fc.constantFrom(0, 0.05),
    from: fc.option(fc.double({ min: 1.05, max: 20, noNaN: true }), { nil: null }),
    isByAngle: fc.boolean(),
    fold: fc.option(fc.double({ min: 0.1, max: 1.5, noNaN: true }), { nil: null }),
    pullN: fc.constantFrom(null, 0, 0.5, 5, 60, 5000),
    twistDeg: fc.constantFrom(null, 0, 5, 30, 180),
    twistLengthMm: fc.double({ min: 5, max: 200, noNaN: true }),
    use: fc.constantFrom('fold-once', 'flex-to-install', 'dynamic'),
    logCycles: fc.double({ min: 0, max: 7, noNaN: true }),
    foilId: fc.constantFrom('copper-ra', 'copper-ed'),
    isReversed: fc.boolean(),
  })
  .map(({ insideRadiusMm, tolerance, from, isByAngle, fold, use, logCycles, foilId, isReversed, ...loads }): Design => {
    const isBetween = from !== null && use === 'dynamic' && !isReversed
    const hasTwist = loads.twistDeg !== null
    return makeOneBend({
      foilId,
      requiredCycles: use === 'dynamic' ? 10 ** logCycles : null,
      bends: [insideRadiusMm, 2 * insideRadiusMm].map((radiusMm) => ({
        use,
        motion: isReversed ? 'reversed' : 'one-way',
        insideRadiusMm: radiusMm,
        radiusToleranceMm: tolerance * radiusMm,
        flexesFromRadiusMm: isBetween && !isByAngle ? from * radiusMm : null,
        flexesFromAngleDeg: isBetween && isByAngle ? 90 / from : null,
        foldedToRadiusMm: fold === null ? null : fold * radiusMm,
        ...loads,
        twistLengthMm: hasTwist ? loads.twistLengthMm : null,
      })),
    })
  })

const RANK: Record<Verdict, number> = {
  fails: 5,
  'cannot-tell': 4,
  'not-computed': 3,
  'thin-margin': 2,
  meets: 1,
  'not-applicable': 0,
}

/** What the calculation of an item comes to, before a person's turn. */
function judge(item: ItemDefinition, { design, facts }: Document): Verdict {
  const context = buildFigures(design, facts)
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

const read = (root: unknown, path: Path): unknown =>
  path.reduce<unknown>((at, key) => (at as Record<string | number, unknown> | null | undefined)?.[key], root)

function write<T>(root: T, path: Path, value: unknown): T {
  const copy = structuredClone(root)
  const parent = read(copy, path.slice(0, -1)) as Record<string | number, unknown>
  parent[path.at(-1) ?? ''] = value
  return copy
}

/** Every place that `bends[].insideRadiusMm` stands for. */
function expand(root: unknown, pattern: string): Path[] {
  let paths: Path[] = [[]]
  for (const part of pattern.split('.')) {
    const isList = part.endsWith('[]')
    const key = isList ? part.slice(0, -2) : part
    paths = paths.flatMap((path) => {
      const at = [...path, key]
      const value = read(root, at)
      if (value === undefined) return []
      return isList ? (value as unknown[]).map((_, index) => [...at, index]) : [at]
    })
  }
  return paths
}

function toDocument(design: Design): { root: Record<string, unknown>; facts: ReviewFacts } {
  return { root: { ...design, facts: FACTS }, facts: FACTS }
}

function fromRoot(root: Record<string, unknown>): Document | null {
  const { facts, ...design } = root
  const parsed = parseDesign(design)
  return parsed.ok ? { design: parsed.value, facts: facts as ReviewFacts } : null
}

function worsen(value: unknown, worse: 'smaller' | 'larger' | 'yes' | 'no', factor: number): unknown {
  if (worse === 'yes') return true
  if (worse === 'no') return false
  if (typeof value !== 'number') return value
  const step = Math.max(Math.abs(value), 1) * factor
  if (worse === 'larger') return Number.isInteger(value) ? value + Math.max(1, Math.round(step)) : value + step
  return Number.isInteger(value)
    ? Math.max(0, value - Math.max(1, Math.round(step)))
    : value * (1 - Math.min(0.9, factor))
}

describe('worse inputs', () => {
  test('each item that calculates declares inputs, or compares counts and choices alone', () => {
    const silent = CATALOGUE.filter(({ check, monotone }) => check !== null && monotone.length === 0).map(
      ({ id }) => id,
    )
    expect(silent.sort()).toEqual(
      [
        'artwork-agreement',
        'netlist',
        'ends-in-bend',
        'etch-traps',
        'bead',
        'bead-beside-moving-bend',
        'package-contents',
        'bend-on-plan',
        'plan-agreement',
        'carrier',
        'combined-motion',
        'floor-life',
        'folded-clearance',
        'holes-in-flex',
        'impedance-given',
        'return-path',
        'wear',
        'bend-cover',
        'bend-use',
        'circuit-type',
        'clad-adhesive',
        'conductor-layers-in-bend',
        'finger-support',
        'flexible-adhesive-in-rigid',
        'flexible-adhesive-in-rigid-class-three',
        'outer-cover',
        'zone-joints',
        'feature-lists',
        'foil-type',
        'foil-weight',
        'layer-names',
        'leaf-pull',
        'manufacturing-review',
        'material-call-outs',
        'panel-form',
        'plane-in-bend',
        'plane-in-fold',
        'radius-holder',
        'requirement-range',
        'surface-finish',
        'sheet-bonds',
        'stack-symmetry',
        'stated-thickness',
        'statements-agree',
        'change-control',
        'esd-entry',
        'first-article',
        'precedence',
        'pull-load',
        'substances',
        'substitutes',
        'via-structure',
        'tear-stop',
        'unbonded-leaves',
      ].sort(),
    )
  })

  const declared = CATALOGUE.filter(({ monotone }) => monotone.length > 0)
  test('never improve the verdict of the item that declares them', () => {
    let tried = 0
    fc.assert(
      fc.property(
        anyDesign,
        fc.constantFrom(...declared),
        fc.nat(1000),
        fc.nat(1000),
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        (design, item, pickInput, pickPlace, factor) => {
          const input = item.monotone[pickInput % item.monotone.length]
          if (input === undefined) return
          const { root } = toDocument(design)
          const places = expand(root, input.path)
          const place = places[pickPlace % Math.max(1, places.length)]
          if (place === undefined) return
          const value = read(root, place)
          if (value === null || value === undefined) return
          const before = fromRoot(root)
          const after = fromRoot(write(root, place, worsen(value, input.worse, factor)))
          if (before === null || after === null) return
          tried += 1
          const [was, is] = [judge(item, before), judge(item, after)]
          if (RANK[is] < RANK[was])
            throw new Error(`${item.id}: ${place.join('.')} ${value} worse by ${factor}: ${was} to ${is}`)
        },
      ),
      { seed: 20_261_128, numRuns: 700 },
    )
    expect(tried).toBeGreaterThan(200)
  }, 900_000)
})

describe('more of a second state or a load', () => {
  const declared = CATALOGUE.filter(({ monotone }) => monotone.some(({ path }) => path === 'bends[].pullN'))
  test('never improves the verdict', () => {
    let tried = 0
    fc.assert(
      fc.property(
        anyLoadedDesign,
        fc.constantFrom(...declared),
        fc.nat(1000),
        fc.nat(1),
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        (design, item, pickInput, pickPlace, factor) => {
          const input = item.monotone[pickInput % item.monotone.length]
          if (input === undefined) return
          const { root } = toDocument(design)
          const places = expand(root, input.path)
          const place = places[pickPlace % Math.max(1, places.length)]
          const value = place === undefined ? null : read(root, place)
          if (place === undefined || value === null || value === undefined) return
          const before = fromRoot(root)
          const after = fromRoot(write(root, place, worsen(value, input.worse, factor)))
          if (before === null || after === null) return
          tried += 1
          const [was, is] = [judge(item, before), judge(item, after)]
          if (RANK[is] < RANK[was])
            throw new Error(`${item.id}: ${place.join('.')} ${value} worse by ${factor}: ${was} to ${is}`)
        },
      ),
      { seed: 20_261_129, numRuns: 1500 },
    )
    expect(tried).toBeGreaterThan(400)
  }, 900_000)
})

describe('information taken away', () => {
  /** These have a labelled default, which results name: taken away, the default decides, kinder or harder. */
  const WITH_DEFAULT = ['lifeSurvivalPct', 'lifeWeibullSlope', 'ratioTableKey']

  function listLeaves(value: unknown, path: Path = []): Path[] {
    if (Array.isArray(value)) {
      return [path, ...value.flatMap((each, index) => listLeaves(each, [...path, index]))]
    }
    if (value !== null && typeof value === 'object') {
      return [path, ...Object.entries(value).flatMap(([key, each]) => listLeaves(each, [...path, key]))]
    }
    return [path]
  }

  test('never turns "not applicable", "not computed" or "cannot tell" into "meets", and no null turns a concern into it', () => {
    let tried = 0
    const faults = new Set<string>()
    fc.assert(
      fc.property(anyDesign, fc.array(fc.nat(100_000), { minLength: 9, maxLength: 9 }), (design, picks) => {
        const { root } = toDocument(design)
        const before = fromRoot(root)
        if (before === null) return
        const base = buildFigures(before.design, before.facts)
        const verdicts = new Map(
          CATALOGUE.filter(({ check }) => check !== null).map((item) => {
            const { basis, verdict } = evaluateItem(item, base)
            return [item, basis === 'judgment' ? judge(item, before) : verdict]
          }),
        )
        const leaves = listLeaves(design).filter(
          (path) =>
            path.length > 0 &&
            !WITH_DEFAULT.includes(String(path.at(-1))) &&
            path[0] !== 'materials' &&
            read(root, path) != null,
        )
        for (const pick of picks) {
          const path = leaves[pick % leaves.length] ?? []
          const value = read(root, path)
          const empty = Array.isArray(value) ? [] : typeof value === 'string' ? '' : null
          if (value === null || value === undefined) continue
          const after =
            fromRoot(write(root, path, empty)) ?? (empty === null ? null : fromRoot(write(root, path, null)))
          if (after === null) continue
          tried += 1
          const context = buildFigures(after.design, after.facts)
          for (const item of CATALOGUE) {
            if (item.check === null) continue
            const was = verdicts.get(item) ?? 'not-applicable'
            if (was === 'meets') continue
            const result = evaluateItem(item, context)
            const is = result.basis === 'judgment' ? judge(item, after) : result.verdict
            if (is !== 'meets') continue
            const isGap = was === 'not-applicable' || was === 'not-computed' || was === 'cannot-tell'
            if (isGap || empty === null) faults.add(`${item.id}: without ${path.join('.')} ${was} becomes meets`)
          }
        }
      }),
      { seed: 20_261_128, numRuns: 40 },
    )
    expect([...faults]).toEqual([])
    expect(tried).toBeGreaterThan(100)
  }, 900_000)
})
