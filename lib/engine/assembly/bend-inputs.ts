import type { RatioTable } from '../bending'
import type { Bend } from '../design'
import type { TestedLife } from '../flex-tests'
import type { SurvivalDemand } from './bend-allowables'
import type { BendSection } from './bend-section'
import type { HeldOver } from './leaf-pull'

export interface BendInputs {
  readonly bend: Bend
  /** Index in the design's list of bends. */
  readonly position: number
  readonly section: BendSection
  readonly heldOver: HeldOver
  readonly demand: SurvivalDemand
  readonly ratioTable: RatioTable
  /** Own flex tests that may stand in place of defaults, without those of materials that the design has of its own. */
  readonly testedLives: readonly TestedLife[]
  readonly detail: BendDetail
}

/**
 * How much of a bend is computed. `figures` leaves out what only pictures and explanations need (life curve, strain
 * profile, springback, why the rules differ): every verdict is the same, at a fraction of the time.
 */
export type BendDetail = 'full' | 'figures'
