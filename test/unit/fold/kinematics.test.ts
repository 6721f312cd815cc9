import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FlatBand, FlatPart, FlatPlate } from '@/lib/fold/kinematics/flat-part'
import { foldPart, placeInBand } from '@/lib/fold/kinematics/fold-part'
import { movePoint, type Pose } from '@/lib/fold/kinematics/pose'
import type { Vector } from '@/lib/fold/kinematics/vector'

const plate = (id: string): FlatPlate => ({ id, solids: [] })

/** Bands without length are creases: what paper does. */
function crease(
  fromPlateId: string,
  toPlateId: string,
  start: readonly [number, number],
  across: readonly [number, number],
  angleDeg: number,
): FlatBand {
  return {
    id: `${fromPlateId}-${toPlateId}`,
    fromPlateId,
    toPlateId,
    start,
    across,
    lengthMm: 0,
    angleDeg,
    neutralMm: 0,
    loops: [],
    bottomMm: 0,
    topMm: 0,
  }
}

function expectNear(found: Vector, wanted: Vector, within = 1e-9) {
  found.forEach((value, axis) => {
    expect(Math.abs(value - (wanted[axis] ?? Number.NaN)), `${found} against ${wanted}`).toBeLessThan(within)
  })
}

/** A strip of plates along x, each `plateMm` long, with bands of the given angles between. */
function makeStrip(angles: readonly number[], { plateMm = 10, bandMm = 3, neutralMm = 0.02 } = {}): FlatPart {
  const pitch = plateMm + bandMm
  return {
    plates: [...angles, 0].map((_, index) => plate(`p${index}`)),
    bands: angles.map((angleDeg, index) => ({
      ...crease(`p${index}`, `p${index + 1}`, [index * pitch + plateMm, 0], [1, 0], angleDeg),
      lengthMm: bandMm,
      neutralMm,
    })),
  }
}

describe('known nets and folds', () => {
  it('the net of a cube closes: each face comes to lie where a cube has it (closed form)', () => {
    // A cross: base, four walls round it, the lid behind the north wall.
    const part: FlatPart = {
      plates: ['base', 'east', 'west', 'north', 'south', 'lid'].map((id) => plate(id)),
      bands: [
        crease('base', 'east', [1, 0], [1, 0], 90),
        crease('base', 'west', [0, 0], [-1, 0], 90),
        crease('base', 'north', [0, 1], [0, 1], 90),
        crease('base', 'south', [0, 0], [0, -1], 90),
        crease('north', 'lid', [0, 2], [0, 1], 90),
      ],
    }
    const { plates, closures } = foldPart(part, 'base')
    const place = (id: string, point: Vector) => movePoint(plates.get(id) as Pose, point)
    expectNear(place('east', [2, 0, 0]), [1, 0, 1])
    expectNear(place('east', [2, 1, 0]), [1, 1, 1])
    expectNear(place('west', [-1, 1, 0]), [0, 1, 1])
    expectNear(place('south', [1, -1, 0]), [1, 0, 1])
    expectNear(place('north', [0, 2, 0]), [0, 1, 1])
    expectNear(place('lid', [0, 3, 0]), [0, 0, 1])
    expectNear(place('lid', [1, 3, 0]), [1, 0, 1])
    expect(closures).toEqual([])
  })

  it('a concertina of half turns lies over itself, one pitch of thickness a fold', () => {
    const bandMm = Math.PI * 0.5
    const part = makeStrip([180, -180, 180, -180], { plateMm: 10, bandMm, neutralMm: 0 })
    const { plates } = foldPart(part, 'p0')
    for (let index = 0; index <= 4; index += 1) {
      const start = index * (10 + bandMm)
      const place = movePoint(plates.get(`p${index}`) as Pose, [start, 4, 0])
      expectNear(place, [index % 2 === 0 ? 0 : 10, 4, index])
    }
  })

  it('four quarter turns close a square tube, and six of 60 degrees a hexagon; a missing one leaves the gap', () => {
    for (const sides of [3, 4, 6, 12]) {
      const part = makeStrip(Array.from({ length: sides }, () => 360 / sides))
      const { plates } = foldPart(part, 'p0')
      const end = movePoint(plates.get(`p${sides}`) as Pose, [sides * 13, 0, 0])
      expectNear(end, [0, 0, 0])
    }
    const ring: FlatPart = {
      plates: ['a', 'b', 'c'].map((id) => plate(id)),
      bands: [
        crease('a', 'b', [1, 0], [1, 0], 90),
        crease('b', 'c', [2, 0], [1, 0], 90),
        crease('c', 'a', [3, 0], [1, 0], 90),
      ],
    }
    const [gap] = foldPart(ring, 'a').closures
    expect(gap).toBeDefined()
    expect(Math.hypot(...(gap?.turnDeg ?? [0, 0, 0]))).toBeCloseTo(90, 9)
  })

  it('the inside radius of the bent band is what its length and neutral surface say', () => {
    const insideMm = 2
    const neutralFromInsideMm = 0.06
    const part = makeStrip([90], { bandMm: (Math.PI / 2) * (insideMm + neutralFromInsideMm), neutralMm: 0.04 })
    const band = foldPart(part, 'p0').bands.get('p0-p1')
    if (band === undefined) throw new Error('no band')
    // The top face is inside, at the height of the neutral surface and 0.06 above; the centre is one inside radius over it.
    const centre: Vector = [10, 0, 0.04 + neutralFromInsideMm + insideMm]
    for (const share of [0, 0.3, 1]) {
      const at = placeInBand(band, [10 + band.band.lengthMm * share, 0, 0.04 + neutralFromInsideMm])
      expect(Math.hypot(at[0] - centre[0], at[2] - centre[2])).toBeCloseTo(insideMm, 12)
    }
  })
})

