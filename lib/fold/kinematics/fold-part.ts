import { type BentBand, bendBand, bendPoint, poseBehind } from './bend-band'
import type { FlatBand, FlatPart } from './flat-part'
import { composePoses, FLAT_POSE, invertPose, measureGap, movePoint, type Pose } from './pose'
import type { Vector } from './vector'

/** A band that closes a chain of plates: how far its end is from the plate that it should meet. */
export interface Closure {
  readonly bandId: string
  readonly offsetMm: Vector
  readonly turnDeg: Vector
}

export interface FoldedPart {
  readonly plates: ReadonlyMap<string, Pose>
  readonly bands: ReadonlyMap<string, FoldedBand>
  readonly closures: readonly Closure[]
}

export interface FoldedBand extends BentBand {
  /** Of the plate before the band. */
  readonly pose: Pose
}

export class UnfoldablePartError extends Error {}

/** How far each band is bent: 0 flat, 1 folded. A band that is not named is folded. */
export type FoldShares = ReadonlyMap<string, number>

/**
 * Folds a part about the plate that stays. Poses are composed from the angles each time, so a part that is folded and
 * unfolded returns exactly. Chains that close are followed one way; the gap at the band that closes them is reported.
 *
 * @throws UnfoldablePartError where a band names no plate, or a plate is joined to nothing
 */
export function foldPart(part: FlatPart, fixedPlateId: string, shares: FoldShares = new Map()): FoldedPart {
  const neighbours = listNeighbours(part)
  const plates = new Map<string, Pose>([[requirePlate(part, fixedPlateId), FLAT_POSE]])
  const bands = new Map<string, FoldedBand>()
  const closures: Closure[] = []
  const waiting = [fixedPlateId]
  for (const plateId of waiting) {
    const pose = poseOf(plates, plateId)
    for (const band of neighbours.get(plateId) ?? []) {
      if (bands.has(band.id)) continue
      const bent = bendBand(band, shares.get(band.id) ?? 1)
      const behind = poseBehind(bent)
      const isForward = band.fromPlateId === plateId
      const before = isForward ? pose : composePoses(pose, invertPose(behind))
      bands.set(band.id, { ...bent, pose: before })
      const nextId = isForward ? band.toPlateId : band.fromPlateId
      const next = isForward ? composePoses(pose, behind) : before
      const known = plates.get(nextId)
      if (known === undefined) {
        plates.set(nextId, next)
        waiting.push(nextId)
      } else closures.push({ bandId: band.id, ...measureGap(known, next, borderPoint(band, isForward)) })
    }
  }
  const lost = part.plates.find(({ id }) => !plates.has(id))
  if (lost !== undefined) throw new UnfoldablePartError(`plate "${lost.id}" is joined to "${fixedPlateId}" by no band`)
  return { plates, bands, closures }
}

/** Where a point of a flat band comes to lie. */
export function placeInBand(band: FoldedBand, point: Vector): Vector {
  return movePoint(band.pose, bendPoint(band, point))
}

function borderPoint(band: FlatBand, isAtEnd: boolean): Vector {
  const far = isAtEnd ? band.lengthMm : 0
  return [band.start[0] + band.across[0] * far, band.start[1] + band.across[1] * far, band.neutralMm]
}

function listNeighbours(part: FlatPart): ReadonlyMap<string, readonly FlatBand[]> {
  const neighbours = new Map<string, FlatBand[]>()
  for (const band of part.bands) {
    for (const plateId of [band.fromPlateId, band.toPlateId]) {
      requirePlate(part, plateId)
      const list = neighbours.get(plateId)
      if (list === undefined) neighbours.set(plateId, [band])
      else if (!list.includes(band)) list.push(band)
    }
  }
  return neighbours
}

function requirePlate(part: FlatPart, id: string): string {
  if (!part.plates.some((plate) => plate.id === id)) throw new UnfoldablePartError(`there is no plate "${id}"`)
  return id
}

function poseOf(plates: ReadonlyMap<string, Pose>, id: string): Pose {
  const pose = plates.get(id)
  if (pose === undefined) throw new UnfoldablePartError(`plate "${id}" has no place`)
  return pose
}
