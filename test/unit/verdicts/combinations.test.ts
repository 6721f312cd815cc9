import { describe, expect, test } from 'vitest'
import { type Design, evaluate, getOutcomeVerdict, parseDesign, type Verdict } from '@/lib/engine'
import { listOutcomes, makeOneBend } from './one-bend'

/** What each rule of verdicts was made for, as an edit of a design that holds; two at a time. */
const POINTS: Readonly<Record<string, (design: Design) => void>> = {
  'a hatch outside the tables': (design) => hatch(design, 0.9),
  'a hatch within the tables': (design) => hatch(design, 0.4),
  'a hatch of unknown bars': (design) => hatch(design, null),
  'plated over the whole': (design) => {
    const foil = foilOf(design)
    foil.plating = { process: 'panel', thicknessUm: 12, toleranceUm: 2, materialId: 'copper-plated' }
    const [zone] = design.construction.zones
    for (const presence of zone?.presence ?? []) if (presence.layerId === 'foil') presence.platedCopper = 'whole'
  },
  'nobody said where it is plated': (design) => {
    foilOf(design).plating = { process: 'button', thicknessUm: 12, toleranceUm: 2, materialId: 'copper-plated' }
  },
  'electrodeposited foil': (design) => {
    foilOf(design).materialId = 'copper-ed'
  },
  'two million cycles': (design) => {
    for (const bend of design.bends) bend.requiredCycles = 2e6
  },
  'cycles past the relation': (design) => {
    for (const bend of design.bends) bend.requiredCycles = 1e11
    design.brief.lifeSurvivalPct = 99.9999
  },
  'a fold at a tight radius': (design) => {
    for (const bend of design.bends)
      Object.assign(bend, { insideRadiusMm: 0.3, use: 'fold-once', requiredCycles: null })
  },
  'dynamic at a tight radius': (design) => {
    for (const bend of design.bends) bend.insideRadiusMm = 0.3
  },
  'no use stated': (design) => {
    for (const bend of design.bends) bend.use = null
  },
  'flexed to install, with many cycles': (design) => {
    for (const bend of design.bends) Object.assign(bend, { use: 'flex-to-install', requiredCycles: 5000 })
  },
  '125 degC': (design) => {
    design.brief.operatingMaxDegC = 125
  },
  'wide tolerances': (design) => {
    for (const layer of design.construction.layers) {
      if (layer.kind !== 'unbonded-gap')
        Object.assign(layer, { tolerancePlusUm: 0.3 * layer.thicknessUm, toleranceMinusUm: 0.3 * layer.thicknessUm })
    }
  },
  reversed: (design) => {
    for (const bend of design.bends) bend.motion = 'reversed'
  },
  'a quarter of the width': (design) => {
    foilOf(design).coverageFraction = 0.25
  },
}
/** A statement that replaces the one another point is about: what was unknown may then be known. */
const REPLACES: readonly (readonly [string, string])[] = [
  ['no use stated', 'a fold at a tight radius'],
  ['no use stated', 'flexed to install, with many cycles'],
  ['a fold at a tight radius', 'flexed to install, with many cycles'],
  ['a fold at a tight radius', 'dynamic at a tight radius'],
  ['two million cycles', 'a fold at a tight radius'],
  ['two million cycles', 'flexed to install, with many cycles'],
  ['two million cycles', 'cycles past the relation'],
  ['cycles past the relation', 'a fold at a tight radius'],
  ['cycles past the relation', 'flexed to install, with many cycles'],
  ['a hatch outside the tables', 'a hatch within the tables'],
  ['a hatch outside the tables', 'a hatch of unknown bars'],
  ['a hatch of unknown bars', 'a hatch within the tables'],
  ['plated over the whole', 'nobody said where it is plated'],
]
const ITEMS = [
  'bend-strain',
  'fatigue-life',
  'damage-sum',
  'film-strain',
  'copper-yield',
  'neutral-axis',
  'radius-rules',
  'bend-use',
] as const
const KIND: readonly Verdict[] = ['meets', 'thin-margin']
const GAPS: readonly Verdict[] = ['cannot-tell', 'not-computed', 'fails']

function foilOf({ construction }: Design) {
  const foil = construction.layers.find(({ id }) => id === 'foil')
  if (foil?.kind !== 'conductor') throw new Error('no foil')
  return foil
}

function hatch(design: Design, barOverPitch: number | null): void {
  Object.assign(foilOf(design), { role: 'plane', planePattern: 'hatched' })
  const presence = design.construction.zones[0]?.presence.find(({ layerId }) => layerId === 'foil')
  if (presence !== undefined)
    presence.hatch = barOverPitch === null ? null : { barMm: barOverPitch, pitchMm: 1, angleDeg: 45 }
}

/** Holds by every rule as it stands: a wide bend, few cycles. */
const make = (names: readonly string[]): Design => {
  const design = makeOneBend({ requiredCycles: 20, bends: [{ insideRadiusMm: 30 }] })
  design.brief.installationUses = ['use-b']
  for (const name of names) POINTS[name]?.(design)
  return design
}

function judge(names: readonly string[]): Map<string, Verdict> {
  const design = make(names)
  const parsed = parseDesign(design)
  if (!parsed.ok) throw new Error(`${names.join(' + ')}: ${JSON.stringify(parsed.issues)}`)
  const results = evaluate(parsed.value)
  const RANK: Record<Verdict, number> = {
    fails: 5,
    'cannot-tell': 4,
    'not-computed': 3,
    'thin-margin': 2,
    meets: 1,
    'not-applicable': 0,
  }
  return new Map(
    ITEMS.map((id) => [
      id,
      listOutcomes(results, id)
        .map(getOutcomeVerdict)
        .reduce<Verdict>((worst, each) => (RANK[each] > RANK[worst] ? each : worst), 'not-applicable'),
    ]),
  )
}

describe('two points at a time', () => {
  const names = Object.keys(POINTS)
  const alone = new Map(names.map((name) => [name, judge([name])]))
  const doesReplace = (a: string, b: string) =>
    REPLACES.some(([one, other]) => (one === a && other === b) || (one === b && other === a))

  test('the design that they are made on holds', () => {
    const verdicts = judge([])
    for (const id of ['fatigue-life', 'radius-rules'])
      expect([id, KIND.includes(verdicts.get(id) ?? 'fails')]).toEqual([id, true])
  })

  test('what fails or cannot be told by one of them is not met with another beside it', () => {
    let tried = 0
    const faults: string[] = []
    for (const [at, a] of names.entries()) {
      for (const b of names.slice(at + 1)) {
        if (doesReplace(a, b)) continue
        for (const order of [
          [a, b],
          [b, a],
        ]) {
          const both = judge(order)
          for (const id of ITEMS) {
            const gap = [a, b].find((name) => GAPS.includes(alone.get(name)?.get(id) ?? 'meets'))
            if (gap === undefined) continue
            tried += 1
            const is = both.get(id) ?? 'not-applicable'
            if (KIND.includes(is)) faults.push(`${id}: ${gap} ${alone.get(gap)?.get(id)}, ${order.join(' + ')} ${is}`)
          }
        }
      }
    }
    expect(faults).toEqual([])
    expect(tried).toBeGreaterThan(500)
  })
})
