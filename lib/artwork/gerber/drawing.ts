import type { Aperture } from '../apertures/aperture'
import type { Auditor } from '../audit'
import { LARGEST_COORDINATE_NM } from '../limits'
import { ObjectBuilder } from '../objects/object-builder'
import { ARC_CLOCKWISE, ARC_COUNTERCLOCKWISE, FLASH, LINE, REGION } from '../objects/objects'
import { type ResolvedArc, resolveMultiQuadrant, resolveSingleQuadrant } from './arcs'
import type { Attributes } from './attributes'
import type { Frames } from './frames'
import type { GerberCounts } from './gerber-reading'

/** Radii at both ends of an arc that differ by more are told: by this, and by this share of the radius. */
const MISMATCH_NM = 2000
const MISMATCH_FRACTION = 0.005

/** The graphics state, and what the three operations make of it. */
export class GerberDrawing {
  x = 0
  y = 0
  /** LINE or one of the arcs. */
  mode = 0
  quadrants: 'single' | 'multi' | null = null
  isClear = false
  isMirroredX = false
  isMirroredY = false
  rotationDeg = 0
  scale = 1
  /** What D01 and D03 draw with. */
  #aperture: Aperture | ObjectBuilder | null = null
  /** The index of its use, once an object asked for it. */
  #use = -1
  #region: { readonly line: number; readonly firstContour: number; readonly builder: ObjectBuilder } | null = null
  #hasContour = false
  #startX = 0
  #startY = 0

  constructor(
    private readonly frames: Frames,
    private readonly attributes: Attributes,
    private readonly auditor: Auditor,
    private readonly counts: GerberCounts,
  ) {}

  get isInRegion(): boolean {
    return this.#region !== null
  }

  select(aperture: Aperture | ObjectBuilder | null): void {
    this.#aperture = aperture
    this.#use = -1
  }

  /** After a change of mirroring, rotation or scale. */
  turnApertures(): void {
    this.#use = -1
  }

