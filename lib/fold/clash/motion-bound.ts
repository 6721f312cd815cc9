import type { FlatBody } from '../bodies/flat-bodies'
import type { FlatBand, FlatPart, PlanePoint } from '../kinematics/flat-part'

/**
 * How fast two bodies can move against each other while bands bend, in millimetres for a whole share. A point behind a band of length L, at most r
 * from its end, moves by at most angle (L / 2 + r): the end of an arc of kept length moves by at most half of it for each radian.
 *
 * @param moving  bands that bend; the others keep their angle
 */
export function boundSpeedMm(part: FlatPart, moving: ReadonlySet<string>, first: FlatBody, second: FlatBody): number {
  const way = findWay(part, first, second)
  if (way === null) return 0
  let reachMm = diameterMm(second)
  let speedMm = 0
  for (const step of [...way].reverse()) {
    if (step.kind === 'plate') {
      reachMm += step.sizeMm
      continue
    }
    if (moving.has(step.band.id)) {
      speedMm += ((Math.abs(step.band.angleDeg) * Math.PI) / 180) * (step.band.lengthMm / 2 + reachMm)
    }
    reachMm += step.band.lengthMm
  }
  return speedMm
}

type Step = { readonly kind: 'plate'; readonly sizeMm: number } | { readonly kind: 'band'; readonly band: FlatBand }

/** Plates and bands from one body to the other, the carriers that are bands themselves among them; null where nothing joins them. */
function findWay(part: FlatPart, first: FlatBody, second: FlatBody): readonly Step[] | null {
  const ends = platesOf(part, second)
  const cameBy = new Map<string, { readonly from: string | null; readonly band: FlatBand | null }>(
    platesOf(part, first).map((id) => [id, { from: null, band: null }]),
  )
  const waiting = [...cameBy.keys()]
  for (const plateId of waiting) {
    if (ends.includes(plateId))
      return [...ownBand(part, first), ...traceBack(part, cameBy, plateId), ...ownBand(part, second)]
    for (const band of part.bands) {
      const next = nextPlate(band, plateId)
      if (next === null || cameBy.has(next)) continue
      cameBy.set(next, { from: plateId, band })
      waiting.push(next)
    }
  }
  return null
}

const nextPlate = ({ fromPlateId, toPlateId }: FlatBand, plateId: string) =>
  fromPlateId === plateId ? toPlateId : toPlateId === plateId ? fromPlateId : null

function traceBack(
  part: FlatPart,
  cameBy: ReadonlyMap<string, { readonly from: string | null; readonly band: FlatBand | null }>,
  endId: string,
): readonly Step[] {
  const steps: Step[] = []
  let plateId: string | null = endId
  while (plateId !== null) {
    steps.push({ kind: 'plate', sizeMm: plateSizeMm(part, plateId) })
    const came: { readonly from: string | null; readonly band: FlatBand | null } | undefined = cameBy.get(plateId)
    if (came?.band) steps.push({ kind: 'band', band: came.band })
    plateId = came?.from ?? null
  }
  return steps.reverse()
}

function platesOf({ bands }: FlatPart, { carrier }: FlatBody): readonly string[] {
  if ('plateId' in carrier) return [carrier.plateId]
  const band = bands.find(({ id }) => id === carrier.bandId)
  return band === undefined ? [] : [band.fromPlateId]
}

function ownBand({ bands }: FlatPart, { carrier }: FlatBody): readonly Step[] {
  return bands.flatMap((band) =>
    'bandId' in carrier && band.id === carrier.bandId ? [{ kind: 'band', band } as const] : [],
  )
}

function plateSizeMm({ plates }: FlatPart, id: string): number {
  const plate = plates.find((other) => other.id === id)
  if (plate === undefined) return 0
  const heights = plate.solids.map(({ bottomMm, topMm }) => topMm - bottomMm)
  return sizeOf(plate.solids.flatMap(({ loops }) => loops.flat())) + Math.max(0, ...heights)
}

function diameterMm({ prisms, heightMm }: FlatBody): number {
  return sizeOf(prisms.flatMap(({ corners }) => corners.map(([x, y]): PlanePoint => [x, y]))) + heightMm
}

/** Diagonal of the box round the points: no two of them are further apart. */
function sizeOf(points: readonly PlanePoint[]): number {
  const span = (axis: 0 | 1) => {
    const values = points.map((point) => point[axis])
    return values.length === 0 ? 0 : values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b))
  }
  return Math.hypot(span(0), span(1))
}
