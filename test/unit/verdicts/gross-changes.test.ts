import { describe, expect, test } from 'vitest'
import { type Design, evaluate, makePresence, parseDesign } from '@/lib/engine'
import { getItem } from '@/lib/engine/catalogue'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { DEMO_DESIGNS, readDemoDesign } from '../engine-assembly/demo-design-files'
import { completeStart, judge } from './complete-start'
import { FEATURE_LISTS } from './feature-lists'
import { GROSS_EDITS } from './gross-edits'

/*
 * Revision B of the Skua meets nearly everything. One gross change at a time: an item of major severity or more must then say so, whatever
 * else passes. The changes are common practice, no published source.
 */

type Change = (design: Design) => void

function evaluateChanged(change: Change) {
  const design = readDemoDesign('skua-rev-b')
  change(design)
  const parsed = parseDesign(design)
  if (!parsed.ok) throw new Error(`no valid design: ${parsed.issues.map(({ message }) => message).join('; ')}`)
  return evaluate(parsed.value)
}

const verdictsOf = ({ items }: ReturnType<typeof evaluate>) =>
  new Map(items.map(({ itemId, verdict }) => [itemId, verdict]))

const AS_IT_STANDS = verdictsOf(evaluateChanged(() => {}))

/** Items that said nothing against the design as it stands, and fail or cannot be told now. */
function listAlarms(change: Change): string[] {
  const bad = (verdict: string | undefined) => verdict === 'fails' || verdict === 'cannot-tell'
  return [...verdictsOf(evaluateChanged(change))]
    .filter(([id, verdict]) => bad(verdict) && !bad(AS_IT_STANDS.get(id)))
    .map(([id]) => id)
}

const isSevere = (itemId: string) => ['blocking', 'major'].includes(getItem(itemId).severity)

function getLayer(design: Design, id: string) {
  const layer = design.construction.layers.find((each) => each.id === id)
  if (layer === undefined) throw new RangeError(`no layer ${id}`)
  return layer
}

function getZone(design: Design, id: string) {
  const zone = design.construction.zones.find((each) => each.id === id)
  if (zone === undefined) throw new RangeError(`no zone ${id}`)
  return zone
}

const getBend = (design: Design, id: string) => {
  const bend = design.bends.find((each) => each.id === id)
  if (bend === undefined) throw new RangeError(`no bend ${id}`)
  return bend
}

const setThickness = (design: Design, id: string, thicknessUm: number) => {
  const layer = getLayer(design, id)
  if (layer.kind === 'unbonded-gap') throw new RangeError(`${id} is air`)
  Object.assign(layer, { thicknessUm })
}

const ofKind = (design: Design, ...kinds: Design['construction']['layers'][number]['kind'][]) =>
  design.construction.layers.filter(({ kind }) => kinds.includes(kind))

