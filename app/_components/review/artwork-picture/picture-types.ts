import type { PointMm } from '@/lib/artwork-picture'
import type { ArtworkSpot, Verdict } from '@/lib/engine/results'

/** Something that the checklist found at a place in the artwork. */
export interface PictureFinding {
  readonly key: string
  readonly itemId: string
  readonly verdict: Verdict
  readonly summary: string
  readonly spot: ArtworkSpot
}

/** A finding with its number and its place in the picture. */
export interface PlacedFinding extends PictureFinding {
  readonly number: number
  readonly atMm: PointMm
}

/** A thread that was opened at a place of a file. */
export interface PictureThread {
  readonly id: string
  readonly title: string
  readonly xMm: number
  readonly yMm: number
}

/** The plan under the artwork: rings as x, y of each corner in mm of the plan. */
export interface PlanShapes {
  readonly part: readonly (readonly number[])[]
  readonly zones: readonly {
    readonly id: string
    readonly name: string
    readonly rings: readonly (readonly number[])[]
  }[]
  readonly bends: readonly {
    readonly id: string
    readonly name: string
    readonly rings: readonly (readonly number[])[]
    readonly fromMm: PointMm
    readonly toMm: PointMm
  }[]
}

/** A file that people added, for threads about a place in it. */
export interface PictureFile {
  readonly id: string
  readonly fileName: string
}
