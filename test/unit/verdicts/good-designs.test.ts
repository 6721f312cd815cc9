import { describe, expect, test } from 'vitest'
import { type Design, evaluate, makePresence, parseDesign } from '@/lib/engine'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

/*
 * Designs that an expert would let pass: revision B of the Skua built another way that is as good. No item may fail, or say that nobody can tell, that did
 * not do so before. What is good is common practice, no published source.
 */

type Change = (design: Design) => void

const find = <T extends { readonly id: string }>(list: readonly T[], id: string): T => {
  const found = list.find((each) => each.id === id)
  if (found === undefined) throw new RangeError(`no ${id}`)
  return found
}
const bendOf = (design: Design, id: string) => find(design.bends, id)
const zoneOf = (design: Design, id: string) => find(design.construction.zones, id)

/** An item in brackets may speak: it says something else than that the design is bad, and the row says what. */
const GOOD: readonly (readonly [name: string, change: Change, mayFail?: readonly string[]])[] = [
  [
    'a via in film that stands, 8 mm off the fold',
    (d) =>
      Object.assign(find(d.features.holes, 'via-l2-l3'), {
        zoneId: 'link',
        nearestBend: { bendId: 'fold', distanceMm: 8 },
      }),
  ],
  [
    'holes, openings and components that lie far from every bend',
    (d) => {
      for (const each of [...d.features.holes, ...d.features.components, ...d.features.coverlayOpenings])
        Object.assign(each, { nearestBend: null, clearOfBends: true })
    },
  ],
  [
    '20 um on the walls in class 2',
    (d) => {
      d.brief.performanceClass = 'class-2'
      for (const hole of d.features.holes) if (hole.plated === true) hole.wallPlatingUm = 20
    },
  ],
  [
    'a laser via of 0.1 mm between the flexible layers',
    (d) => Object.assign(find(d.features.holes, 'via-l2-l3'), { drillMm: 0.1, landMm: 0.35 }),
  ],
  [
    'immersion gold over nickel for 20 matings',
    ({ features }) =>
      Object.assign(find(features.connectors, 'optics'), {
        finish: 'immersion-gold-over-electroless-nickel',
        matings: 20,
      }),
  ],
  [
    'hard gold for 500 matings',
    ({ features }) =>
      Object.assign(find(features.connectors, 'optics'), {
        finish: 'electroplated-nickel-gold',
        isHardGold: true,
        matings: 500,
      }),
  ],
  [
    'a stiffener that is bonded after soldering',
    ({ features }) =>
      Object.assign(find(features.stiffeners, 'finger-stiffener-part'), {
        bonded: 'after-soldering',
        heatRatingDegC: null,
      }),
  ],
  [
    'dry packs in place of an oven',
    (d) => Object.assign(d.brief.assembly, { drying: 'dry-pack', bakeDegC: null, bakeHours: null }),
  ],
  [
    'no bead, and rounded edges',
    (d) => {
      Object.assign(d.features.rigidEdges, {
        bead: 'ruled-out',
        beadMaterial: '',
        beadWidthMm: null,
        beadHeightMm: null,
      })
      for (const bend of d.bends) Object.assign(bend, { strainReliefKind: 'rounded-edge', strainReliefWidthMm: null })
    },
  ],
  [
    'a corner of 0.5 mm that borders no flex',
    (d) => Object.assign(find(d.features.outlineCorners, 'hinge-corner'), { insideRadiusMm: 0.5, bordersFlex: false }),
  ],
  ['a rolling loop that nothing has to hold', (d) => Object.assign(bendOf(d, 'hinge'), { radiusHeldBy: 'free-loop' })],
  ['a fold of 1.5 mm', (d) => Object.assign(bendOf(d, 'fold'), { insideRadiusMm: 1.5, radiusToleranceMm: 0.1 })],
  [
    'a hinge of 12 mm for a hundred thousand cycles',
    (d) => {
      const hinge = bendOf(d, 'hinge')
      Object.assign(hinge, { insideRadiusMm: 12, requiredCycles: 100_000 })
      hinge.flexTest.mandrelDiameterMm = 24
    },
  ],
  ['copper 0.35 mm from an edge cut by a die', (d) => Object.assign(d.features, { copperToOutlineMm: 0.35 })],
  [
    'a shield film over the link, tied to ground',
    (d) => {
      d.construction.layers.splice(
        d.construction.layers.findIndex(({ id }) => id === 'cover-top'),
        0,
        {
          id: 'shield',
          name: 'Shield, flex',
          kind: 'shield-film',
          materialId: 'shield-film',
          thicknessUm: 16,
          tolerancePlusUm: 2,
          toleranceMinusUm: 2,
        },
      )
      zoneOf(d, 'link').presence.unshift(makePresence('shield'))
      d.features.shieldGround = { pointCount: 4, openingsShown: true, maxResistanceOhm: 1 }
    },
    // The link does become stiffer by it, and the item says by how much.
    ['shield-stiffness'],
  ],
]

const verdictsOf = (change: Change) => {
  const design = readDemoDesign('skua-rev-b')
  change(design)
  const parsed = parseDesign(design)
  if (!parsed.ok) throw new Error(parsed.issues.map(({ message }) => message).join('; '))
  return new Map(evaluate(parsed.value).items.map(({ itemId, verdict }) => [itemId, verdict]))
}

const AS_IT_STANDS = verdictsOf(() => {})
const isBad = (verdict: string | undefined) => verdict === 'fails' || verdict === 'cannot-tell'

describe('a design that an expert would let pass', () => {
  test.each(GOOD.map(([name, change, mayFail = []]) => ({ name, change, mayFail })))('$name', ({ change, mayFail }) => {
    const alarms = [...verdictsOf(change)].flatMap(([id, verdict]) =>
      isBad(verdict) && !isBad(AS_IT_STANDS.get(id)) ? [id] : [],
    )
    expect(alarms).toEqual(mayFail)
  })
})
