import type { ExtentNm } from '../apertures/aperture'
import { FLASH, type LayerObjects, LINE, REGION } from '../objects/objects'
import { clipToRectangle, takeAway, unite } from './boolean'
import { clipConvex } from './clip'
import { extentOf } from './extents'
import { estimatePoints, Outlines } from './outlines'
import { areaNm2, type FlatPath, translate } from './path'

/** No point of a flattened arc is farther from the arc. */
const FLATTENING_TOLERANCE_NM = 1000
/** Points in a tile beyond which it is halved: a union's cost grows faster than its points. */
const MOST_POINTS_IN_TILE = 4000
/** Tiles are not halved below this, whatever lies on top of each other there. */
const LEAST_TILE_NM = 50_000

/** Halves that hold nearly all points twice help nothing: what lies on one spot is united as it is. */
const USELESS_SPLIT = 1.8

/** What a layer covers, cut into rectangles that touch. */
export interface LayerShape {
  readonly tiles: readonly Tile[]
  readonly areaMm2: number
  readonly toleranceNm: number
}
interface Tile {
  readonly extentNm: ExtentNm
  /** Outer borders with their inside to the left, holes the other way round. Borders along the tile's rim are cuts, not edges. */
  readonly paths: readonly FlatPath[]
}

/**
 * The shape of a layer: its objects in the order of the file, dark ones added and clear ones taken away. Places where many objects lie are halved until a union is cheap,
 * so that the time grows with the number of objects and little faster.
 */
export function shapeOfLayer(
  objects: LayerObjects,
  { toleranceNm = FLATTENING_TOLERANCE_NM, mostPointsInTile = MOST_POINTS_IN_TILE } = {},
): LayerShape {
  return new ShapeMaker(objects, toleranceNm, mostPointsInTile).make()
}

/** Objects that reach into a tile, in order, and those of many corners as already cut to it. */
interface Content {
  readonly indices: Int32Array
  readonly cut: ReadonlyMap<number, readonly FlatPath[]>
}

function halve([minX, minY, maxX, maxY]: ExtentNm, cutsX: boolean): readonly [ExtentNm, ExtentNm] {
  const limit = Math.round(cutsX ? (minX + maxX) / 2 : (minY + maxY) / 2)
  return cutsX
    ? [
        [minX, minY, limit, maxY],
        [limit, minY, maxX, maxY],
      ]
    : [
        [minX, minY, maxX, limit],
        [minX, limit, maxX, maxY],
      ]
}

class ShapeMaker {
  readonly #tiles: Tile[] = []
  readonly #outlines: Outlines
  readonly #boxes: Float64Array
  readonly #points: Uint32Array
  #areaNm2 = 0

  constructor(
    private readonly objects: LayerObjects,
    private readonly toleranceNm: number,
    private readonly mostPointsInTile: number,
  ) {
    this.#outlines = new Outlines(objects, toleranceNm)
    this.#boxes = new Float64Array(4 * objects.count)
    this.#points = new Uint32Array(objects.count)
  }

