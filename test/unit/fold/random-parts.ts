import { listFlatBodies } from '@/lib/fold/bodies/flat-bodies'
import { placeBody } from '@/lib/fold/bodies/place-bodies'
import type { FlatBand, FlatPart, FlatPlate } from '@/lib/fold/kinematics/flat-part'
import type { FoldedPart } from '@/lib/fold/kinematics/fold-part'
import { minus, plus, times, type Vector } from '@/lib/fold/kinematics/vector'
import { carry, makeStripPart, rectangle } from './make-part'

/** From 0 to 1. */
export type Random = () => number

/** Of the strips that `makeStripPart` makes. */
const WIDE_MM = 8

const between = (random: Random, low: number, high: number) => low + (high - low) * random()

/** A strip of two to four bends, some with an arm to the side of a plate, and up to two blocks that stand on its plates. */
export function makeRandomPart(random: Random) {
  const bends = Array.from({ length: 2 + Math.floor(3 * random()) }, () => ({
    angleDeg: Math.round(between(random, -180, 180)),
    insideMm: between(random, 0.3, 4),
    plateMm: between(random, 2, 14),
  }))
  const strip = makeStripPart(bends, { lastMm: between(random, 2, 14) })
  const part = random() < 0.5 ? strip : addArm(strip, random)
  const plateCount = bends.length + 1
  const carried = Array.from({ length: Math.floor(3 * random()) }, (_, at) => {
    const plateId = `p${Math.floor(plateCount * random())}`
    const [loop = []] = part.plates.find(({ id }) => id === plateId)?.solids[0]?.loops ?? []
    const xs = loop.map(([x]) => x)
    const [from, to] = [Math.min(...xs), Math.max(...xs)]
    const isUp = random() < 0.5
    const heightMm = between(random, 0.005, 4)
    const standMm = random() < 0.3 ? between(random, 0, 5) : 0
    const bottomMm = isUp ? 0.05 + standMm : -0.05 - standMm - heightMm
    const longMm = between(random, 0.1, 0.9) * (to - from)
    return carry(
      `block ${at}`,
      plateId,
      rectangle(from + random() * (to - from - longMm), 1, longMm, 6),
      bottomMm,
      bottomMm + heightMm,
    )
  })
  return { part, carried, bands: bends.map((_, at) => `b${at}`) }
}

/** A band along x at the far side of the first plate, with a plate behind it. */
function addArm(part: FlatPart, random: Random): FlatPart {
  const far = WIDE_MM
  const angleDeg = Math.round(between(random, -180, 180)) || 90
  const insideMm = between(random, 0.3, 3)
  const lengthMm = ((Math.abs(angleDeg) * Math.PI) / 180) * (insideMm + 0.05)
  const plate = part.plates[0]
  const xs = (plate?.solids[0]?.loops[0] ?? []).map(([x]) => x)
  const wide = Math.max(...xs) - Math.min(...xs)
  const band: FlatBand = {
    id: 'b-arm',
    fromPlateId: 'p0',
    toPlateId: 'p-arm',
    start: [0, far],
    across: [0, 1],
    lengthMm,
    angleDeg,
    neutralMm: 0,
    loops: [rectangle(0, far, wide, lengthMm)],
    bottomMm: -0.05,
    topMm: 0.05,
  }
  const arm: FlatPlate = {
    id: 'p-arm',
    solids: [
      {
        id: 'p-arm',
        loops: [rectangle(0, far + lengthMm, wide, between(random, 2, 20))],
        bottomMm: -0.05,
        topMm: 0.05,
      },
    ],
  }
  return { plates: [...part.plates, arm], bands: [...part.bands, band] }
}

/** Points of the true bodies, bands bent and not cut into strips: corners of a lattice on all faces and inside, by body. */
export function sampleBodies(part: FlatPart, carried: ReturnType<typeof carry>[], folded: FoldedPart, stepMm: number) {
  const points = new Map<string, Vector[]>()
  for (const body of listFlatBodies(part, carried, 30)) {
    const own: Vector[] = []
    for (const { corners } of body.prisms) own.push(...fill(corners, stepMm))
    const [placed] = placeBody(folded, { ...body, prisms: [{ corners: own, sagMm: 0, leaf: null }] }).prisms
    points.set(body.id, [...(placed?.corners ?? [])])
  }
  return points
}

/** A prism of three corners, each low and high, filled with points no farther apart than a step. */
function fill(corners: readonly Vector[], stepMm: number): Vector[] {
  const low = corners.filter((_, at) => at % 2 === 0)
  const [base, ...others] = low
  if (base === undefined) return []
  const points: Vector[] = []
  const heightMm = (corners[1]?.[2] ?? 0) - base[2]
  for (let at = 0; at + 1 < others.length; at += 1) {
    const [a, b] = [minus(others[at] ?? base, base), minus(others[at + 1] ?? base, base)]
    const count = Math.max(
      1,
      Math.ceil(Math.max(Math.hypot(...a), Math.hypot(...b), Math.hypot(...minus(a, b))) / stepMm),
    )
    for (let i = 0; i <= count; i += 1) {
      for (let j = 0; i + j <= count; j += 1) {
        const flat = plus(base, plus(times(a, i / count), times(b, j / count)))
        const layers = Math.max(1, Math.ceil(heightMm / stepMm))
        for (let k = 0; k <= layers; k += 1) points.push([flat[0], flat[1], flat[2] + (heightMm * k) / layers])
      }
    }
  }
  return points
}
