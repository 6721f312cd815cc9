import { BEND_PARAMETERS, STIFFENER_FEATURE_PARAMETERS } from './bend-parameters'
import { EDGE_PARAMETERS, HATCH_PARAMETERS, HOLE_BUILD_PARAMETERS, PART_SIZE_PARAMETERS } from './build-parameters'
import { COPPER_PARAMETERS } from './copper-parameters'
import {
  ARRAY_PARAMETERS,
  FINISH_PARAMETERS,
  FLATNESS_PARAMETERS,
  LEGEND_PARAMETERS,
  SQUEEZE_OUT_PARAMETERS,
} from './delivery-parameters'
import { COVERLAY_PARAMETERS, HOLE_PARAMETERS, OUTLINE_PARAMETERS } from './feature-parameters'
import { LAYER_PARAMETERS } from './layer-parameters'
import { BRIEF_PARAMETERS, MATERIAL_PARAMETERS } from './material-parameters'
import { PARAMETER_GROUPS, type TradeParameter } from './parameter'
import { TOLERANCE_PARAMETERS } from './tolerance-parameters'
import { UNHELD_PARAMETERS } from './unheld-parameters'

const ALL: readonly TradeParameter[] = [
  ...COPPER_PARAMETERS,
  ...HOLE_PARAMETERS,
  ...OUTLINE_PARAMETERS,
  ...COVERLAY_PARAMETERS,
  ...STIFFENER_FEATURE_PARAMETERS,
  ...BEND_PARAMETERS,
  ...LAYER_PARAMETERS,
  ...MATERIAL_PARAMETERS,
  ...BRIEF_PARAMETERS,
  ...HATCH_PARAMETERS,
  ...HOLE_BUILD_PARAMETERS,
  ...EDGE_PARAMETERS,
  ...PART_SIZE_PARAMETERS,
  ...TOLERANCE_PARAMETERS,
  ...SQUEEZE_OUT_PARAMETERS,
  ...FINISH_PARAMETERS,
  ...LEGEND_PARAMETERS,
  ...FLATNESS_PARAMETERS,
  ...ARRAY_PARAMETERS,
  ...UNHELD_PARAMETERS,
]

/** Every trade parameter that a matrix may speak of, group by group. */
export const TRADE_PARAMETERS: readonly TradeParameter[] = PARAMETER_GROUPS.flatMap((group) =>
  ALL.filter((parameter) => parameter.group === group),
)

const BY_KEY: ReadonlyMap<string, TradeParameter> = new Map(TRADE_PARAMETERS.map((entry) => [entry.key, entry]))

export function findParameter(key: string): TradeParameter | null {
  return BY_KEY.get(key) ?? null
}

const fold = (text: string) => text.trim().toLowerCase()

/** The choice that a text means, by value or by name, without regard to case; null for none. */
export function findChoice(parameter: TradeParameter, text: string): string | null {
  const wanted = fold(text)
  return parameter.choices.find(({ value, name }) => fold(value) === wanted || fold(name) === wanted)?.value ?? null
}