/** By name: the change, and an item that must be among those that speak. */
const GROSS: readonly (readonly [name: string, expected: string, change: Change])[] = [
  [
    'no cover over a moving bend',
    'bend-cover',
    (d) => {
      const zone = getZone(d, getBend(d, 'hinge').zoneId)
      const cover = ofKind(d, 'coverlay-film').map(({ id }) => id)
      zone.presence = zone.presence.filter(({ layerId }) => !cover.includes(layerId))
      getBend(d, 'hinge').insideRadiusMm = 20
    },
  ],
  [
    'a radius of 60 mm in a zone of 38 mm',
    'bend-fit',
    (d) => Object.assign(getBend(d, 'hinge'), { insideRadiusMm: 60 }),
  ],
  [
    'a tenth of the radius',
    'fatigue-life',
    (d) => {
      const hinge = getBend(d, 'hinge')
      hinge.insideRadiusMm /= 10
      hinge.radiusToleranceMm /= 10
    },
  ],
  [
    'a fold of a tenth of its radius',
    'bend-strain',
    (d) => {
      const fold = getBend(d, 'fold')
      fold.insideRadiusMm /= 10
      fold.radiusToleranceMm /= 10
    },
  ],
  [
    '1000 times the cycles',
    'fatigue-life',
    (d) => {
      const hinge = getBend(d, 'hinge')
      hinge.requiredCycles = (hinge.requiredCycles ?? 1) * 1000
    },
  ],
  [
    'a drill of a tenth of the depth and less',
    'hole-aspect',
    (d) => {
      for (const hole of d.features.holes) hole.drillMm = 0.05
    },
  ],
  [
    'acrylic through the boards',
    'flexible-adhesive-in-rigid-class-three',
    (d) => {
      for (const layer of ofKind(d, 'coverlay-film', 'adhesive')) {
        if (layer.kind === 'adhesive') layer.materialId = 'acrylic-adhesive'
        for (const zone of d.construction.zones.filter(({ kind }) => kind === 'rigid')) {
          if (!zone.presence.some(({ layerId }) => layerId === layer.id)) {
            zone.presence.push({ layerId: layer.id, coverageFraction: null, platedCopper: null, hatch: null })
          }
        }
      }
    },
  ],
  [
    'half the laminate on one side',
    'stack-symmetry',
    (d) => {
      const [upper] = ofKind(d, 'rigid-laminate')
      if (upper !== undefined && upper.kind !== 'unbonded-gap') setThickness(d, upper.id, upper.thicknessUm / 2)
    },
  ],
  [
    '0.1 mm conductors on four times the copper',
    'conductor-width',
    (d) => {
      for (const conductor of d.features.conductors) {
        conductor.widthMm = 0.1
        conductor.spaceMm = 0.1
        setThickness(d, conductor.layerId, 70)
      }
    },
  ],
  [
    'ten times the current',
    'conductor-current',
    (d) => {
      for (const conductor of d.features.conductors) {
        if (conductor.currentAmp !== null) conductor.currentAmp = Math.min(1000, conductor.currentAmp * 10)
      }
    },
  ],
  [
    '200 °C in service',
    'operating-temperature',
    (d) => {
      d.brief.operatingMaxDegC = 200
    },
  ],
  [
    'lands hardly larger than their holes',
    'annular-ring',
    (d) => {
      for (const hole of d.features.holes) hole.landMm = (hole.drillMm ?? 0) + 0.02
    },
  ],
  [
    'copper at the edge',
    'copper-to-outline',
    (d) => {
      d.features.copperToOutlineMm = 0
    },
  ],
  [
    'a connector end half as thick',
    'finger-thickness',
    (d) => {
      const stiffener = ofKind(d, 'stiffener')[0]
      if (stiffener !== undefined && stiffener.kind !== 'unbonded-gap')
        setThickness(d, stiffener.id, stiffener.thicknessUm / 2)
    },
  ],
  [
    'a stiffener that begins in the fold',
    'statements-agree',
    (d) => {
      for (const stiffener of d.features.stiffeners) stiffener.nearestBend = { bendId: 'fold', distanceMm: 0.5 }
      getBend(d, 'fold').distanceToRigidMm = 4
    },
  ],
  [
    'electrodeposited foil in a moving bend',
    'foil-type',
    (d) => {
      for (const layer of ofKind(d, 'conductor')) if (layer.kind === 'conductor') layer.materialId = 'copper-ed'
    },
  ],
  [
    'plating over the whole of the hinge',
    'plating-in-bend',
    (d) => {
      for (const presence of getZone(d, 'hinge').presence) {
        const layer = getLayer(d, presence.layerId)
        if (layer.kind !== 'conductor' || layer.id === 'l3') continue
        layer.plating = { process: 'panel', thicknessUm: 25, toleranceUm: 5, materialId: 'copper-plated' }
        presence.platedCopper = 'whole'
      }
    },
  ],
  [
    'a cover film straight on copper',
    'sheet-bonds',
    (d) => {
      const link = getZone(d, 'link')
      link.presence = link.presence.filter(({ layerId }) => layerId !== 'adhesive-top')
    },
  ],
  [
    'laminate on the flexible core without prepreg',
    'sheet-bonds',
    (d) => {
      const board = getZone(d, 'sensor')
      board.presence = board.presence.filter(({ layerId }) => layerId !== 'prepreg-top')
    },
  ],
  [
    'a stiffener that nothing holds',
    'sheet-bonds',
    (d) => {
      const end = getZone(d, 'finger')
      end.presence = end.presence.filter(({ layerId }) => layerId !== 'finger-adhesive')
      d.construction.layers = d.construction.layers.filter(({ id }) => id !== 'finger-adhesive')
    },
  ],
  [
    'a stiffener over the contacts',
    'finger-support',
    ({ construction: { layers } }) => {
      const moved = layers.splice(
        layers.findIndex(({ id }) => id === 'finger-adhesive'),
        2,
      )
      layers.splice(
        layers.findIndex(({ id }) => id === 'l2'),
        0,
        ...moved.reverse(),
      )
    },
  ],
  [
    'solder mask on the contacts',
    'finger-support',
    (d) => getZone(d, 'finger').presence.push(makePresence('mask-top')),
  ],
  [
    'a plane against a few conductors',
    'stack-symmetry',
    (d) => {
      for (const [id, coverageFraction] of [
        ['l1', 1],
        ['l4', 0.05],
      ] as const)
        Object.assign(getLayer(d, id), { coverageFraction })
    },
  ],
  [
    'conductors wider than their zone',
    'statements-agree',
    (d) => {
      for (const conductor of d.features.conductors) conductor.widthMm = 200
    },
  ],
  [
    'cover missing on one face of the fold',
    'bend-cover',
    (d) => {
      const link = getZone(d, 'link')
      link.presence = link.presence.filter(({ layerId }) => !['cover-bottom', 'adhesive-bottom'].includes(layerId))
    },
  ],
  [
    'nickel in the hinge',
    'surface-finish',
    (d) => {
      for (const opening of d.features.coverlayOpenings) opening.nearestBend = { bendId: 'hinge', distanceMm: 0 }
    },
  ],
  [
    'a ring of 0.05 mm in class 3',
    'annular-ring',
    (d) => {
      for (const hole of d.features.holes) hole.landMm = (hole.drillMm ?? 0) + 0.1
    },
  ],
  [
    'a component on bare film',
    'component-support',
    (d) => {
      for (const component of d.features.components) component.zoneId = 'link'
    },
  ],
  [
    'plated holes in the hinge',
    'holes-in-flex',
    (d) => {
      for (const hole of d.features.holes) hole.zoneId = 'hinge'
    },
  ],
  [
    'holes through plated layers marked as absent',
    'feature-lists',
    (d) => {
      d.features.holes = []
      d.features.none.push('holes')
    },
  ],
]

