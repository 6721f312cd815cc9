import { NM_PER_MM } from '../limits'
import { FLASH, NUMBERS_PER_OBJECT } from '../objects/objects'
import type { ArtworkSet } from '../set/read-set'
import type { GroundBand, PlanGround } from './ground'
import type { OnPlanBand, OnPlanFacts } from './on-plan-facts'
import { type Placement, toPlan } from './placement'
import { distanceToRings, isInside } from './rings'

/** A drilled hole this near to a drawn one, and as wide within it, is that one: half a mil of rounding, and coordinates typed to 0.01 mm. Our choice. */
const SAME_PLACE_NM = 50_000
const SAME_SIZE_NM = 12_700

/** Which holes of the plan were drilled where it draws them. */
export function matchHoles(
  { holes }: PlanGround,
  drilled: readonly { readonly xNm: number; readonly yNm: number; readonly diameterNm: number }[],
  placement: Placement,
): OnPlanFacts['holes'] {
  const placed = drilled.map(({ xNm, yNm, diameterNm }) => ({ at: toPlan(placement, xNm, yNm), diameterNm }))
  const ids = [...new Set(holes.map(({ holeId }) => holeId))]
  return ids.map((holeId) => {
    const own = holes.filter((hole) => hole.holeId === holeId)
    const missing = own.filter(
      ({ atNm, diameterNm }) =>
        !placed.some(
          ({ at, diameterNm: drill }) =>
            Math.hypot(at[0] - atNm[0], at[1] - atNm[1]) <= SAME_PLACE_NM &&
            (diameterNm === null || Math.abs(drill - diameterNm) <= SAME_SIZE_NM),
        ),
    )
    const [first] = missing
    return {
      holeId,
      drawnCount: own.length,
      foundCount: own.length - missing.length,
      missingAtMm: first === undefined ? null : [first.atNm[0] / NM_PER_MM, first.atNm[1] / NM_PER_MM],
    }
  })
}

/** Drilled holes in a bend, and the nearest one outside of it. */
export function measureBandHoles(
  set: ArtworkSet,
  band: GroundBand,
  toMm: (x: number, y: number) => [number, number],
): Pick<OnPlanBand, 'holes' | 'nearestHole'> {
  let count = 0
  let platedCount = 0
  let firstAtMm: [number, number] | null = null
  let nearestHole: OnPlanBand['nearestHole'] = null
  for (const { reading } of set.files) {
    if (reading.kind !== 'drill') continue
    const { objects } = reading
    const platings = new Map(reading.tools.map(({ number, plating }) => [number, plating]))
    for (let index = 0; index < objects.count; index += 1) {
      const use = objects.apertures[objects.apertureAt[index] ?? -1]
      const diameterNm = use?.diameterNm ?? 0
      if (diameterNm <= 0) continue
      const isPlated = platings.get(use?.aperture.code ?? -1) === 'plated'
      const from = index * NUMBERS_PER_OBJECT
      const n = (offset: number) => objects.numbers[from + offset] ?? 0
      // A slot is looked at at both ends and in its middle.
      const places =
        objects.kinds[index] === FLASH
          ? [[n(0), n(1)] as const]
          : ([
              [n(0), n(1)],
              [n(2), n(3)],
              [(n(0) + n(2)) / 2, (n(1) + n(3)) / 2],
            ] as const)
      const distances = places.map(([x, y]) =>
        isInside(band.rings, x, y) ? 0 : Math.max(0, distanceToRings(band.rings, x, y) - diameterNm / 2),
      )
      const least = Math.min(...distances)
      const [x, y] = places[distances.indexOf(least)] ?? places[0]
      if (least === 0) {
        count += 1
        if (isPlated) platedCount += 1
        firstAtMm ??= toMm(x, y)
      } else if (nearestHole === null || least / NM_PER_MM < nearestHole.mm) {
        nearestHole = {
          mm: least / NM_PER_MM,
          atMm: toMm(x, y),
          diameterMm: diameterNm / NM_PER_MM,
          isPlated,
        }
      }
    }
  }
  return { holes: { count, platedCount, firstAtMm }, nearestHole }
}
