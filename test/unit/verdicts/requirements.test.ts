import { describe, expect, test } from 'vitest'
import { type Design, evaluate, findFieldWords, listLibraryMaterials, parseDesign } from '@/lib/engine'
import { evaluateItem, getItem } from '@/lib/engine/catalogue'
import { REQUIREMENT_RANGES, type RequirementRange } from '@/lib/engine/catalogue/requirements'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { makeExampleDesign } from '../catalogue/example-design'
import { DEMO_DESIGNS, readDemoDesign } from '../engine-assembly/demo-design-files'
import { completeStart, FACTS } from './complete-start'
import { buildFigures } from './figures'
import { makeFull } from './full-example'
import { listNumberPatterns } from './schema-patterns'

/*
 * A requirement is taken at its word by the items that rest on it, so one that no trade states makes them meet. Every number of the design is
 * either a requirement or rating with a range, or describes the part, and then its own items judge it. Ranges are common practice and our choice,
 * no published source.
 */

/** Numbers that say what the part is, with who judges them. By the start of the place, or by the whole of it. */
const DESCRIBES: readonly string[] = [
  // No number of the part.
  'formatVersion',
  // Layers and zones as built: thickness, symmetry, room and copper have items.
  ...['thicknessUm', 'tolerancePlusUm', 'toleranceMinusUm', 'coverageFraction', 'processingLossUm'].map(
    (field) => `construction.layers.*.${field}`,
  ),
  'construction.zones.*.lengthMm',
  'construction.zones.*.widthMm',
  'construction.zones.*.presence.',
  'construction.zones.*.statedThicknessUm',
  // Bends as formed: strain, life, room and the contradictions of `statements-agree`.
  'bends.*.insideRadiusMm',
  'bends.*.angleDeg',
  'bends.*.axisLengthMm',
  // A share of the motion is held against its own range.
  'bends.*.flexesFromRadiusMm',
  'bends.*.flexesFromAngleDeg',
  'bends.*.foldedToRadiusMm',
  'bends.*.twistLengthMm',
  'bends.*.faceGapMm',
  'bends.*.distanceToRigidMm',
  'bends.*.strainReliefWidthMm',
  'bends.*.leafStepMm',
  // Dimensions of features, stated or drawn, and what a connector end has: each list has its items.
  'features.conductors.*.widthMm',
  'features.conductors.*.spaceMm',
  'features.conductors.*.lengthMm',
  'features.conductors.*.crossings.',
  'features.holes.',
  'features.pads.*.coverlayCaptureMm',
  'features.pads.*.nearestBend.',
  'features.outlineCorners.',
  'features.widthSteps.*.taperLengthMm',
  'features.widthSteps.*.nearestBend.',
  'features.coverlayOpenings.*.openingMm',
  'features.coverlayOpenings.*.landMm',
  'features.coverlayOpenings.*.nearestBend.',
  'features.stiffeners.*.coverlayOverlapMm',
  'features.stiffeners.*.nearestBend.',
  'features.slits.',
  'features.components.',
  ...['pitch', 'contactWidth', 'exposedLength', 'endWidth', 'edgeToContact'].map(
    (dimension) => `features.connectors.*.${dimension}.partMm`,
  ),
  'features.shieldGround.pointCount',
  'features.copperToOutlineMm',
  'features.outline.',
  'brief.exposure.antennaToMetalMm',
  // As measured, against the limits of `outgassing`; none is reported as 0.
  'brief.outgassing.*.condensablePct',
  // Places and sizes of what is drawn, measured by the items that look at the plan.
  'plan.rollingDirectionDeg',
  'plan.outline.',
  'plan.cutOuts.',
  'plan.slits.',
  'plan.dividingLines.',
  'plan.areas.',
  'plan.bendLines.',
  'plan.stiffeners.',
  'plan.connectorEnds.*.fromMm',
  'plan.connectorEnds.*.toMm',
  'plan.connectorEnds.*.insertionDepthMm',
  'plan.connectorEnds.*.contactCount',
  'plan.connectorEnds.*.firstContactMm',
  'plan.connectorEnds.*.contactStepMm',
  'plan.connectorEnds.*.contactLengthMm',
  'plan.connectorEnds.*.platedLengthMm',
  'plan.connectorEnds.*.target.atMm',
  'plan.connectorEnds.*.target.pointsTo',
  'plan.connectorEnds.*.target.topFaces',
  'plan.coverlayOpenings.',
  'plan.holes.',
  'plan.pads.',
  'plan.components.',
  'plan.routes.',
  'plan.corners.',
  'plan.datums.',
  'plan.dimensions.*.fromMm',
  'plan.dimensions.*.toMm',
  'plan.notes.',
  'plan.markings.',
  'plan.array.',
  // Constants that no item compares with a requirement; those that decide a verdict have a range.
  'materials.*.poisson',
  'materials.*.densityGPerCm3',
  'materials.*.flowFraction',
]

const ITEM = getItem('requirement-range')

