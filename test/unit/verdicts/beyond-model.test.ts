import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Design, evaluate, getOutcomeVerdict, makePresence, type Verdict } from '@/lib/engine'
import { listOutcomes, listVerdicts, makeOneBend } from './one-bend'

/** Of the 93 um section of one bend; below it no strain is known. */
const FLOOR_MM = 5 * 0.093

/** Items that rest on how a section bends. */
const ON_THE_SECTION = [
  'copper-yield',
  'damage-sum',
  'fatigue-life',
  'film-strain',
  'neutral-axis',
  'shield-stiffness',
] as const

function withShield(design: Design, thicknessUm = 5): Design {
  const cover = design.construction.layers[0]
  if (cover?.kind !== 'coverlay-film') throw new Error('no cover')
  design.construction.layers.unshift({
    ...cover,
    id: 'shield',
    name: 'shield',
    kind: 'shield-film',
    materialId: 'shield-film',
    thicknessUm,
  })
  design.construction.zones[0]?.presence.unshift(makePresence('shield'))
  return design
}

function withHatch(design: Design, barMm: number): Design {
  for (const layer of design.construction.layers) {
    if (layer.kind === 'conductor') Object.assign(layer, { role: 'plane', planePattern: 'hatched' })
  }
  for (const presence of design.construction.zones[0]?.presence ?? []) {
    if (presence.layerId === 'foil') presence.hatch = { barMm, pitchMm: 1, angleDeg: 45 }
  }
  return design
}

describe('a figure that nobody can give', () => {
  test.each(ON_THE_SECTION)('%s of a hatch outside the tables cannot be told', (itemId) => {
    const design = withHatch(withShield(makeOneBend({ requiredCycles: 5, bends: [{}, { insideRadiusMm: 20 }] })), 0.9)
    const verdicts = listVerdicts(design, itemId)
    expect(verdicts.length).toBeGreaterThan(0)
    for (const verdict of verdicts) expect(verdict).toBe('cannot-tell')
  })

  test.each(['damage-sum', 'neutral-axis', 'shield-stiffness'] as const)(
    '%s below five times the thickness cannot be told where the flat section holds',
    (itemId) => {
      const at = (insideRadiusMm: number) =>
        listVerdicts(
          withShield(
            makeOneBend({ requiredCycles: 1, survivalPct: 50, bends: [{ insideRadiusMm }, { insideRadiusMm: 30 }] }),
            1,
          ),
          itemId,
        )
      expect(at(5.1 * 0.094)[0]).not.toBe('cannot-tell')
      const { limit } = evaluateOne(itemId)
      expect(limit).not.toBe(undefined)
      expect(at(4 * 0.094)[0]).toBe('cannot-tell')
    },
  )

  test('copper that yields at the least radius that can be told yields at a tighter one', () => {
    const at = (insideRadiusMm: number) => listVerdicts(makeOneBend({ insideRadiusMm }), 'copper-yield')
    expect(at(FLOOR_MM * 1.01)).toEqual(['fails'])
    expect(at(FLOOR_MM * 0.5)).toEqual(['fails'])
  })

  test.each([
    ['fatigue-life', 'copper-ra', 'shorter than ', 0.2, 1_000],
    ['film-strain', 'copper-ra', 'more than ', 0.2, 1_000],
    ['copper-yield', 'copper-ra', 'more than ', 0.2, 1_000],
  ] as const)(
    'a certain failure of %s gives a bound at the least radius, and not the figure that nobody knows',
    (itemId, foilId, prefix, insideRadiusMm, requiredCycles) => {
      const at = (radiusMm: number) => {
        const results = evaluate(makeOneBend({ foilId, requiredCycles, insideRadiusMm: radiusMm }))
        const [outcome] = listOutcomes(results, itemId)
        if (outcome?.kind !== 'decided') throw new Error(`${itemId} is ${outcome?.kind}`)
        return outcome
      }
      const [tight, least] = [at(insideRadiusMm), at(FLOOR_MM * (1 + 1e-9))]
      expect(tight.verdict).toBe('fails')
      expect(tight.summary).toContain(`: ${prefix}`)
      expect(tight.summary).toContain('5 times the thickness')
      expect(tight.range).toBeUndefined()
      expect(tight.value.value / least.value.value).toBeCloseTo(1, 6)
      // Tighter still, nothing more is known.
      expect(at(insideRadiusMm / 2).value).toEqual(tight.value)
    },
  )

  test('bends that use up a layer by themselves do so beside one that nobody can tell', () => {
    const design = makeOneBend({
      requiredCycles: 1e6,
      bends: [{ insideRadiusMm: 2 }, { insideRadiusMm: 0.3, requiredCycles: 1 }],
    })
    expect(listVerdicts(design, 'damage-sum')).toEqual(['fails'])
  })

  test('foil yields though the plating that breaks first does not say so', () => {
    const design = makeOneBend({
      insideRadiusMm: 9,
      copper: { plating: { process: 'panel', thicknessUm: 15, toleranceUm: 0, materialId: 'copper-plated' } },
    })
    const [bend] = evaluate(design).bends
    const [conductor] = bend?.conductors ?? []
    const isAnyPast = conductor?.parts.some((part) => part.firstBendStrainPct > part.yieldStrainPct)
    const [outcome] = listOutcomes(evaluate(design), 'copper-yield')
    expect(isAnyPast).toBe(true)
    expect(outcome === undefined ? null : getOutcomeVerdict(outcome)).toBe('fails')
  })
})

