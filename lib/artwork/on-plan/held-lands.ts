import type { StackedCopper } from '../copper/copper-stack'
import { NM_PER_MM } from '../limits'
import { FLASH, NUMBERS_PER_OBJECT } from '../objects/objects'
import { extentOf } from '../shape/extents'
import { Outlines } from '../shape/outlines'
import type { FlatPath } from '../shape/path'
import type { Drawn } from './drawn'
import type { Rings } from './ground'
import type { OnPlanFacts } from './on-plan-facts'
import { isInside, sampleRings } from './rings'

type LandGroups = OnPlanFacts['covers'][number]['zones']

/** A drilled hole. */
export interface DrilledPlace {
  readonly xNm: number
  readonly yNm: number
}

/** Arcs of lands are followed this nearly. */
const TOLERANCE_NM = 1000
/** The rim of a land is looked at in steps of this. */
const STEP_NM = 25_000
const MOST_STEPS = 400
/** Copper this far outside of a land's rim is a conductor or a spur that leaves it. */
const OUTSIDE_NM = 30_000
/** How far a conductor or spur is followed straight on, until the coverlay covers it. */
const FOLLOWED_NM = 3_000_000
const FOLLOW_STEP_NM = 25_000
/** Coverlay over a land is looked for up to this. */
const FAR_NM = 1_000_000

interface HeldLand {
  readonly atNm: readonly [number, number]
  /** Coverlay over its rim where there is least, below 0 where the opening is wider than the land. */
  readonly rimNm: number
  /** Conductors and spurs that run straight under the coverlay; one of them is the conductor that serves it. */
  readonly heldArmCount: number
  /** Those that turn before they reach it: whether these hold nobody can tell. */
  readonly unclearArmCount: number
}

/** Flashed lands on film without a drilled hole that lie in an opening, by how they are held: a group for each number of spurs. */
export function groupLands(
  copper: StackedCopper,
  cover: Drawn,
  drilled: readonly DrilledPlace[],
  films: readonly { readonly zoneId: string; readonly rings: Rings }[],
  toMm: (x: number, y: number) => [number, number],
): LandGroups {
  const found = new Map<string, Map<number, HeldLand[]>>()
  const outlines = new Outlines(copper.objects, TOLERANCE_NM)
  const holes = new Places(drilled)
  for (let object = 0; object < copper.objects.count; object += 1) {
    if (copper.objects.kinds[object] !== FLASH || copper.objects.isClear[object] === 1) continue
    const from = object * NUMBERS_PER_OBJECT
    const [x = 0, y = 0] = copper.objects.numbers.subarray(from, from + 2)
    if (cover.islands.at(x, y) === null) continue
    const film = films.find(({ rings }) => isInside(rings, x, y))
    const extent = extentOf(copper.objects, object)
    if (film === undefined || extent === null || holes.isAnyIn(extent)) continue
    const land = look(copper, cover, outlines.of(object), [x, y])
    if (land === null) continue
    // The conductor that serves a land is no spur.
    const spurCount = Math.max(0, land.heldArmCount - 1)
    const isUnclear = spurCount === 0 && land.heldArmCount + land.unclearArmCount > 1
    const groups = found.get(film.zoneId) ?? new Map<number, HeldLand[]>()
    found.set(film.zoneId, groups)
    const key = isUnclear ? UNCLEAR : spurCount
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [land])
    else group.push(land)
  }
  return [...found].map(([zoneId, groups]) => ({
    zoneId,
    lands: [...groups].map(([spurCount, lands]) => {
      const least = lands.reduce((one, other) => (other.rimNm < one.rimNm ? other : one))
      return {
        spurCount: spurCount === UNCLEAR ? null : spurCount,
        count: lands.length,
        leastRim: { mm: least.rimNm / NM_PER_MM, atMm: toMm(...least.atNm) },
      }
    }),
  }))
}

const UNCLEAR = -1

/** Null where a land has no rim of its own: it lies within a larger piece of copper. */
function look(
  copper: StackedCopper,
  cover: Drawn,
  paths: readonly FlatPath[],
  centre: readonly [number, number],
): HeldLand | null {
  const [rim = []] = paths
  const places = sampleRings([rim], STEP_NM, MOST_STEPS)
  if (places.length === 0) return null
  let rimNm = FAR_NM
  let arms: { x: number; y: number; ux: number; uy: number }[] = []
  const runs: (typeof arms)[] = []
  let freeCount = 0
  for (let at = 0; at < places.length; at += 2) {
    const [x, y] = [places[at] ?? 0, places[at + 1] ?? 0]
    rimNm = Math.min(rimNm, signedCover(cover, x, y))
    const length = Math.hypot(x - centre[0], y - centre[1]) || 1
    const [ux, uy] = [(x - centre[0]) / length, (y - centre[1]) / length]
    const isCopper = copper.islands.at(Math.round(x + ux * OUTSIDE_NM), Math.round(y + uy * OUTSIDE_NM)) !== null
    if (isCopper) arms.push({ x, y, ux, uy })
    else {
      freeCount += 1
      if (arms.length > 0) runs.push(arms)
      arms = []
    }
  }
  if (freeCount === 0) return null
  // The rim closes: what runs over its first place is one.
  if (arms.length > 0) {
    const [first] = runs
    const [x0 = 0, y0 = 0] = places
    if (first?.[0] !== undefined && first[0].x === x0 && first[0].y === y0) runs[0] = [...arms, ...first]
    else runs.push(arms)
  }
  const isHeld = runs.map((run) => {
    const arm = run[Math.floor(run.length / 2)]
    return arm !== undefined && reachesCover(copper, cover, arm)
  })
  return {
    atNm: centre,
    rimNm,
    heldArmCount: isHeld.filter(Boolean).length,
    unclearArmCount: isHeld.filter((held) => !held).length,
  }
}

/** Coverlay between a place and the nearest border of an opening; below 0 within an opening. */
function signedCover({ islands, edges }: Drawn, x: number, y: number): number {
  let least = FAR_NM
  edges.near(x, y, FAR_NM, (edge) => {
    least = Math.min(least, edges.distanceTo(edge, x, y))
  })
  return islands.at(Math.round(x), Math.round(y)) === null ? least : -least
}

/** Straight on from the land, copper all the way, until the coverlay lies over it. */
function reachesCover(
  { islands }: StackedCopper,
  cover: Drawn,
  { x, y, ux, uy }: { x: number; y: number; ux: number; uy: number },
): boolean {
  for (let along = OUTSIDE_NM; along <= FOLLOWED_NM; along += FOLLOW_STEP_NM) {
    const [px, py] = [Math.round(x + ux * along), Math.round(y + uy * along)]
    if (islands.at(px, py) === null) return false
    if (cover.islands.at(px, py) === null) return true
  }
  return false
}

/** Places found by where they are. */
class Places {
  readonly #sorted: readonly DrilledPlace[]

  constructor(places: readonly DrilledPlace[]) {
    this.#sorted = [...places].sort((one, other) => one.xNm - other.xNm)
  }

  isAnyIn([minX, minY, maxX, maxY]: readonly [number, number, number, number]): boolean {
    let [low, high] = [0, this.#sorted.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if ((this.#sorted[middle]?.xNm ?? 0) < minX) low = middle + 1
      else high = middle
    }
    for (let at = low; at < this.#sorted.length; at += 1) {
      const { xNm, yNm } = this.#sorted[at] as DrilledPlace
      if (xNm > maxX) return false
      if (yNm >= minY && yNm <= maxY) return true
    }
    return false
  }
}