function setAt(design: Design, pattern: string, value: number | null): boolean {
  let wasSet = false
  const visit = (at: unknown, steps: readonly string[]): void => {
    const [step, ...rest] = steps
    if (step === undefined || at === null || typeof at !== 'object') return
    const record = at as Record<string, unknown>
    if (step === '*') {
      for (const each of at as unknown[]) visit(each, rest)
      return
    }
    if (rest.length > 0) {
      visit(record[step], rest)
      return
    }
    const held = record[step]
    // A constant of a material stands with its source.
    if (pattern.startsWith('materials.')) {
      if (held === null || held === undefined) record[step] = { value, sourceKey: 'ownChoice', spread: null }
      else Object.assign(held as object, { value, spread: null })
    } else record[step] = value
    wasSet = true
  }
  visit(design, pattern.split('.'))
  return wasSet
}

/** Just beyond an end; where the schema wants whole numbers, the next one. */
function listBeyond({ low, high }: RequirementRange): { end: 'low' | 'high'; values: readonly number[] }[] {
  return [
    { end: 'low', values: low === 0 ? [-1] : [low - Math.abs(low) * 0.01, low - 1] },
    { end: 'high', values: [high + Math.abs(high) * 0.01, high + 1] },
  ]
}

const judge = (design: Design) => evaluateItem(ITEM, buildFigures(design, FACTS))

describe('the ranges of requirements', () => {
  test('every number of the design has a range, or describes the part', () => {
    const ranged = new Set<string>(REQUIREMENT_RANGES.map(({ pattern }) => pattern))
    const patterns = listNumberPatterns()
    const open = patterns.filter(
      (pattern) => !ranged.has(pattern) && !DESCRIBES.some((start) => pattern === start || pattern.startsWith(start)),
    )
    expect(open).toEqual([])
    expect([...ranged].filter((pattern) => !patterns.includes(pattern))).toEqual([])
    // No range that an exemption hides, and none twice.
    expect([...ranged].filter((pattern) => DESCRIBES.some((start) => pattern.startsWith(start)))).toEqual([])
    expect(ranged.size).toBe(REQUIREMENT_RANGES.length)
    expect(ranged.size).toBeGreaterThan(80)
  })

  test.each(REQUIREMENT_RANGES.map((range) => [range.pattern, range] as const))(
    '%s: what lies beyond either end is named, and both ends are not',
    (pattern, range) => {
      expect(range.low).toBeLessThan(range.high)
      const words = findFieldWords(pattern.split('.')).label.toLowerCase()
      expect(words).not.toBe('')
      const isNamed = (design: Design) =>
        judge(design).outcomes.some(
          (outcome) =>
            outcome.kind === 'decided' &&
            outcome.verdict === 'fails' &&
            outcome.limit.key === 'requirementRange' &&
            outcome.summary.toLowerCase().includes(words) &&
            outcome.limit.value === (outcome.limit.sense === 'at-least' ? range.low : range.high),
        )
      let named = 0
      for (const { values } of listBeyond(range)) {
        for (const value of values) {
          const design = makeFull()
          // A least figure above the most is refused by itself.
          if (pattern.endsWith('.minMm')) setAt(design, pattern.replace('minMm', 'maxMm'), null)
          expect(setAt(design, pattern, value)).toBe(true)
          if (!parseDesign(design).ok) continue
          expect(isNamed(design), `${value}`).toBe(true)
          expect(judge(design).verdict).toBe('fails')
          named += 1
          break
        }
      }
      // The schema refuses what lies beyond the other end.
      expect(named).toBeGreaterThan(0)
      for (const value of [range.low, range.high]) {
        const design = makeFull()
        setAt(design, pattern, value)
        expect(isNamed(design), `${value}`).toBe(false)
      }
    },
  )

  test('while one that nothing can be said without is blank, the item is open', () => {
    const asked = REQUIREMENT_RANGES.filter(({ isAsked }) => isAsked)
    expect(asked.map(({ pattern }) => pattern)).toEqual([
      'brief.operatingMinDegC',
      'brief.operatingMaxDegC',
      'bends.*.requiredCycles',
    ])
    for (const { pattern } of asked) {
      const design = makeFull()
      setAt(design, pattern, null)
      expect(judge(design).verdict, pattern).toBe('not-computed')
    }
  })

  const designs: readonly (readonly [name: string, design: Design])[] = [
    ...DEMO_DESIGNS.map((name) => [name, readDemoDesign(name)] as const),
    ...listStartingConstructions().map(({ id, makeDesign }) => [id, completeStart(makeDesign('Trial'))] as const),
    ['the example', makeExampleDesign()],
    ['the example in full', makeFull()],
  ]
  test.each(designs)('%s states nothing outside of them', (_, design) => {
    expect(
      judge(design).outcomes.filter((outcome) => outcome.kind === 'decided' && outcome.verdict === 'fails'),
    ).toEqual([])
  })

  test('no material of the library has a constant outside of them', () => {
    const design = makeExampleDesign()
    design.materials = listLibraryMaterials().map((material) => ({ ...material, id: `own-${material.id}` }))
    expect(judge(design).verdict).toBe('meets')
  })
})

