import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Design,
  evaluate,
  listLibraryMaterials,
  makeBlankDesign,
  makePresence,
  NO_PLATING,
  PLATED_COPPER_ID,
  parseDesign,
  UNKNOWN_BEND,
  UNKNOWN_IMPEDANCE,
} from '@/lib/engine'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'

const SEED = 20_261_123

/** Numbers that are not finite, and texts that show one, with their paths. */
function findNonFinite(value: unknown, path: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`]
  if (typeof value === 'string') return /\b(NaN|Infinity)\b/.test(value) ? [`${path} = ${value}`] : []
  if (Array.isArray(value)) return value.flatMap((each, index) => findNonFinite(each, `${path}[${index}]`))
  if (value !== null && typeof value === 'object') {
    return Object.entries(value).flatMap(([key, each]) => findNonFinite(each, `${path}.${key}`))
  }
  return []
}

const materialIds = (kinds: readonly string[]) =>
  listLibraryMaterials()
    .filter(({ kind }) => kinds.includes(kind))
    .map(({ id }) => id)

/** From the least double above nothing to the schema's 10 mm, with the ordinary range well covered. */
const thicknessUm = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: 5, max: 200, noNaN: true }) },
  { weight: 1, arbitrary: fc.constantFrom(1e-9, 0.001, 9999, 10_000) },
)
// Shares below the least that is read would be refused, and doubles are drawn near 0 half of the time.
const fraction = fc.oneof(
  fc.double({ min: 0, max: 1, noNaN: true }).map((share) => (share < 1e-12 ? 0 : share)),
  fc.constantFrom(0, 1, 1e-12),
)
const toleranceFraction = fc.constantFrom(0, 0.05, 0.1, 0.5, 0.999)

const dielectric = fc
  .record({
    kind: fc.constantFrom(
      ['base-film', ['polymer-film']] as const,
      ['adhesive', ['adhesive']] as const,
      ['coverlay-film', ['polymer-film']] as const,
      ['bondply', ['adhesive', 'prepreg', 'polymer-film']] as const,
      ['no-flow-prepreg', ['prepreg']] as const,
      ['solder-mask', ['solder-mask']] as const,
      ['shield-film', ['shield-film']] as const,
    ),
    thicknessUm,
    tolerance: toleranceFraction,
    pick: fc.nat(50),
  })
  .map(({ kind: [kind, materialKinds], thicknessUm: value, tolerance, pick }) => {
    const ids = materialIds(materialKinds)
    return {
      kind,
      thicknessUm: value,
      tolerancePlusUm: Math.min(10_000, value * tolerance),
      toleranceMinusUm: value * tolerance,
      materialId: ids[pick % ids.length] ?? '',
    }
  })

const conductor = fc
  .record({
    thicknessUm,
    tolerance: toleranceFraction,
    coverageFraction: fraction,
    process: fc.constantFrom('none', 'panel', 'pattern', 'button'),
    platingUm: fc.constantFrom(1, 25, 10_000),
    platingToleranceUm: fc.constantFrom(0, 5, 10_000),
    lossFraction: fc.constantFrom(0, 0.1, 0.99),
    materialId: fc.constantFrom(...materialIds(['copper-foil']).filter((id) => id !== PLATED_COPPER_ID)),
  })
  .map((options) => ({
    kind: 'conductor',
    thicknessUm: options.thicknessUm,
    tolerancePlusUm: Math.min(10_000, options.thicknessUm * options.tolerance),
    toleranceMinusUm: options.thicknessUm * options.tolerance,
    materialId: options.materialId,
    role: 'signal',
    planePattern: null,
    coverageFraction: options.coverageFraction,
    plating:
      options.process === 'none'
        ? NO_PLATING
        : {
            process: options.process,
            thicknessUm: options.platingUm,
            toleranceUm: options.platingToleranceUm,
            materialId: 'copper-plated',
          },
    processingLossUm: options.thicknessUm * options.lossFraction,
  }))

const gap = fc.constantFrom(0, 50, 10_000).map((value) => ({ kind: 'unbonded-gap', thicknessUm: value }))

const bend = fc.record({
  zoneIndex: fc.nat(10),
  insideRadiusMm: fc.oneof(fc.double({ min: 0.1, max: 50, noNaN: true }), fc.constantFrom(1e-6, 1000)),
  toleranceFraction: fc.constantFrom(0, 0.1, 0.999),
  angleDeg: fc.constantFrom(1e-3, 90, 180, 3600),
  insideFace: fc.constantFrom('top', 'bottom'),
  axisLengthMm: fc.constantFrom(0.01, 15, 5000),
  use: fc.constantFrom('fold-once', 'flex-to-install', 'dynamic', null),
  motion: fc.constantFrom('one-way', 'reversed'),
  requiredCycles: fc.constantFrom(null, 1e-6, 1, 50_000, 2e6, 1e12),
  distanceToRigidMm: fc.constantFrom(null, 0, 1e-6, 5),
})

const anyDesign = fc
  .record({
    layers: fc.array(
      fc.oneof(
        { weight: 5, arbitrary: dielectric },
        { weight: 3, arbitrary: conductor },
        { weight: 1, arbitrary: gap },
      ),
      {
        minLength: 1,
        maxLength: 14,
      },
    ),
    zones: fc.array(
      fc.record({
        kind: fc.constantFrom('flex', 'rigid', 'finger', 'flex'),
        omit: fc.array(fc.nat(13), { maxLength: 6 }),
        coverage: fc.option(fraction, { nil: null }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    bends: fc.array(bend, { maxLength: 3 }),
    widthMm: fc.constantFrom(1e-6, 0.1, 5000),
    currentAmp: fc.constantFrom(null, 0, 1e-9, 0.5, 1000),
    allowedRiseDegC: fc.constantFrom(null, 1e-6, 20, 200),
    allowedDropVolt: fc.constantFrom(null, 1e-9, 0.1),
    operatingMaxDegC: fc.constantFrom(null, -273.15, 85, 1000),
    survivalPct: fc.constantFrom(null, 1e-9, 50, 99, 99.999_999),
    slope: fc.constantFrom(null, 0.5, 20),
  })
  .map((options): unknown => {
    const blank = makeBlankDesign('Any')
    const layers = options.layers.map((layer, index) => ({ id: `layer-${index}`, name: `Layer ${index}`, ...layer }))
    const zones = options.zones.map((zone, index) => ({
      id: `zone-${index}`,
      name: `Zone ${index}`,
      kind: zone.kind,
      lengthMm: null,
      widthMm: null,
      // The first zone holds every layer, so that none is homeless.
      presence: layers
        .filter((_, at) => index === 0 || !zone.omit.includes(at))
        .map((layer) => makePresence(layer.id, layer.kind === 'conductor' ? zone.coverage : null)),
      connectorWindow: null,
      contactFinish: null,
      statedThicknessUm: null,
      statedToleranceUm: null,
      throughExpansionPpmPerC: null,
      throughModulusGpa: null,
      glassTransitionDegC: null,
    }))
    return {
      ...blank,
      brief: {
        ...blank.brief,
        operatingMaxDegC: options.operatingMaxDegC,
        lifeSurvivalPct: options.survivalPct,
        lifeWeibullSlope: options.slope,
      },
      construction: { layers, zones },
      bends: options.bends.map((each, index) => ({
        ...UNKNOWN_BEND,
        id: `bend-${index}`,
        name: `Bend ${index}`,
        zoneId: `zone-${each.zoneIndex % zones.length}`,
        insideRadiusMm: each.insideRadiusMm,
        radiusToleranceMm: each.insideRadiusMm * each.toleranceFraction,
        angleDeg: each.angleDeg,
        insideFace: each.insideFace,
        axisLengthMm: each.axisLengthMm,
        use: each.use,
        motion: each.motion,
        requiredCycles: each.requiredCycles,
        distanceToRigidMm: each.distanceToRigidMm,
      })),
      features: {
        ...blank.features,
        conductors: layers
          .filter(({ kind }) => kind === 'conductor')
          .slice(0, 2)
          .map((layer, index) => ({
            id: `conductor-${index}`,
            name: `Conductor ${index}`,
            layerId: layer.id,
            widthMm: options.widthMm,
            spaceMm: null,
            lengthMm: 100,
            currentAmp: options.currentAmp,
            allowedRiseDegC: options.allowedRiseDegC,
            allowedDropVolt: options.allowedDropVolt,
            returnAsLong: null,
            carriesPower: null,
            impedanceOhm: null,
            netClassId: null,
            impedance: UNKNOWN_IMPEDANCE,
            voltageVolt: null,
            isCovered: null,
            frequencyMhz: null,
            crossings: [],
          })),
      },
    }
  })

describe('any design that the reader lets through', () => {
  test('is evaluated without an exception and without a number that is not finite', () => {
    let evaluated = 0
    fc.assert(
      fc.property(anyDesign, (input) => {
        const parsed = parseDesign(input)
        if (!parsed.ok) return
        evaluated += 1
        const evaluation = evaluate(parsed.value)
        expect(findNonFinite(evaluation, 'evaluation')).toEqual([])
        for (const zone of evaluation.zones) {
          expect(zone.worstCaseUm.low).toBeLessThanOrEqual(zone.thicknessUm * (1 + 1e-9))
          expect(zone.worstCaseUm.high).toBeGreaterThanOrEqual(zone.thicknessUm * (1 - 1e-9))
        }
        for (const result of evaluation.bends) {
          const decided = result.allowablePct !== null
          // Without an allowable something must be missing or out of reach, unless there is no copper in the bend.
          const isBeyond = result.conductors.some(({ lifeReach }) => lifeReach === 'beyond')
          if (!decided && result.conductors.length > 0) expect(result.missing.length > 0 || isBeyond).toBe(true)
        }
      }),
      { seed: SEED, numRuns: 300 },
    )
    // A generator that the reader always refuses would test nothing.
    expect(evaluated).toBeGreaterThan(100)
  }, 30_000)

  test('is evaluated at every stage of being built up from a blank one', () => {
    for (const { makeDesign } of listStartingConstructions()) {
      const whole = makeDesign('Trial')
      const stages: Design[] = [
        makeBlankDesign('Trial'),
        { ...makeBlankDesign('Trial'), construction: { layers: whole.construction.layers, zones: [] } },
        { ...whole, bends: [] },
        { ...whole, construction: { ...whole.construction, zones: [] } },
        { ...whole, construction: { layers: [], zones: whole.construction.zones } },
      ]
      for (const stage of stages) expect(findNonFinite(evaluate(stage), 'evaluation')).toEqual([])
    }
  })
})
