import type { MissingInput, QuantityRange } from './outcome'

export interface ConductorResult {
  readonly conductorId: string
  readonly name: string
  readonly layerId: string
  readonly finishedThicknessUm: number
  readonly temperatureDegC: number | null
  readonly resistanceOhm: number | null
  readonly dropVolt: number | null
  /** Where the conductor is hotter than resistance is computed for: what it drops at the hottest that is, and so at least. */
  readonly dropAtLeastVolt: number | null
  readonly capacityAmp: number | null
  readonly riseDegC: number | null
  /** Over the tolerance of the finished copper and the spread of its resistivity. */
  readonly capacityRangeAmp: QuantityRange | null
  readonly riseRangeDegC: QuantityRange | null
  readonly resistanceRangeOhm: QuantityRange | null
  readonly dropRangeVolt: QuantityRange | null
  readonly lightestFoilUm: number | null
  readonly missing: readonly MissingInput[]
  /** Why no figure can be given though nothing is missing: a clause; null where the figures stand. */
  readonly cannotTell: string | null
  readonly cautions: readonly string[]
}
