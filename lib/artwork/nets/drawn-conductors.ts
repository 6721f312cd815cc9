import type { CopperStack, StackedCopper } from '../copper/copper-stack'
import { FLASH, NUMBERS_PER_CORNER, NUMBERS_PER_OBJECT, REGION } from '../objects/objects'
import type { NetPlace } from './compare-nets'
import type { Connections, JoiningHole } from './connect'

/** Strokes that reach less far are letters, marks and the spurs of a land. Our choice. */
const LEAST_REACH_NM = 5_000_000
/** An area this many times as long as it is wide is a conductor that is drawn by its edges. Our choice. */
const CONDUCTOR_RATIO = 10
/** Off the corner of an area, to be inside of it. */
const NUDGE_NM = 1000

type Box = [minX: number, minY: number, maxX: number, maxY: number]

/** Copper that hangs together and is drawn by strokes, or by areas as thin as strokes, that reach as far as a conductor does. */
export interface DrawnConductor {
  /** As `Connections.at` names it. */
  readonly part: number
  /** Its first stroke. */
  readonly fileName: string
  readonly xNm: number
  readonly yNm: number
  /** Lands, holes and areas that it joins; those on one spot count once. */
  readonly endCount: number
}

/**
 * Every conductor of the layers, with what it joins. Areas that lie on a land, as teardrops do, belong to that land. A round flash in the end of a
 * stroke that is as wide adds no copper: it is no land.
 */
export function findConductors(
  { layers }: CopperStack,
  connections: Connections,
  holes: readonly JoiningHole[],
): DrawnConductor[] {
  const strokes = new Map<number, { fileName: string; xNm: number; yNm: number; box: Box }>()
  const ends = new Map<number, Set<string>>()
  const join = (part: number | null, end: string) => {
    if (part === null) return
    const known = ends.get(part)
    if (known === undefined) ends.set(part, new Set([end]))
    else known.add(end)
  }
  const reach = (part: number, fileName: string, xNm: number, yNm: number, box: Box) => {
    const known = strokes.get(part)
    if (known === undefined) strokes.set(part, { fileName, xNm, yNm, box: [...box] })
    else grow(known.box, box)
  }
  for (const [at, layer] of layers.entries()) {
    const { objects, fileName } = layer
    const lands: (readonly [x: number, y: number])[] = []
    const endWidths = findEndWidths(objects)
    const areas: { box: Box; corners: readonly (readonly [number, number])[]; index: number }[] = []
    for (let index = 0; index < objects.count; index += 1) {
      if (objects.isClear[index] === 1) continue
      const kind = objects.kinds[index]
      const from = index * NUMBERS_PER_OBJECT
      const n = (offset: number) => objects.numbers[from + offset] ?? 0
      if (kind === FLASH) {
        const diameterNm = diameterOf(objects, index)
        if (diameterNm !== null && diameterNm <= (endWidths.get(`${n(0)},${n(1)}`) ?? 0)) continue
        lands.push([n(0), n(1)])
        join(connections.at(at, n(0), n(1)), `${n(0)},${n(1)}`)
      } else if (kind === REGION) {
        areas.push({ ...cornersOf(objects, n(0)), index })
      } else {
        const part = connections.at(at, n(0), n(1)) ?? connections.at(at, n(2), n(3))
        if (part === null) continue
        const box: Box = [Math.min(n(0), n(2)), Math.min(n(1), n(3)), Math.max(n(0), n(2)), Math.max(n(1), n(3))]
        reach(part, fileName, n(0), n(1), box)
      }
    }
    for (const { box, corners, index } of areas) {
      if (isThin(box, corners)) {
        const part = partOfArea(connections, at, corners)
        const [[x, y] = [0, 0]] = corners
        if (part !== null) reach(part, fileName, x, y, box)
        continue
      }
      const isOnLand = lands.some(([x, y]) => x >= box[0] && x <= box[2] && y >= box[1] && y <= box[3])
      if (!isOnLand) join(partOfArea(connections, at, corners), `area ${at} ${index}`)
    }
  }
  for (const { xNm, yNm, span } of holes) {
    for (let at = span[0]; at <= span[1]; at += 1) join(connections.at(at, xNm, yNm), `${xNm},${yNm}`)
  }
  return [...strokes].flatMap(([part, { fileName, xNm, yNm, box }]) =>
    Math.hypot(box[2] - box[0], box[3] - box[1]) < LEAST_REACH_NM
      ? []
      : [{ part, fileName, xNm, yNm, endCount: ends.get(part)?.size ?? 0 }],
  )
}