describe('what two figures state together', () => {
  type Change = (design: Design) => void
  const finger = (d: Design) =>
    d.construction.zones.find(({ kind }) => kind === 'finger') as Design['construction']['zones'][number]
  const connector = (d: Design) => d.features.connectors[0] as Design['features']['connectors'][number]
  const hinge = (d: Design) => d.bends.find(({ id }) => id === 'hinge') as Design['bends'][number]
  const SPANS: readonly (readonly [name: string, says: string, change: Change])[] = [
    [
      'a temperature range of 0',
      'lowest operating temperature',
      (d) => Object.assign(d.brief, { operatingMinDegC: 25, operatingMaxDegC: 25 }),
    ],
    [
      'temperature cycles of 5 °C',
      'cold end',
      (d) => Object.assign(d.brief, { cycleMinDegC: 20, cycleMaxDegC: 25, temperatureCycles: 500 }),
    ],
    [
      'a connector of 100 to 2000 µm',
      'connector window',
      (d) => {
        finger(d).connectorWindow = { minUm: 100, maxUm: 2000 }
      },
    ],
    [
      'a connector of 300 to 302 µm',
      'connector window',
      (d) => {
        finger(d).connectorWindow = { minUm: 300, maxUm: 302 }
      },
    ],
    ['a pitch of 0.2 to 5 mm', 'pitch', (d) => Object.assign(connector(d).pitch, { minMm: 0.2, maxMm: 5 })],
    [
      'a motion between 12 mm and 12.01 mm',
      'curvature',
      (d) => {
        hinge(d).flexesFromRadiusMm = 12.01
      },
    ],
    [
      'a motion between 90° and 89.9°',
      'curvature',
      (d) => {
        hinge(d).angleDeg = 90
        hinge(d).flexesFromAngleDeg = 89.9
      },
    ],
  ]
  test.each(SPANS)('%s is named', (_, says, change) => {
    const design = makeExampleDesign()
    change(design)
    expect(parseDesign(design)).toMatchObject({ ok: true })
    const { verdict, outcomes } = judge(design)
    expect(verdict).toBe('fails')
    expect(outcomes.some(({ summary }) => summary.toLowerCase().includes(says))).toBe(true)
  })

  test('a motion from flat, and one between two stated radii, are not', () => {
    const design = makeExampleDesign()
    hinge(design).flexesFromRadiusMm = 24
    expect(judge(design).verdict).toBe('meets')
    hinge(design).flexesFromRadiusMm = null
    hinge(design).flexesFromAngleDeg = 0
    expect(judge(design).verdict).toBe('meets')
  })
})

/** Of a whole evaluation: one such figure in the demo design that meets nearly everything, and an item of major severity speaks. */
describe('one absurd requirement', () => {
  const hinge = (d: Design) => d.bends.filter(({ use }) => use === 'dynamic')
  const ABSURD: readonly (readonly [name: string, change: (design: Design) => void])[] = [
    [
      'a survival of 1 %',
      (d) => {
        d.brief.lifeSurvivalPct = 1
      },
    ],
    [
      'a survival that two in ten parts do not reach',
      (d) => {
        d.brief.lifeSurvivalPct = 80
      },
    ],
    [
      'an array frame of 5 m',
      (d) => {
        d.brief.array.frameWidthMm = 5000
      },
    ],
    [
      'a drop of 1000 V',
      (d) => {
        for (const each of d.features.conductors) each.allowedDropVolt = 1000
      },
    ],
    [
      'a connector of 1 to 5000 µm',
      (d) => {
        for (const zone of d.construction.zones)
          if (zone.connectorWindow !== null) zone.connectorWindow = { minUm: 1, maxUm: 5000 }
      },
    ],
    [
      'one cycle of what moves',
      (d) => {
        for (const bend of hinge(d)) bend.requiredCycles = 1
      },
    ],
    [
      'a range of operating temperature of 0',
      (d) => {
        d.brief.operatingMinDegC = d.brief.operatingMaxDegC
      },
    ],
    [
      'absolute zero',
      (d) => {
        d.brief.operatingMinDegC = -273.15
      },
    ],
    [
      'one temperature cycle',
      (d) => {
        d.brief.temperatureCycles = 1
      },
    ],
    [
      'an allowed rise of 200 °C',
      (d) => {
        for (const each of d.features.conductors) each.allowedRiseDegC = 200
      },
    ],
  ]
  test.each(ABSURD)('%s is named', (_, change) => {
    const design = readDemoDesign('skua-rev-b')
    const before = JSON.stringify(design)
    change(design)
    expect(JSON.stringify(design)).not.toBe(before)
    expect(parseDesign(design)).toMatchObject({ ok: true })
    const failed = evaluate(design).items.filter(({ verdict }) => verdict === 'fails')
    expect(failed.map(({ itemId }) => itemId)).toContain('requirement-range')
    expect(ITEM.severity).toBe('major')
  })
})