const anglesDeg = fc.array(fc.double({ min: -180, max: 180, noNaN: true }), { minLength: 1, maxLength: 8 })
/** Without -0, which is equal to 0 and told apart by the comparison of tests. */
const point = fc
  .tuple(
    fc.double({ min: -40, max: 40, noNaN: true }),
    fc.double({ min: -40, max: 40, noNaN: true }),
    fc.double({ min: -1, max: 1, noNaN: true }),
  )
  .map(([x, y, z]): Vector => [x + 0, y + 0, z + 0])

const distance = (a: Vector, b: Vector) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

describe('properties', () => {
  it('a flat part is the identity, exactly, also after folding', () => {
    fc.assert(
      fc.property(anglesDeg, point, (angles, at) => {
        const part = makeStrip(angles)
        foldPart(part, 'p0')
        const flat = foldPart(part, 'p0', new Map(part.bands.map(({ id }) => [id, 0])))
        for (const pose of flat.plates.values()) expect(movePoint(pose, at)).toEqual(at)
        for (const band of flat.bands.values()) expect(placeInBand(band, at)).toEqual(at)
      }),
    )
  })

  it('plates keep every distance, bands join them without a step, and small angles are near to none', () => {
    fc.assert(
      fc.property(anglesDeg, point, point, fc.double({ min: 0, max: 1, noNaN: true }), (angles, a, b, share) => {
        const part = makeStrip(angles)
        const folded = foldPart(part, 'p0', new Map(part.bands.map(({ id }) => [id, share])))
        for (const pose of folded.plates.values()) {
          expect(distance(movePoint(pose, a), movePoint(pose, b))).toBeCloseTo(distance(a, b), 9)
        }
        for (const band of folded.bands.values()) {
          const { start, lengthMm, fromPlateId, toPlateId } = band.band
          const first: Vector = [start[0], a[1], a[2]]
          const last: Vector = [start[0] + lengthMm, a[1], a[2]]
          expectNear(placeInBand(band, first), movePoint(folded.plates.get(fromPlateId) as Pose, first))
          expectNear(placeInBand(band, last), movePoint(folded.plates.get(toPlateId) as Pose, last))
        }
      }),
    )
  })

  it('lengths along the neutral surface are kept', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -360, max: 360, noNaN: true }),
        fc.double({ min: 0.1, max: 30, noNaN: true }),
        (angleDeg, bandMm) => {
          const band = foldPart(makeStrip([angleDeg], { bandMm }), 'p0').bands.get('p0-p1')
          if (band === undefined) throw new Error('no band')
          const steps = 4000
          let sum = 0
          let before = placeInBand(band, [10, 0, 0.02])
          for (let step = 1; step <= steps; step += 1) {
            const next = placeInBand(band, [10 + (bandMm * step) / steps, 0, 0.02])
            sum += distance(before, next)
            before = next
          }
          // Chords fall short of the arc by angle squared over 24 steps squared.
          expect(Math.abs(sum / bandMm - 1)).toBeLessThan(1e-6)
        },
      ),
      { numRuns: 30 },
    )
  })

  it('the plate that stays is a choice of view: distances between points of any two plates do not depend on it', () => {
    fc.assert(
      fc.property(anglesDeg, point, point, fc.nat(), (angles, a, b, pick) => {
        const part = makeStrip(angles)
        const ids = part.plates.map(({ id }) => id)
        const fixed = ids[pick % ids.length] ?? 'p0'
        const [one, other] = [foldPart(part, 'p0'), foldPart(part, fixed)]
        const [first, last] = ['p0', ids.at(-1) ?? 'p0']
        const apart = ({ plates }: typeof one) =>
          distance(movePoint(plates.get(first) as Pose, a), movePoint(plates.get(last) as Pose, b))
        expect(apart(one)).toBeCloseTo(apart(other), 8)
      }),
    )
  })

  it('the sign of an angle and the face turned up are one thing: seen from below, each bend turns the other way', () => {
    fc.assert(
      fc.property(anglesDeg, point, (angles, at) => {
        const up = makeStrip(angles, { neutralMm: 0.03 })
        const down = makeStrip(
          angles.map((angle) => -angle),
          { neutralMm: -0.03 },
        )
        const id = `p${angles.length}`
        const a = movePoint(foldPart(up, 'p0').plates.get(id) as Pose, at)
        const b = movePoint(foldPart(down, 'p0').plates.get(id) as Pose, [at[0], at[1], -at[2]])
        expectNear(b, [a[0], a[1], -a[2]], 1e-8)
      }),
    )
  })
})
