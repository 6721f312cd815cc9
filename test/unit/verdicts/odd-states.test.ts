import { describe, expect, test } from 'vitest'
import { type Bend, type Design, evaluate, makePresence, readBendLife } from '@/lib/engine'
import { listVerdicts, makeOneBend } from './one-bend'

/** So easy that bending alone meets everything that asks for strain or life. */
const EASY = { insideRadiusMm: 20, requiredCycles: 10 }
const HELD: Partial<Bend> = { radiusHeldBy: 'between-faces', angleDeg: 180 }
const ITEMS = ['bend-strain', 'fatigue-life', 'film-strain'] as const

const make = (bend: Partial<Bend>): Design => makeOneBend({ ...EASY, bends: [bend] })

function withLeaf(bend: Partial<Bend>, lengthMm: number | null = 40): Design {
  const design = make(bend)
  const { layers, zones } = design.construction
  const [zone] = zones
  const base = layers.find(({ id }) => id === 'base')
  if (zone === undefined || base === undefined) throw new Error('the design has a zone and a base film')
  layers.push({ id: 'gap', name: 'gap', kind: 'unbonded-gap', thicknessUm: 20 }, { ...base, id: 'second' })
  zone.presence.push(makePresence('gap'), makePresence('second'))
  zone.lengthMm = lengthMm
  return design
}

const ODD: readonly (readonly [string, () => Design])[] = [
  [
    'a flatter end of a bend that is folded once',
    () => make({ use: 'fold-once', requiredCycles: null, flexesFromRadiusMm: 30 }),
  ],
  [
    'a flatter end of a bend that is flexed to install',
    () => make({ use: 'flex-to-install', requiredCycles: null, flexesFromAngleDeg: 20 }),
  ],
  ['a flatter end, and nobody said how the bend is used', () => make({ use: null, flexesFromRadiusMm: 30 })],
  ['a flatter end as tight as the other', () => make({ flexesFromRadiusMm: 20 })],
  ['a flatter end past the whole angle', () => make({ flexesFromAngleDeg: 170 })],
  ['a flatter end by radius and by an angle of 0', () => make({ flexesFromRadiusMm: 30, flexesFromAngleDeg: 0 })],
  ['to both sides of flat, from a flatter end', () => make({ motion: 'reversed', flexesFromAngleDeg: 10 })],
  [
    'everything at once that contradicts',
    () => make({ flexesFromRadiusMm: 10, flexesFromAngleDeg: 120, motion: 'reversed', twistDeg: 10 }),
  ],
  ['a fold before whose tolerance swallows it', () => make({ foldedToRadiusMm: 0.5, radiusToleranceMm: 0.6 })],
  ['a fold before to nothing', () => make({ foldedToRadiusMm: 1e-6 })],
  ['a twist over next to nothing', () => make({ twistDeg: 1, twistLengthMm: 0.05 })],
  ['a whole turn over 10 mm', () => make({ twistDeg: 360, twistLengthMm: 10 })],
  ['a twist over more than the zone is long', () => make({ twistDeg: 5, twistLengthMm: 500 })],
  ['a twist whose length nobody stated', () => make({ twistDeg: 5 })],
  ['a length that twists by nothing that was stated', () => make({ twistLengthMm: 20 })],
  ['a pull that tears it', () => make({ pullN: 1e5 })],
  ['a pull over next to no width', () => make({ pullN: 1, axisLengthMm: 0.01 })],
  ['faces at a right angle', () => make({ radiusHeldBy: 'between-faces', faceGapMm: 60 })],
  ['faces without a gap', () => make(HELD)],
  ['faces whose gap closes the tip', () => make({ ...HELD, faceGapMm: 0.2 })],
  ['faces nearer than the stated radius', () => make({ ...HELD, faceGapMm: 30 })],
  ['a gap that a former stands in', () => make({ radiusHeldBy: 'former', faceGapMm: 60 })],
  ['a gap, and nobody said what holds the radius', () => make({ radiusHeldBy: null, faceGapMm: 60 })],
  ['leaves between two faces', () => withLeaf({ ...HELD, faceGapMm: 60, leafLengths: 'equal-free-to-buckle' })],
  ['leaves of a length that nobody stated', () => withLeaf({})],
  ['leaves that are equal and stepped', () => withLeaf({ leafLengths: 'equal', leafStepMm: 0.5 })],
  ['leaves that are stepped by nobody knows what', () => withLeaf({ leafLengths: 'stepped' })],
  ['leaves that buckle in motion', () => withLeaf({ leafLengths: 'equal-free-to-buckle' })],
  ['leaves in a zone without a length', () => withLeaf({ leafLengths: 'equal' }, null)],
  ['leaves stepped by far too much', () => withLeaf({ leafLengths: 'stepped', leafStepMm: 5 })],
  ['short leaves and a pull', () => withLeaf({ leafLengths: 'equal', pullN: 1 })],
]

describe('odd states and loads of a bend', () => {
  test('the bend meets without them', () => {
    expect(ITEMS.flatMap((item) => listVerdicts(make({}), item))).toEqual(['not-applicable', 'meets', 'meets', 'meets'])
  })

  test.each(ODD)('%s: nothing that asks for strain or life meets', (_, makeDesign) => {
    const design = makeDesign()
    for (const item of ITEMS) expect(listVerdicts(design, item), item).not.toContain('meets')
    const [bend] = evaluate(design).bends
    if (bend === undefined) throw new Error('no bend')
    if (bend.use === 'dynamic') expect(readBendLife(bend)).toBe('cannot tell')
    for (const { because, decidedBy } of bend.modelLimits) {
      expect(because).not.toMatch(/NaN|undefined|null|Infinity/)
      expect(decidedBy.length).toBeGreaterThan(5)
    }
  })
})
