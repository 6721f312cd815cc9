import type { ExtentNm } from '../apertures/aperture'
import type { Issue, Question } from '../audit'
import type { Unit } from '../gerber/format'
import type { LayerObjects } from '../objects/objects'

/** Which zeros a file writes; the others are left out. `decimal` where each coordinate has its point. */
export type Zeros = 'leading kept' | 'trailing kept' | 'decimal'
export type Digits = readonly [whole: number, decimal: number]
export type Plating = 'plated' | 'not plated'

export interface DrillTool {
  readonly number: number
  readonly diameterNm: number
  /** Null where nothing says so. */
  readonly plating: Plating | null
  /** What says so. */
  readonly platingFrom: string | null
  readonly hits: number
  readonly slots: number
  readonly routedMoves: number
}

export interface DrillReading {
  readonly kind: 'drill'
  readonly unit: Unit | null
  readonly zeros: Zeros | null
  readonly digits: Digits | null
  /** What unit, zeros and digits rest on, a sentence each. */
  readonly decisions: readonly string[]
  readonly tools: readonly DrillTool[]
  /** Holes are flashes; slots and routed moves are lines and arcs of the tool. */
  readonly objects: LayerObjects
  readonly counts: { readonly hits: number; readonly slots: number; readonly routes: number }
  readonly fileAttributes: ReadonlyMap<string, string>
  readonly comments: readonly string[]
  readonly questions: readonly Question[]
  readonly issues: readonly Issue[]
}

export interface DrillAnswers {
  /** What the file is called: names say what is plated. */
  readonly name?: string
  readonly unit?: Unit
  readonly zeros?: Zeros
  readonly digits?: Digits
  readonly plating?: Plating
  /** Where the circuit lies by other files, to choose among readings. */
  readonly circuitNm?: ExtentNm
}
