import type { PlanGround, Rings } from './ground'
import { EIGHT_WAYS, mapPath, type Placement, toPlan } from './placement'
import { boxOf, distanceToRings, sampleRings } from './rings'

/** Borders this near to each other are one: two programs' rounding and flattened arcs. Our choice. */
const SAME_BORDER_NM = 50_000
/** Holes of the plan this near to drilled ones are those. */
const SAME_HOLE_NM = 50_000
/** At least this share of the outline has to fit before anybody says how artwork lies on a plan. Our choice. */
const LEAST_FIT = 0.5
const COARSE = { stepNm: 200_000, most: 300 }
const FINE = { stepNm: 100_000, most: 4000 }

export interface Registration extends Placement {
  /** Share of either outline that lies on the other's, the lesser one. */
  readonly fitFraction: number
  /** Does the outline fit in one position alone, or do holes, or coordinates that are the same, decide? */
  readonly isUnique: boolean
  /** How far apart both outlines are at most, and where, in the plan's coordinates. */
  readonly farthestNm: number
  readonly farthestAtNm: readonly [number, number]
}

interface Candidate extends Placement {
  readonly fits: number
  readonly meanNm: number
}

/**
 * How a set lies on the plan: of eight ways to mirror and turn it, and a few shifts each, the one in which most of its outline lies on the plan's. A change of one arm
 * so leaves the rest where it is. Null where no way fits by half.
 *
 * @param outline  rings of the artwork's profile
 * @param drilledNm  x, y of drilled holes, in the artwork's coordinates
 */
export function registerOutline(
  outline: Rings,
  drilledNm: readonly (readonly [number, number])[],
  ground: PlanGround,
): Registration | null {
  if (outline.length === 0 || ground.part.length === 0) return null
  const places = sampleRings(outline, COARSE.stepNm, COARSE.most)
  const candidates = EIGHT_WAYS.flatMap((way) =>
    listShifts(outline, way, ground.part).map((shiftNm) => judge(places, { ...way, shiftNm }, ground.part)),
  ).sort((one, other) => other.fits - one.fits || one.meanNm - other.meanNm)
  const [best] = candidates
  if (best === undefined || best.fits / (places.length / 2) < LEAST_FIT) return null
  const alike = onePerWay(
    candidates.filter(({ fits, meanNm }) => fits >= best.fits - 1 && meanNm <= best.meanNm + 2000),
  )
  const { chosen, isUnique } = choose(alike, drilledNm, ground)
  const fit = measureFit(outline, chosen, ground.part)
  return fit.fitFraction < LEAST_FIT ? null : { ...chosen, isUnique, ...fit }
}

/** Corners and middles of both boxes laid on each other, and both as they are. */
function listShifts(outline: Rings, way: Omit<Placement, 'shiftNm'>, part: Rings): (readonly [number, number])[] {
  const turned = outline.map((ring) => mapPath(ring, (x, y) => toPlan({ ...way, shiftNm: [0, 0] }, x, y)))
  const [own, wanted] = [boxOf(turned), boxOf(part)]
  const [low, high] = [
    [wanted[0] - own[0], wanted[1] - own[1]],
    [wanted[2] - own[2], wanted[3] - own[3]],
  ] as const
  const xs = [low[0], high[0], Math.round((low[0] + high[0]) / 2)]
  const ys = [low[1], high[1], Math.round((low[1] + high[1]) / 2)]
  return [[0, 0] as const, ...xs.flatMap((x) => ys.map((y) => [x, y] as const))]
}

function judge(places: readonly number[], placement: Placement, part: Rings): Candidate {
  let fits = 0
  let sum = 0
  for (let at = 0; at + 1 < places.length; at += 2) {
    const [x, y] = toPlan(placement, places[at] ?? 0, places[at + 1] ?? 0)
    const distance = distanceToRings(part, x, y)
    if (distance > SAME_BORDER_NM) continue
    fits += 1
    sum += distance
  }
  return { ...placement, fits, meanNm: fits === 0 ? Infinity : sum / fits }
}

function onePerWay(candidates: readonly Candidate[]): Candidate[] {
  const seen = new Set<string>()
  return candidates.filter(({ isMirrored, turnDeg }) => {
    const key = `${isMirrored} ${turnDeg}`
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}

/** An outline that looks the same in several positions: holes decide, then coordinates that are the same in both. */
function choose(
  alike: readonly Candidate[],
  drilledNm: readonly (readonly [number, number])[],
  { holes }: PlanGround,
): { chosen: Candidate; isUnique: boolean } {
  const [first] = alike as [Candidate]
  if (alike.length === 1) return { chosen: first, isUnique: true }
  const hits = alike.map((candidate) => {
    const placed = drilledNm.map(([x, y]) => toPlan(candidate, x, y))
    return holes.filter(({ atNm }) => placed.some(([x, y]) => Math.hypot(x - atNm[0], y - atNm[1]) <= SAME_HOLE_NM))
      .length
  })
  const most = Math.max(...hits)
  const left = alike.filter((_, at) => hits[at] === most)
  if (left.length === 1) return { chosen: left[0] ?? first, isUnique: true }
  const asDrawn = left.find(({ isMirrored, turnDeg }) => !isMirrored && turnDeg === 0)
  const isSame = asDrawn !== undefined && Math.hypot(...asDrawn.shiftNm) <= SAME_BORDER_NM
  return { chosen: asDrawn ?? left[0] ?? first, isUnique: isSame }
}

function measureFit(outline: Rings, placement: Placement, part: Rings) {
  const placed = outline.map((ring) => mapPath(ring, (x, y) => toPlan(placement, x, y)))
  let farthestNm = 0
  let farthestAtNm: readonly [number, number] = [0, 0]
  // Either way: something that the plan draws and the artwork lacks is far from all of the artwork's outline.
  const shares = (
    [
      [placed, part],
      [part, placed],
    ] as const
  ).map(([own, other]) => {
    const places = sampleRings(own, FINE.stepNm, FINE.most)
    let fits = 0
    for (let at = 0; at + 1 < places.length; at += 2) {
      const [x, y] = [places[at] ?? 0, places[at + 1] ?? 0]
      const distance = distanceToRings(other, x, y)
      if (distance <= SAME_BORDER_NM) fits += 1
      if (distance > farthestNm) {
        farthestNm = distance
        farthestAtNm = [x, y]
      }
    }
    return fits / Math.max(1, places.length / 2)
  })
  return { fitFraction: Math.min(...shares), farthestNm, farthestAtNm }
}
