import type { Drawing } from '../design'
import type { BendResult, ConductorResult, ZoneResult } from '../results'
import type { ThinnestCopper } from './conductor-results'
import type { computeLayerDamage } from './damage'
import type { DesignIndex } from './design-index'
import type { ZoneSection } from './zone-section'

/** All numbers of a design, before the catalogue looks at them. */
export interface Assembly {
  /** Of the design with what its plan draws in place of what was stated. */
  readonly index: DesignIndex
  readonly drawing: Drawing
  /** In the order of the design's zones. */
  readonly sections: readonly ZoneSection[]
  readonly thinnest: ReadonlyMap<string, ThinnestCopper>
  readonly zones: readonly ZoneResult[]
  readonly bends: readonly BendResult[]
  readonly conductors: readonly ConductorResult[]
  readonly damage: ReturnType<typeof computeLayerDamage>
}