describe('one gross change', () => {
  test.each(GROSS)('%s is named by %s', (_, expected, change) => {
    const alarms = listAlarms(change)
    expect(alarms).toContain(expected)
    expect(alarms.filter(isSevere)).not.toEqual([])
  })

  test('says nothing where nothing is changed', () => {
    expect(listAlarms(() => {})).toEqual([])
  })
})

/** A change of what is not there is no test: at least one design must have the thing, and say nothing against it as it stands. */
describe('one gross change of any design', () => {
  const designs: readonly (readonly [name: string, design: Design])[] = [
    ...listStartingConstructions().map(({ id, makeDesign }) => [id, completeStart(makeDesign('Trial'))] as const),
    ...DEMO_DESIGNS.map((name) => [name, readDemoDesign(name)] as const),
  ]
  const isBad = (verdict: ReturnType<typeof judge>) => verdict === 'fails' || verdict === 'cannot-tell'

  test.each(GROSS_EDITS)(
    '$name is named by $namedBy',
    ({ namedBy, change }) => {
      let turned = 0
      const unnamed: string[] = []
      for (const [name, before] of designs) {
        const after = structuredClone(before)
        change(after)
        if (JSON.stringify(after) === JSON.stringify(before) || !parseDesign(after).ok) continue
        const verdicts = namedBy.map((itemId) => judge(itemId, after))
        if (!verdicts.some(isBad)) unnamed.push(`${name}: ${verdicts.join(', ')}`)
        else if (!namedBy.some((itemId) => isBad(judge(itemId, before)))) turned += 1
      }
      expect(unnamed).toEqual([])
      expect(namedBy.filter((itemId) => !isSevere(itemId))).toEqual([])
      expect(turned).toBeGreaterThan(0)
    },
    120_000,
  )
})

describe('silence', () => {
  const countMeets = (change: Change) =>
    [...verdictsOf(evaluateChanged(change)).values()].filter((verdict) => verdict === 'meets').length
  const isOpen = (verdict: string | undefined) => verdict === 'not-computed' || verdict === 'needs-judgment'

  test('R3: all lists of features emptied: what rested on them is asked, nothing passes for it', () => {
    const empty: Change = ({ features }) => {
      for (const list of FEATURE_LISTS) features[list] = []
    }
    expect(countMeets(empty)).toBeLessThan(countMeets(() => {}))
    const now = verdictsOf(evaluateChanged(empty))
    const gone = [...AS_IT_STANDS].filter(
      ([id, verdict]) => verdict !== 'not-applicable' && now.get(id) === 'not-applicable',
    )
    expect(gone.map(([id]) => id)).toEqual([])
  })

  test('R3b: the holes emptied: rings, distances and coupons stay asked, since layers are plated', () => {
    const now = verdictsOf(
      evaluateChanged(({ features }) => {
        features.holes = []
      }),
    )
    for (const id of ['annular-ring', 'hole-to-bend', 'coupon-test']) expect(now.get(id), id).not.toBe('not-applicable')
    expect(isOpen(now.get('annular-ring'))).toBe(true)
  })

  test('R16: bends removed from flex zones: their items are asked, not passed over', () => {
    const now = verdictsOf(
      evaluateChanged((d) => {
        d.bends = []
        for (const conductor of d.features.conductors) conductor.crossings = []
        for (const list of ['holes', 'pads', 'widthSteps', 'coverlayOpenings', 'stiffeners', 'components'] as const)
          for (const each of d.features[list]) each.nearestBend = null
      }),
    )
    expect(isOpen(now.get('bend-strain')) || isOpen(now.get('fatigue-life'))).toBe(true)
    expect([...now].filter(([id, verdict]) => verdict === 'meets' && AS_IT_STANDS.get(id) !== 'meets')).toEqual([])
  })
})
