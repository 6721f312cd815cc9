import { listFlatBodies } from '@/lib/fold/bodies/flat-bodies'
import { checkFolded } from '@/lib/fold/clash/check-folded'
import { sweepFold } from '@/lib/fold/clash/sweep-fold'
import { foldPart } from '@/lib/fold/kinematics/fold-part'
import type { Vector } from '@/lib/fold/kinematics/vector'
import { makeRandomPart, type Random, sampleBodies } from './random-parts'

const CLEARANCE_MM = 0.3
/** Points of the sample lie no farther apart: a sampled gap is too large by less than this (half of the diagonal at each of both bodies). */
const STEP_MM = 1
/** A gap that falls short of the limit by less is not told on the way. */
const RESOLUTION_MM = 0.01
/** Looks of the brute force at each step of the way. */
const LOOKS = 8
/** What is farther along the part than this owes the whole clearance: half a turn brings it no nearer. */
const FAR_MM = (Math.PI / 2) * (CLEARANCE_MM / 0.95 + 6)

/**
 * Holds one random part, folded and along its whole way, against the least distance of a dense sample of points of its true, bent bodies.
 *
 * @returns what contradicts, empty where nothing does
 */
export function compareWithBruteForce(random: Random): string[] {
  const { part, carried, bands } = makeRandomPart(random)
  const problems: string[] = []
  const flat = sampleBodies(part, carried, foldPart(part, 'p0', new Map(part.bands.map(({ id }) => [id, 0]))), STEP_MM)
  const ids = listFlatBodies(part, carried).map(({ id }) => id)
  const pairs = ids.flatMap((a, at) => ids.slice(at + 1).map((b) => [a, b] as const))
  const far = pairs.filter(([a, b]) => apartMm(flat.get(a) ?? [], flat.get(b) ?? []) >= FAR_MM)

  const folded = foldPart(part, 'p0')
  const end = sampleBodies(part, carried, folded, STEP_MM)
  const { clashes, least } = checkFolded(part, carried, folded, CLEARANCE_MM)
  for (const { bodyIds, kind, lowerMm, upperMm, allowedMm } of clashes) {
    const mm = leastMm(end.get(bodyIds[0]), end.get(bodyIds[1]), Number.POSITIVE_INFINITY)
    const name = `folded, ${bodyIds.join(' and ')}`
    if (lowerMm > upperMm || (kind !== 'cannot-tell' && upperMm > allowedMm)) problems.push(`${name}: bounds`)
    if (kind !== 'cannot-tell' && mm > allowedMm + STEP_MM)
      problems.push(`${name}: ${kind}, and the sample has ${mm} mm`)
  }
  for (const [a, b] of far) {
    const mm = leastMm(end.get(a), end.get(b), CLEARANCE_MM)
    if (mm < CLEARANCE_MM && !clashes.some(({ bodyIds }) => bodyIds.includes(a) && bodyIds.includes(b))) {
      problems.push(`folded, ${a} and ${b}: nothing is reported, and the sample has ${mm} mm`)
    }
    // What one bend joins is kept apart by its own radius, and is no least gap of the part.
    const isJoined = part.bands.some(({ id, fromPlateId, toPlateId }) =>
      [a, b].every((own) => [id, fromPlateId, toPlateId].includes(own)),
    )
    if (isJoined) continue
    const leastLowerMm = least?.lowerMm ?? 0
    const known = leastMm(end.get(a), end.get(b), leastLowerMm)
    if (known < leastLowerMm - 1e-9)
      problems.push(`folded, ${a} and ${b}: nearer than the least gap of ${leastLowerMm} mm`)
  }

  const order = bands.map((id) => [id])
  const met = sweepFold(part, carried, 'p0', order, CLEARANCE_MM)
  const at = (step: number, share: number) =>
    sampleBodies(
      part,
      carried,
      foldPart(
        part,
        'p0',
        new Map(
          part.bands.map(({ id }) => [
            id,
            bands.indexOf(id) < step && bands.includes(id) ? 1 : bands[step] === id ? share : 0,
          ]),
        ),
      ),
      STEP_MM,
    )
  for (const { step, share, clash } of met) {
    if (clash.kind === 'cannot-tell') continue
    const points = at(step, share)
    const mm = leastMm(points.get(clash.bodyIds[0]), points.get(clash.bodyIds[1]), Number.POSITIVE_INFINITY)
    if (mm > clash.allowedMm + STEP_MM) {
      problems.push(
        `step ${step} at ${share}, ${clash.bodyIds.join(' and ')}: ${clash.kind}, and the sample has ${mm} mm`,
      )
    }
  }
  const free = far.filter(([a, b]) => !met.some(({ clash: { bodyIds } }) => bodyIds.includes(a) && bodyIds.includes(b)))
  for (let step = 0; step < order.length; step += 1) {
    for (let look = 1; look <= LOOKS; look += 1) {
      const points = at(step, look / LOOKS)
      for (const [a, b] of free) {
        const mm = leastMm(points.get(a), points.get(b), CLEARANCE_MM)
        if (mm < CLEARANCE_MM - RESOLUTION_MM) {
          problems.push(
            `step ${step} at ${look / LOOKS}, ${a} and ${b}: nothing is reported, and the sample has ${mm} mm`,
          )
        }
      }
    }
  }
  return problems
}

/** Least distance of two clouds of points; from `enoughMm` on it does not matter. */
function leastMm(first: readonly Vector[] = [], second: readonly Vector[] = [], enoughMm: number): number {
  if (apartMm(first, second) >= enoughMm) return enoughMm
  let least = enoughMm
  for (const [x, y, z] of first) {
    for (const [u, v, w] of second) {
      const [dx, dy, dz] = [x - u, y - v, z - w]
      const square = dx * dx + dy * dy + dz * dz
      if (square < least * least) least = Math.sqrt(square)
    }
  }
  return least
}

const boxes = new WeakMap<readonly Vector[], readonly { readonly low: number; readonly high: number }[]>()

/** Of the boxes along the axes. */
function apartMm(first: readonly Vector[], second: readonly Vector[]): number {
  const [a, b] = [first, second].map((points) => {
    const known = boxes.get(points) ?? ([0, 1, 2] as const).map((axis) => spanOf(points, axis))
    boxes.set(points, known)
    return known
  })
  return Math.max(
    ...[0, 1, 2].map((axis) => {
      const [one, other] = [a?.[axis], b?.[axis]]
      return one === undefined || other === undefined ? 0 : Math.max(one.low - other.high, other.low - one.high)
    }),
  )
}

function spanOf(points: readonly Vector[], axis: 0 | 1 | 2): { low: number; high: number } {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const point of points) {
    low = Math.min(low, point[axis])
    high = Math.max(high, point[axis])
  }
  return { low, high }
}