  move(x: number, y: number, line: number, column: number): void {
    if (this.#region !== null) this.#closeContour(line, column)
    this.x = x
    this.y = y
  }

  flash(x: number, y: number, line: number, column: number): void {
    this.x = x
    this.y = y
    this.counts.flashes += 1
    if (this.#region !== null) {
      this.auditor.error(line, column, 'a flash inside a region: left out')
      return
    }
    const aperture = this.#aperture
    if (aperture === null) {
      this.auditor.error(line, column, 'a flash without an aperture: left out')
      return
    }
    if (aperture instanceof ObjectBuilder) {
      const { isMirrored, rotationDeg } = this.#turn()
      const placement = { isMirrored, rotationDeg, scale: this.scale, xNm: x, yNm: y, swapsPolarity: this.isClear }
      this.frames.flashBlock(aperture, placement, line, column)
      return
    }
    if (!this.frames.mayAddOne(line, column)) return
    const set = this.attributes.setFor(aperture.attributes)
    this.frames.builder.add(FLASH, this.isClear, this.#indexOfUse(aperture), set, line, x, y)
  }

  plot(x: number, y: number, i: number, j: number, line: number, column: number): void {
    if (this.mode === 0) {
      this.auditor.noteOnce(line, column, 'no G01, G02 or G03 before the first stroke: straight lines are taken')
      this.mode = LINE
    }
    if (this.#region !== null) this.#addEdge(x, y, i, j, line, column)
    else this.#addStroke(x, y, i, j, line, column)
    this.x = x
    this.y = y
  }

  beginRegion(line: number, column: number): void {
    if (this.#region !== null) {
      this.auditor.error(line, column, 'a region begins inside a region')
      return
    }
    const { builder } = this.frames
    this.#region = { line, builder, firstContour: builder.contourCount }
    this.#hasContour = false
    this.counts.regions += 1
  }

  endRegion(line: number, column: number): void {
    const region = this.#region
    if (region === null) {
      this.auditor.error(line, column, 'a region ends that did not begin')
      return
    }
    this.#closeContour(line, column)
    this.#region = null
    const count = region.builder.contourCount - region.firstContour
    if (count === 0 || !this.frames.mayAddOne(line, column)) return
    region.builder.add(REGION, this.isClear, -1, this.attributes.setFor(null), region.line, region.firstContour, count)
  }

  #addEdge(x: number, y: number, i: number, j: number, line: number, column: number): void {
    const builder = (this.#region as { builder: ObjectBuilder }).builder
    if (!this.frames.mayAddOne(line, column)) return
    if (!this.#hasContour) {
      builder.beginContour()
      builder.addCorner(0, this.x, this.y, 0, 0)
      this.#hasContour = true
      this.#startX = this.x
      this.#startY = this.y
      this.counts.contours += 1
    }
    if (this.mode === LINE) {
      this.counts.regionLines += 1
      builder.addCorner(LINE, x, y, 0, 0)
      return
    }
    this.counts.regionArcs += 1
    const arc = this.#resolveArc(x, y, i, j, line, column)
    if (arc === null) builder.addCorner(LINE, x, y, 0, 0)
    else builder.addCorner(this.mode, x, y, arc.centreXNm, arc.centreYNm)
  }

  #closeContour(line: number, column: number): void {
    if (!this.#hasContour) return
    this.#hasContour = false
    if (this.x !== this.#startX || this.y !== this.#startY) {
      const gapUm = Math.round(Math.hypot(this.x - this.#startX, this.y - this.#startY) / 10) / 100
      this.auditor.error(line, column, `a contour ends ${gapUm} µm from where it began: closed by a straight line`)
    }
  }

  #addStroke(x: number, y: number, i: number, j: number, line: number, column: number): void {
    if (this.mode === LINE) this.counts.lines += 1
    else this.counts.arcs += 1
    const aperture = this.#aperture
    if (aperture === null || aperture instanceof ObjectBuilder) {
      const which = aperture === null ? 'without an aperture' : 'with a block aperture, which can only be flashed'
      this.auditor.error(line, column, `a stroke ${which}: left out`)
      return
    }
    if (aperture.kind !== 'circle' && aperture.kind !== 'rectangle') {
      const reason = 'strokes with an aperture that is neither circle nor rectangle: drawn with its convex outline'
      this.auditor.noteOnce(line, column, reason)
    }
    if (!this.frames.mayAddOne(line, column)) return
    const use = this.#indexOfUse(aperture)
    const set = this.attributes.setFor(aperture.attributes)
    const { builder } = this.frames
    const arc = this.mode === LINE ? null : this.#resolveArc(x, y, i, j, line, column)
    if (arc === null) builder.add(LINE, this.isClear, use, set, line, this.x, this.y, x, y)
    else builder.add(this.mode, this.isClear, use, set, line, this.x, this.y, x, y, arc.centreXNm, arc.centreYNm)
  }

  /** Null where there is no arc to draw: a straight line is drawn instead, a point where both ends are one. */
  #resolveArc(x: number, y: number, i: number, j: number, line: number, column: number): ResolvedArc | null {
    const isClockwise = this.mode === ARC_CLOCKWISE
    if (this.quadrants === null) {
      this.auditor.noteOnce(line, column, 'neither G74 nor G75 before the first arc: arcs of any sweep (G75) are taken')
      this.quadrants = 'multi'
    }
    if (this.quadrants === 'single' && x === this.x && y === this.y) return null
    const arc =
      this.quadrants === 'single'
        ? resolveSingleQuadrant(this.x, this.y, x, y, i, j, isClockwise)
        : resolveMultiQuadrant(this.x, this.y, x, y, i, j)
    if (arc === null || arc.radiusNm < 1) {
      this.auditor.error(line, column, 'an arc without a centre that fits its ends: drawn as a straight line')
      return null
    }
    if (!(Math.abs(arc.centreXNm) <= LARGEST_COORDINATE_NM && Math.abs(arc.centreYNm) <= LARGEST_COORDINATE_NM)) {
      this.auditor.error(line, column, 'an arc whose centre lies beyond 2 m: drawn as a straight line')
      return null
    }
    if (arc.mismatchNm > MISMATCH_NM && arc.mismatchNm > MISMATCH_FRACTION * arc.radiusNm) {
      const byUm = Math.round(arc.mismatchNm / 10) / 100
      this.auditor.error(line, column, `the radii at both ends of an arc differ by ${byUm} µm: its centre was moved`)
    }
    return arc
  }

  #turn(): { isMirrored: boolean; rotationDeg: number } {
    // Mirroring in y is mirroring in x and a half turn.
    return {
      isMirrored: this.isMirroredX !== this.isMirroredY,
      rotationDeg: (((this.rotationDeg + (this.isMirroredY ? 180 : 0)) % 360) + 360) % 360,
    }
  }

  #indexOfUse(aperture: Aperture): number {
    if (this.#use < 0) {
      const { isMirrored, rotationDeg } = this.#turn()
      this.#use = this.frames.uses.indexOf(aperture, isMirrored, rotationDeg, this.scale)
    }
    return this.#use
  }
}

export const modeOfCode = (code: number): number =>
  code === 2 ? ARC_CLOCKWISE : code === 3 ? ARC_COUNTERCLOCKWISE : LINE
