import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createRandomStream } from '@/lib/engine/numerics'
import { listFoldedBodies } from '@/lib/fold'
import type { BodyFace } from '@/lib/fold/bodies/body-faces'
import { areaOf } from '@/lib/fold/bodies/cut-flat'
import { cross, dot, type Vector } from '@/lib/fold/kinematics/vector'
import { carry, makeStripPart, rectangle } from './make-part'
import { makeRandomPart } from './random-parts'

/** By the divergence theorem: a sixth of the triple product of each triangle. Positive where faces look outwards. */
function volumeOf(faces: readonly BodyFace[]): number {
  return faces.reduce((sum, { corners: [start, ...rest] }) => {
    if (start === undefined) return sum
    return rest.slice(1).reduce((part, corner, at) => part + dot(start, cross(rest[at] ?? corner, corner)) / 6, sum)
  }, 0)
}

const keyOf = (point: Vector) => point.map((mm) => Math.round(mm * 1e6)).join(',')

/** Sides that no other face runs back along. */
function listOpenSides(faces: readonly BodyFace[]): string[] {
  const open = new Map<string, number>()
  for (const { corners } of faces) {
    corners.forEach((from, at) => {
      const [a, b] = [keyOf(from), keyOf(corners[(at + 1) % corners.length] ?? from)]
      if (a === b) return
      const key = a < b ? `${a} ${b}` : `${b} ${a}`
      open.set(key, (open.get(key) ?? 0) + (a < b ? 1 : -1))
    })
  }
  return [...open].flatMap(([key, count]) => (count === 0 ? [] : [key]))
}

describe('bodies of a folded part', () => {
  it('a strip folded to any angle: each body is closed, looks outwards, and holds what closed forms say', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -179, max: 179, noNaN: true }).filter((angle) => Math.abs(angle) > 1),
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (angleDeg, insideMm, share) => {
          const part = makeStripPart([{ angleDeg, insideMm, plateMm: 12 }])
          const bodies = listFoldedBodies(
            part,
            [carry('s', 'p0', rectangle(2, 1, 6, 6), 0.05, 1)],
            'p0',
            new Map([['b0', share]]),
            2,
          )
          const volume = (id: string) => volumeOf(bodies.find((body) => body.id === id)?.faces ?? [])
          for (const { id, faces } of bodies) expect([id, listOpenSides(faces)]).toEqual([id, []])
          expect(volume('p0')).toBeCloseTo(12 * 8 * 0.1, 9)
          expect(volume('s')).toBeCloseTo(6 * 6 * 0.95, 9)
          // Half-way through, so what the inside loses the outside gains: length of the neutral surface times section.
          const [band] = part.bands
          expect(volume('b0') / ((band?.lengthMm ?? 0) * 8 * 0.1)).toBeCloseTo(1, 3)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('an area with a hole and a corner cut by an arc is closed, and its upright edges are drawn at true corners alone', () => {
    const round = Array.from({ length: 19 }, (_, at) => {
      const angle = (at / 18) * (Math.PI / 2)
      return [8 + 2 * Math.cos(angle), 8 + 2 * Math.sin(angle)] as const
    })
    const loop = [[0, 0], [10, 0], ...round, [0, 10]] as const
    const hole = rectangle(3, 3, 2, 2).toReversed()
    const part = {
      plates: [{ id: 'p0', solids: [{ id: 'a', loops: [loop, hole], bottomMm: -0.1, topMm: 0.1 }] }],
      bands: [],
    }
    const faces = listFoldedBodies(part, [], 'p0', new Map())[0]?.faces ?? []
    expect(listOpenSides(faces)).toEqual([])
    expect(volumeOf(faces)).toBeCloseTo((Math.abs(areaOf(loop)) - 4) * 0.2, 9)
    const upright = new Set(
      faces.flatMap(({ side, corners, isEdge }) =>
        side === 'edge'
          ? corners.flatMap((corner, at) =>
              at % 2 === 1 && isEdge[at] === true ? [keyOf(corner).split(',').slice(0, 2).join(',')] : [],
            )
          : [],
      ),
    )
    // Three corners of the outline and four of the hole; the arc runs on without one.
    expect(upright.size).toBe(7)
  })

  it('of 40 random parts, each body is closed and holds what it held flat, but for the bends', () => {
    const stream = createRandomStream(20261129)
    const random = () => stream.nextUniform()
    for (let run = 0; run < 40; run += 1) {
      const { part, carried, bands } = makeRandomPart(random)
      const shares = new Map(bands.map((id) => [id, random()]))
      const flat = listFoldedBodies(part, carried, 'p0', new Map(part.bands.map(({ id }) => [id, 0])), 5)
      const folded = listFoldedBodies(part, carried, 'p0', shares, 5)
      expect(folded.map(({ id }) => id)).toEqual(flat.map(({ id }) => id))
      folded.forEach(({ id, kind, faces }, at) => {
        expect([run, id, listOpenSides(faces)]).toEqual([run, id, []])
        const was = volumeOf(flat[at]?.faces ?? [])
        expect(volumeOf(faces) / was).toBeCloseTo(1, kind === 'band' ? 2 : 9)
      })
    }
  })

  it('flat, its corners are those of the flat part to the last digit', () => {
    const part = makeStripPart([{ angleDeg: 90, insideMm: 1, plateMm: 5 }])
    const [plate] = listFoldedBodies(part, [], 'p0', new Map([['b0', 0]]))
    const top = plate?.faces.flatMap(({ side, corners }) => (side === 'top' ? corners : [])) ?? []
    expect(top.every(([x, y, z]) => (x === 0 || x === 5) && (y === 0 || y === 8) && z === 0.05)).toBe(true)
    expect(top).toHaveLength(6)
  })
})
