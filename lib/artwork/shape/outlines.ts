import type { AperturePiece, ApertureUse } from '../apertures/aperture'
import { sweepOf } from '../gerber/arcs'
import {
  ARC_CLOCKWISE,
  FLASH,
  type LayerObjects,
  LINE,
  NUMBERS_PER_CORNER,
  NUMBERS_PER_OBJECT,
  REGION,
} from '../objects/objects'
import { takeAway, unite } from './boolean'
import { addArc, circlePath, segmentsOf } from './flatten'
import { convexHull, type FlatPath, orient, reverse, translate } from './path'

/** Makes paths of objects. Shapes of apertures are made once for each use of one. */
export class Outlines {
  readonly #flashes = new Map<number, readonly FlatPath[]>()
  readonly #hulls = new Map<number, FlatPath>()

  constructor(
    private readonly objects: LayerObjects,
    private readonly toleranceNm: number,
  ) {}

  /** Paths whose winding is above 0 where the object is, and 0 elsewhere. */
  of(index: number): readonly FlatPath[] {
    const { kinds, numbers, apertureAt, apertures } = this.objects
    const kind = kinds[index] ?? 0
    const at = index * NUMBERS_PER_OBJECT
    const n = (offset: number) => numbers[at + offset] ?? 0
    if (kind === REGION) return this.#region(n(0), n(1))
    const useAt = apertureAt[index] ?? 0
    const use = apertures[useAt]
    if (use === undefined) return []
    if (kind === FLASH) {
      const dx = n(0)
      const dy = n(1)
      if (use.diameterNm !== null)
        return use.diameterNm > 0 ? [circlePath(dx, dy, use.diameterNm / 2, this.toleranceNm)] : []
      return this.#flash(useAt, use).map((path) => translate(path, dx, dy))
    }
    if (kind === LINE) return this.#line(useAt, use, n(0), n(1), n(2), n(3))
    return this.#arc(useAt, use, kind === ARC_CLOCKWISE, [n(0), n(1), n(2), n(3), n(4), n(5)])
  }

  #flash(useAt: number, use: ApertureUse): readonly FlatPath[] {
    let paths = this.#flashes.get(useAt)
    if (paths === undefined) {
      paths = assemble(use.pieces, this.toleranceNm)
      this.#flashes.set(useAt, paths)
    }
    return paths
  }

  #hull(useAt: number, use: ApertureUse): FlatPath {
    let hull = this.#hulls.get(useAt)
    if (hull === undefined) {
      hull = convexHull(this.#flash(useAt, use).flat())
      this.#hulls.set(useAt, hull)
    }
    return hull
  }

  #line(useAt: number, use: ApertureUse, fromX: number, fromY: number, toX: number, toY: number): FlatPath[] {
    if (use.diameterNm === null) {
      const hull = this.#hull(useAt, use)
      if (hull.length < 6) return []
      return [convexHull([...translate(hull, fromX, fromY), ...translate(hull, toX, toY)])]
    }
    const radius = use.diameterNm / 2
    if (radius === 0) return []
    if (fromX === toX && fromY === toY) return [circlePath(fromX, fromY, radius, this.toleranceNm)]
    const along = Math.atan2(toY - fromY, toX - fromX)
    const path: FlatPath = []
    this.#cap(path, toX, toY, radius, along - Math.PI / 2)
    this.#cap(path, fromX, fromY, radius, along + Math.PI / 2)
    return [path]
  }

  /** Half a circle, ends included. */
  #cap(path: FlatPath, x: number, y: number, radius: number, fromRad: number): void {
    const dx = radius * Math.cos(fromRad)
    const dy = radius * Math.sin(fromRad)
    path.push(x + dx, y + dy)
    addArc(path, x, y, radius, fromRad, Math.PI, this.toleranceNm)
    path.push(x - dx, y - dy)
  }

  #arc(
    useAt: number,
    use: ApertureUse,
    isClockwise: boolean,
    [x0, y0, x1, y1, cx, cy]: readonly [number, number, number, number, number, number],
  ): FlatPath[] {
    // Against the clock from here on: the side does not matter to what is covered.
    const [fromX, fromY, toX, toY] = isClockwise ? [x1, y1, x0, y0] : [x0, y0, x1, y1]
    const isFull = x0 === x1 && y0 === y1
    const sweep = isFull ? 2 * Math.PI : sweepOf(fromX - cx, fromY - cy, toX - cx, toY - cy, false)
    const radius = Math.hypot(fromX - cx, fromY - cy)
    const fromRad = Math.atan2(fromY - cy, fromX - cx)
    const half = (use.diameterNm ?? 0) / 2
    if (use.diameterNm === null || radius <= half)
      return this.#chords(useAt, use, cx, cy, radius, fromRad, sweep, [fromX, fromY, toX, toY])
    if (half === 0) return []
    const { toleranceNm } = this
    if (isFull)
      return [circlePath(cx, cy, radius + half, toleranceNm), reverse(circlePath(cx, cy, radius - half, toleranceNm))]
    const toRad = fromRad + sweep
    const path: FlatPath = []
    const [cos0, sin0, cos1, sin1] = [Math.cos(fromRad), Math.sin(fromRad), Math.cos(toRad), Math.sin(toRad)]
    path.push(fromX + half * cos0, fromY + half * sin0)
    addArc(path, cx, cy, radius + half, fromRad, sweep, toleranceNm)
    path.push(toX + half * cos1, toY + half * sin1)
    addArc(path, toX, toY, half, toRad, Math.PI, toleranceNm)
    path.push(toX - half * cos1, toY - half * sin1)
    addArc(path, cx, cy, radius - half, toRad, -sweep, toleranceNm)
    path.push(fromX - half * cos0, fromY - half * sin0)
    addArc(path, fromX, fromY, half, fromRad + Math.PI, Math.PI, toleranceNm)
    return [path]
  }

  /** An arc as strokes along its chords, where its band would fold over itself or the aperture is no circle. */
  #chords(
    useAt: number,
    use: ApertureUse,
    cx: number,
    cy: number,
    radius: number,
    fromRad: number,
    sweep: number,
    [fromX, fromY, toX, toY]: readonly [number, number, number, number],
  ): FlatPath[] {
    const points: FlatPath = [fromX, fromY]
    addArc(points, cx, cy, radius, fromRad, sweep, this.toleranceNm)
    points.push(toX, toY)
    const paths: FlatPath[] = []
    for (let at = 0; at + 3 < points.length; at += 2)
      paths.push(
        ...this.#line(useAt, use, points[at] ?? 0, points[at + 1] ?? 0, points[at + 2] ?? 0, points[at + 3] ?? 0),
      )
    return unite(paths.map((path) => translate(path, -cx, -cy))).map((path) => translate(path, cx, cy))
  }

  #region(first: number, count: number): FlatPath[] {
    const { contourStarts, corners, cornerKinds } = this.objects
    const paths: FlatPath[] = []
    for (let contour = first; contour < first + count; contour += 1) {
      const path: FlatPath = []
      const end = contourStarts[contour + 1] ?? 0
      for (let corner = contourStarts[contour] ?? 0; corner < end; corner += 1) {
        const at = corner * NUMBERS_PER_CORNER
        const x = corners[at] ?? 0
        const y = corners[at + 1] ?? 0
        const kind = cornerKinds[corner] ?? 0
        if (kind > LINE) {
          const fromX = path.at(-2) ?? 0
          const fromY = path.at(-1) ?? 0
          this.#addRegionArc(path, kind === ARC_CLOCKWISE, [
            fromX,
            fromY,
            x,
            y,
            corners[at + 2] ?? 0,
            corners[at + 3] ?? 0,
          ])
        }
        path.push(x, y)
      }
      paths.push(...onlyPositive(path))
    }
    return paths
  }

  #addRegionArc(
    path: FlatPath,
    isClockwise: boolean,
    [fromX, fromY, toX, toY, cx, cy]: readonly [number, number, number, number, number, number],
  ): void {
    const isFull = fromX === toX && fromY === toY
    const turn = isFull ? 2 * Math.PI : sweepOf(fromX - cx, fromY - cy, toX - cx, toY - cy, isClockwise)
    const radius = Math.hypot(fromX - cx, fromY - cy)
    addArc(path, cx, cy, radius, Math.atan2(fromY - cy, fromX - cx), isClockwise ? -turn : turn, this.toleranceNm)
  }
}

