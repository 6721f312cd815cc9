import { describe, expect, test } from 'vitest'
import { type DecidedOutcome, type Design, evaluate, type ItemResult, type LimitOverride } from '@/lib/engine'
import { computeMargin } from '@/lib/engine/catalogue'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'
import { readDemoDesign } from '../engine-assembly/demo-design-files'
import { listVerdicts, makeOneBend, verdictOf } from './one-bend'

/**
 * Every item that rests on a calculation from toleranced inputs. The others compare counts, dates, choices, or dimensions that are typed
 * without a tolerance; `stated-thickness` compares two nominal figures, and `foil-weight` two foils by their trade name.
 */
const RANGED = [
  'bend-strain',
  'conductor-current',
  'copper-encapsulation',
  'copper-yield',
  'coverlay-adhesive',
  'damage-sum',
  'fatigue-life',
  'finger-thickness',
  'fitted-thickness',
  'leaf-length',
  'neutral-axis',
  'plating-in-bend',
  'radius-rules',
  'shield-stiffness',
  'thickness-tolerance',
  'voltage-drop',
] as const

function withTolerances(design: Design): Design {
  const copy = structuredClone(design)
  for (const layer of copy.construction.layers) {
    if (layer.kind === 'unbonded-gap') continue
    layer.tolerancePlusUm = 0.1 * layer.thicknessUm
    layer.toleranceMinusUm = 0.1 * layer.thicknessUm
    if (layer.kind === 'conductor') layer.plating.toleranceUm = 0.1 * layer.plating.thicknessUm
  }
  for (const bend of copy.bends) bend.radiusToleranceMm = 0.05 * bend.insideRadiusMm
  for (const conductor of copy.features.conductors) {
    conductor.currentAmp = 0.3
    conductor.lengthMm = 100
    conductor.allowedRiseDegC = 20
    conductor.allowedDropVolt = 1
  }
  return copy
}

function makeStart(id: string): Design {
  const start = findStartingConstruction(id)
  if (start === null) throw new Error(`no construction ${id}`)
  return start.makeDesign('Start')
}

const SHIELDED = (() => {
  const design = makeOneBend()
  const cover = design.construction.layers[0]
  if (cover === undefined || cover.kind !== 'coverlay-film') throw new Error('no cover')
  design.construction.layers.unshift({
    ...cover,
    id: 'shield',
    name: 'shield',
    kind: 'shield-film',
    materialId: 'shield-film',
    thicknessUm: 15,
  })
  const [zone] = design.construction.zones
  const first = zone?.presence[0]
  if (first !== undefined) zone?.presence.unshift({ ...first, layerId: 'shield' })
  return design
})()

const PLATED = makeOneBend({
  bends: [{}, { insideRadiusMm: 6 }],
  copper: { plating: { process: 'panel', thicknessUm: 15, toleranceUm: 5, materialId: 'copper-plated' } },
})

/** Of leaves whose lengths nobody states no length can be compared. */
function withEqualLeaves(design: Design): Design {
  return { ...design, bends: design.bends.map((bend) => ({ ...bend, leafLengths: 'equal' })) }
}

const DESIGNS: readonly Design[] = [
  ...(['skua-rev-a', 'skua-rev-b', 'pipit-rev-a'] as const).map(readDemoDesign),
  makeStart('six-layer-unbonded-leaves'),
  SHIELDED,
  PLATED,
  makeOneBend({ requiredCycles: 2500, bends: [{}, { insideRadiusMm: 6 }] }),
].map((design) => withTolerances(withEqualLeaves(design)))

const listDecided = (items: readonly ItemResult[], itemId: string): DecidedOutcome[] =>
  items
    .filter((item) => item.itemId === itemId)
    .flatMap(({ outcomes }) => outcomes.flatMap((each) => (each.kind === 'decided' ? [each] : [])))