  make(): LayerShape {
    const { objects, toleranceNm } = this
    const indices: number[] = []
    const cut = new Map<number, readonly FlatPath[]>()
    const whole = [Infinity, Infinity, -Infinity, -Infinity] as [number, number, number, number]
    for (let index = 0; index < objects.count; index += 1) {
      const extent = extentOf(objects, index)
      if (extent === null) continue
      const points = estimatePoints(objects, index, toleranceNm)
      this.#points[index] = points
      // Corners of flattened circles lie outside by up to the tolerance.
      const [minX, minY, maxX, maxY] = extent
      const box = [minX - toleranceNm, minY - toleranceNm, maxX + toleranceNm, maxY + toleranceNm]
      this.#boxes.set(box, 4 * index)
      indices.push(index)
      if (objects.kinds[index] === REGION && points > 100) cut.set(index, this.#outlines.of(index))
      for (const at of [0, 1] as const) {
        whole[at] = Math.min(whole[at], Math.floor(box[at] ?? 0))
        whole[at + 2] = Math.max(whole[at + 2] ?? 0, Math.ceil(box[at + 2] ?? 0))
      }
    }
    if (indices.length > 0) this.#split(whole, { indices: Int32Array.from(indices), cut })
    return { tiles: this.#tiles, areaMm2: this.#areaNm2 / 1e12, toleranceNm }
  }

  #split(extent: ExtentNm, content: Content): void {
    const [minX, minY, maxX, maxY] = extent
    const points = this.#pointsIn(content)
    const isWide = maxX - minX >= maxY - minY
    if (points > this.mostPointsInTile && Math.max(maxX - minX, maxY - minY) >= 2 * LEAST_TILE_NM) {
      // Across the longer side, or the other where that parts nothing: a bus of lines runs through both halves of its length.
      for (const cutsX of [isWide, !isWide]) {
        const halves = halve(extent, cutsX).map((half) => ({ half, part: this.#take(content, half) }))
        if (halves.reduce((sum, { part }) => sum + this.#pointsIn(part), 0) > USELESS_SPLIT * points) continue
        for (const { half, part } of halves) if (part.indices.length > 0) this.#split(half, part)
        return
      }
    }
    this.#fill(extent, content)
  }

  #pointsIn({ indices, cut }: Content): number {
    let points = 0
    for (const index of indices) {
      const paths = cut.get(index)
      points += paths === undefined ? (this.#points[index] ?? 0) : paths.reduce((sum, path) => sum + path.length / 2, 0)
    }
    return points
  }

  #take({ indices, cut }: Content, tile: ExtentNm): Content {
    const taken = new Int32Array(indices.length)
    const takenCut = new Map<number, readonly FlatPath[]>()
    let count = 0
    for (const index of indices) {
      const place = this.#placeIn(index, tile)
      if (place === 'outside') continue
      const paths = cut.get(index)
      if (paths !== undefined) {
        const parts = place === 'inside' ? paths : clipToRectangle(paths, tile)
        if (parts.length === 0) continue
        takenCut.set(index, parts)
      }
      taken[count] = index
      count += 1
    }
    return { indices: taken.slice(0, count), cut: takenCut }
  }

  #placeIn(index: number, [minX, minY, maxX, maxY]: ExtentNm): 'inside' | 'outside' | 'across' {
    const [lowX = 0, lowY = 0, highX = 0, highY = 0] = this.#boxes.subarray(4 * index, 4 * index + 4)
    if (lowX >= maxX || highX <= minX || lowY >= maxY || highY <= minY) return 'outside'
    return lowX >= minX && highX <= maxX && lowY >= minY && highY <= maxY ? 'inside' : 'across'
  }

  /** Lines, and flashes of a plain circle. */
  #isConvex(index: number): boolean {
    const { kinds, apertures, apertureAt } = this.objects
    const kind = kinds[index]
    if (kind === LINE) return true
    const [piece, ...others] = apertures[apertureAt[index] ?? 0]?.pieces ?? []
    return kind === FLASH && others.length === 0 && piece?.kind === 'circle'
  }

  #fill(extent: ExtentNm, { indices, cut }: Content): void {
    const [minX, minY, maxX, maxY] = extent
    const [middleX, middleY] = [Math.round((minX + maxX) / 2), Math.round((minY + maxY) / 2)]
    const rim: ExtentNm = [minX - middleX, minY - middleY, maxX - middleX, maxY - middleY]
    const { isClear } = this.objects
    let paths: FlatPath[] = []
    let run: FlatPath[] = []
    let runPoints = 0
    const flush = (isTaken: boolean) => {
      if (run.length > 0) paths = isTaken ? takeAway(paths, run) : unite([...paths, ...run])
      run = []
      runPoints = 0
    }
    let wasClear = false
    for (const index of indices) {
      const nowClear = isClear[index] === 1
      // What lies on one spot many times over is united bit by bit: all at once it would take the square of its number.
      if (nowClear !== wasClear || runPoints > 2 * this.mostPointsInTile) flush(wasClear)
      wasClear = nowClear
      const near = (cut.get(index) ?? this.#outlines.of(index)).map((path) => translate(path, -middleX, -middleY))
      const parts =
        this.#placeIn(index, extent) === 'inside'
          ? near
          : this.#isConvex(index)
            ? near.map((path) => clipConvex(path, rim))
            : clipToRectangle(near, rim)
      for (const part of parts) {
        run.push(part)
        runPoints += part.length / 2
      }
    }
    flush(wasClear)
    if (paths.length === 0) return
    for (const path of paths) this.#areaNm2 += areaNm2(path)
    this.#tiles.push({ extentNm: extent, paths: paths.map((path) => translate(path, middleX, middleY)) })
  }
}