/** Null where the aperture is no plain circle. */
const diameterOf = ({ apertures, apertureAt }: StackedCopper['objects'], index: number): number | null =>
  apertures[apertureAt[index] ?? -1]?.diameterNm ?? null

/** The widest stroke that ends in each point. */
function findEndWidths(objects: StackedCopper['objects']): ReadonlyMap<string, number> {
  const widths = new Map<string, number>()
  for (let index = 0; index < objects.count; index += 1) {
    const kind = objects.kinds[index]
    if (objects.isClear[index] === 1 || kind === FLASH || kind === REGION) continue
    const from = index * NUMBERS_PER_OBJECT
    const widthNm = diameterOf(objects, index) ?? 0
    for (const offset of [0, 2]) {
      const key = `${objects.numbers[from + offset]},${objects.numbers[from + offset + 1]}`
      widths.set(key, Math.max(widths.get(key) ?? 0, widthNm))
    }
  }
  return widths
}

/** Of an area by its corners: how wide a strip of its size and edge would be, against how far it reaches. Arcs count by their ends. */
function isThin(box: Box, corners: readonly (readonly [number, number])[]): boolean {
  const reachNm = Math.hypot(box[2] - box[0], box[3] - box[1])
  if (reachNm < LEAST_REACH_NM) return false
  let twiceArea = 0
  let roundNm = 0
  corners.forEach(([x, y], at) => {
    const [nextX, nextY] = corners[(at + 1) % corners.length] ?? [x, y]
    twiceArea += x * nextY - nextX * y
    roundNm += Math.hypot(nextX - x, nextY - y)
  })
  return roundNm > 0 && CONDUCTOR_RATIO * (Math.abs(twiceArea) / roundNm) < reachNm
}

function grow(box: Box, other: Box): void {
  box[0] = Math.min(box[0], other[0])
  box[1] = Math.min(box[1], other[1])
  box[2] = Math.max(box[2], other[2])
  box[3] = Math.max(box[3], other[3])
}

/** The first contour of an area. */
function cornersOf(objects: StackedCopper['objects'], contour: number) {
  const corners: [number, number][] = []
  const box: Box = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ]
  const end = objects.contourStarts[contour + 1] ?? 0
  for (let at = objects.contourStarts[contour] ?? 0; at < end; at += 1) {
    const [x, y] = [objects.corners[at * NUMBERS_PER_CORNER] ?? 0, objects.corners[at * NUMBERS_PER_CORNER + 1] ?? 0]
    corners.push([x, y])
    grow(box, [x, y, x, y])
  }
  return { corners, box }
}

/** What an area's copper hangs together with, found just inside of its corners. */
function partOfArea(
  connections: Connections,
  layer: number,
  corners: readonly (readonly [number, number])[],
): number | null {
  for (const [x, y] of corners) {
    for (const [dx, dy] of [
      [1, 1],
      [-1, 1],
      [-1, -1],
      [1, -1],
    ] as const) {
      const part = connections.at(layer, x + dx * NUDGE_NM, y + dy * NUDGE_NM)
      if (part !== null) return part
    }
  }
  return null
}

/** Conductors on which no place of a source lies: of them it says nothing. */
export function findUnnamed(
  conductors: readonly DrawnConductor[],
  places: readonly NetPlace[],
  connections: Connections,
): DrawnConductor[] {
  const named = new Set(
    places.flatMap(({ layers, xNm, yNm }) => layers.flatMap((layer) => connections.at(layer, xNm, yNm) ?? [])),
  )
  return conductors.filter(({ part }) => !named.has(part))
}