describe('one rule for every computed figure', () => {
  test.each(RANGED)('%s has its range over tolerances and constants, and a verdict that keeps to it', (itemId) => {
    const outcomes = DESIGNS.flatMap((design) => listDecided(evaluate(design).items, itemId))
    const spread = outcomes.filter(({ range }) => range !== undefined && range.low < range.high)
    expect(spread.length).toBeGreaterThan(0)
    for (const { value, range, limit, limitRange, verdict } of spread) {
      if (range === undefined) throw new Error('a range')
      expect(range.low).toBeLessThanOrEqual(value.value * (1 + 1e-9))
      expect(range.high).toBeGreaterThanOrEqual(value.value * (1 - 1e-9))
      const holds = (each: number, at = limit.value) => computeMargin(each, { ...limit, value: at }) >= 0
      // A limit that is computed has a range of its own: the worst value stands against the worst limit.
      const limits = [limit.value, limitRange?.low ?? limit.value, limitRange?.high ?? limit.value]
      const holdsThroughout = limits.every((at) => holds(range.low, at) && holds(range.high, at))
      expect(verdict).toBe(!holds(value.value) ? 'fails' : holdsThroughout ? 'meets' : 'thin-margin')
    }
  })

  test.each(['coverlay-adhesive', 'neutral-axis', 'plating-in-bend', 'leaf-length', 'shield-stiffness', 'damage-sum'])(
    '%s with its limit between nominal and the worst end has a thin margin',
    (itemId) => {
      let tried = 0
      for (const design of DESIGNS) {
        for (const { value, range, limit } of listDecided(evaluate(design).items, itemId)) {
          if (range === undefined || range.low === range.high) continue
          const end = limit.sense === 'at-most' ? range.high : range.low
          // Ranges reach over powers of ten: a limit halfway may be more than may be set.
          const towards = Math.min(Math.abs(end - value.value) / 2, 0.05 * value.value)
          const override: LimitOverride = {
            key: limit.key,
            value: value.value + Math.sign(end - value.value) * towards,
            owner: { kind: 'workspace', name: 'Test' },
          }
          const after = listDecided(evaluate(design, { limits: [override] }).items, itemId)
          const same = after.find((each) => each.value.value === value.value && each.limit.value === override.value)
          // A value that may not be set is passed over.
          if (same === undefined) continue
          tried += 1
          expect(same.verdict).toBe('thin-margin')
        }
      }
      expect(tried).toBeGreaterThan(0)
    },
  )

  test('fatigue-life: cycles between nominal and the worst life have a thin margin', () => {
    const design = withTolerances(makeOneBend())
    const range = evaluate(design).bends[0]?.survivalLifeRangeCycles
    const nominal = evaluate(design).bends[0]?.survivalLifeCycles ?? 0
    const at = (requiredCycles: number) => {
      const [bend] = design.bends
      if (bend !== undefined) bend.requiredCycles = requiredCycles
      return verdictOf(design, 'fatigue-life')
    }
    expect(at(0.99 * (range?.low ?? 0))).toBe('meets')
    expect(at(((range?.low ?? 0) + nominal) / 2)).toBe('thin-margin')
    expect(at(nominal * 1.01)).toBe('fails')
  })

  test('radius-rules: in the ratio, thickness counts as well as radius', () => {
    const design = withTolerances(makeOneBend())
    const [bend] = design.bends
    const result = evaluate(design).bends[0]
    if (bend === undefined || result === undefined) throw new Error('no bend')
    bend.radiusToleranceMm = 0
    bend.insideRadiusMm = (1.05 * (result.ratio.required ?? 0) * result.sectionThicknessUm) / 1000
    expect(listVerdicts(design, 'radius-rules')[1]).toBe('thin-margin')
    bend.insideRadiusMm *= 1.1
    expect(listVerdicts(design, 'radius-rules')[1]).toBe('meets')
  })

  test('radius-rules: the section that the formula is used with has tolerances too', () => {
    const design = withTolerances(makeOneBend())
    const [bend] = design.bends
    const handbook = evaluate(design).bends[0]?.handbook
    if (bend === undefined || handbook?.minRadiusMm == null) throw new Error('no radius')
    bend.radiusToleranceMm = 0
    bend.insideRadiusMm = handbook.minRadiusMm * 1.01
    expect(listVerdicts(design, 'radius-rules')[0]).toBe('thin-margin')
    bend.insideRadiusMm = (handbook.minRadiusRangeMm?.high ?? 0) * 1.01
    expect(listVerdicts(design, 'radius-rules')[0]).toBe('meets')
  })

  test('current and drop: copper at its thinnest decides', () => {
    const design = withTolerances(readDemoDesign('skua-rev-b'))
    design.brief.operatingMaxDegC = 60
    for (const each of design.features.conductors) each.returnAsLong = false
    const [conductor] = evaluate(design).conductors
    const [feature] = design.features.conductors
    if (conductor === undefined || feature === undefined) throw new Error('no conductor')
    const verdicts = (itemId: string) => evaluate(design).items.find((item) => item.itemId === itemId)?.outcomes[0]
    feature.currentAmp = ((conductor.capacityAmp ?? 0) + (conductor.capacityRangeAmp?.low ?? 0)) / 2
    expect(verdicts('conductor-current')).toMatchObject({ verdict: 'thin-margin' })
    feature.currentAmp = 0.3
    feature.allowedDropVolt = ((conductor.dropVolt ?? 0) + (conductor.dropRangeVolt?.high ?? 0)) / 2
    expect(verdicts('voltage-drop')).toMatchObject({ verdict: 'thin-margin' })
  })
})
