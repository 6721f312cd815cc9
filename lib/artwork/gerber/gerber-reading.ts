import type { Issue, Question } from '../audit'
import type { LayerObjects } from '../objects/objects'
import type { CoordinateFormat, Unit } from './format'

/** Statements of the file, as people and other programs count them: repeats and blocks are not unfolded. */
export interface GerberCounts {
  apertures: number
  macros: number
  lines: number
  arcs: number
  flashes: number
  regions: number
  contours: number
  regionLines: number
  regionArcs: number
  clearSwitches: number
  stepRepeats: number
  blocks: number
}

export interface GerberReading {
  readonly kind: 'gerber'
  readonly unit: Unit | null
  readonly format: CoordinateFormat | null
  readonly objects: LayerObjects
  readonly counts: Readonly<GerberCounts>
  /** Attributes of the file, statements and comments alike: `.FileFunction` to `Copper,L1,Top`. */
  readonly fileAttributes: ReadonlyMap<string, string>
  /** The first comments, for what they say of the layer. */
  readonly comments: readonly string[]
  /** Whether the whole image is a negative (IP, taken out of the format): what is drawn is then where there is nothing. */
  readonly isNegative: boolean
  readonly questions: readonly Question[]
  readonly issues: readonly Issue[]
}

/** What somebody answered where the file is silent. What the file says wins. */
export interface GerberAnswers {
  readonly unit?: Unit
  readonly format?: CoordinateFormat
}