function evaluateOne(itemId: string) {
  const design = withShield(makeOneBend({ requiredCycles: 1, survivalPct: 50, bends: [{}, { insideRadiusMm: 30 }] }), 1)
  const outcome = listOutcomes(evaluate(design), itemId)[0]
  return { limit: outcome?.kind === 'decided' ? outcome.limit : undefined }
}

const RANK: Record<Verdict, number> = {
  fails: 5,
  'cannot-tell': 4,
  'not-computed': 3,
  'thin-margin': 2,
  meets: 1,
  'not-applicable': 0,
}

test('no item that rests on how a section bends says "meets" or "thin margin" for a bend out of reach, and none gets better by being tighter', () => {
  let beyond = 0
  fc.assert(
    fc.property(
      fc.double({ min: 0.3, max: 40, noNaN: true }),
      fc.double({ min: 0.3, max: 1, noNaN: true }),
      fc.constantFrom(1, 30, 3000, 1e6),
      fc.constantFrom('copper-ra', 'copper-ed'),
      fc.boolean(),
      (radiusRatio, tighter, requiredCycles, foilId, isShielded) => {
        const make = (ratio: number) => {
          const design = makeOneBend({
            foilId,
            requiredCycles,
            bends: [{ insideRadiusMm: ratio * 0.093 }, { insideRadiusMm: 30 }],
          })
          return evaluate(isShielded ? withShield(design) : design)
        }
        const [was, is] = [make(radiusRatio), make(radiusRatio * tighter)]
        const isBeyond = (is.bends[0]?.modelLimits.length ?? 0) > 0
        if (isBeyond) beyond += 1
        for (const itemId of ON_THE_SECTION) {
          const pick = (results: typeof is) =>
            listOutcomes(results, itemId)
              .filter(({ places }) => itemId === 'damage-sum' || places.some(({ id }) => id === 'bend-0'))
              .map(getOutcomeVerdict)
          for (const verdict of isBeyond ? pick(is) : [])
            expect([itemId, ['meets', 'thin-margin'].includes(verdict)]).toEqual([itemId, false])
          if (itemId === 'neutral-axis' || itemId === 'shield-stiffness') continue
          const worst = (results: typeof is) => Math.max(...pick(results).map((each) => RANK[each]))
          expect([itemId, worst(is) >= worst(was)]).toEqual([itemId, true])
        }
      },
    ),
    { seed: 20_261_128, numRuns: 150 },
  )
  expect(beyond).toBeGreaterThan(20)
})