/** What a contour covers. One that crosses itself has parts of either winding, which would take away from each other where contours meet. */
function onlyPositive(path: FlatPath): FlatPath[] {
  if (path.length <= 8) return path.length < 6 ? [] : [orient(path)]
  const [x = 0, y = 0] = path
  return unite([translate(path, -x, -y)]).map((part) => translate(part, x, y))
}

/** Puts an aperture's pieces together in their order. */
function assemble(pieces: readonly AperturePiece[], toleranceNm: number): FlatPath[] {
  const [only] = pieces
  if (pieces.length === 1 && only?.kind === 'circle')
    return only.isClear || only.radiusNm <= 0 ? [] : pathsOf(only, toleranceNm)
  let paths: FlatPath[] = []
  for (let at = 0; at < pieces.length; ) {
    // Pieces of one exposure in a row are united at once.
    const { isClear } = pieces[at] as AperturePiece
    const run: FlatPath[] = []
    for (; at < pieces.length && pieces[at]?.isClear === isClear; at += 1)
      run.push(...pathsOf(pieces[at] as AperturePiece, toleranceNm))
    paths = isClear ? takeAway(paths, unite(run)) : unite([...paths, ...run])
  }
  return paths
}

function pathsOf(piece: AperturePiece, toleranceNm: number): FlatPath[] {
  if (piece.kind === 'group') return assemble(piece.pieces, toleranceNm)
  if (piece.kind === 'circle')
    return piece.radiusNm > 0 ? [circlePath(piece.xNm, piece.yNm, piece.radiusNm, toleranceNm)] : []
  // An outline that crosses itself has parts of either winding: united by itself first.
  return piece.points.length <= 8 ? [orient([...piece.points])] : unite([[...piece.points]])
}

/** How many points an object comes to, near enough to plan by. */
export function estimatePoints(objects: LayerObjects, index: number, toleranceNm: number): number {
  const kind = objects.kinds[index] ?? 0
  if (kind === REGION) {
    const first = objects.numbers[index * NUMBERS_PER_OBJECT] ?? 0
    const count = objects.numbers[index * NUMBERS_PER_OBJECT + 1] ?? 0
    return (objects.contourStarts[first + count] ?? 0) - (objects.contourStarts[first] ?? 0)
  }
  const use = objects.apertures[objects.apertureAt[index] ?? 0]
  const radius = (use?.diameterNm ?? 0) / 2
  const round = radius > 0 ? segmentsOf(2 * Math.PI, radius, toleranceNm) : 8 + 8 * (use?.pieces.length ?? 0)
  return kind === FLASH || kind === LINE ? round : 4 * round
}
