import { type CurrentLocation, currentCapacityAmp, resistanceOhm, temperatureRiseDegC } from '../conductors'
import type { ConductorFeature } from '../design'
import { readEnds } from '../materials'
import { findRange, type Span } from '../numerics'
import type { ConductorResult } from '../results'
import type { SectionLayer } from './zone-section'

/** A tolerance may take copper to a hundredth of its thickness, not to nothing, as in a bend. */
const LEAST_REMAINING_FRACTION = 0.01
const RESISTANCE_DEGC = { min: -200, max: 400 }

type Ranges = Pick<ConductorResult, 'capacityRangeAmp' | 'riseRangeDegC' | 'resistanceRangeOhm' | 'dropRangeVolt'>

/** Capacity, rise, resistance and drop over the thickness of the finished copper and the spread of its resistivity. */
export function computeConductorRange(
  { widthMm, lengthMm, currentAmp, allowedRiseDegC }: ConductorFeature & { readonly widthMm: number },
  { nominalUm, minusUm, plusUm, material }: SectionLayer,
  location: CurrentLocation,
  operatingMaxDegC: number | null,
): Ranges {
  const thicknessUm: Span = {
    low: Math.max(nominalUm - minusUm, LEAST_REMAINING_FRACTION * nominalUm),
    nominal: nominalUm,
    high: nominalUm + plusUm,
  }
  const resistivity = material?.foil?.resistivityOhmMm2PerM
  const riseAt = (um: number): number =>
    currentAmp === null || currentAmp === 0
      ? 0
      : temperatureRiseDegC({ widthMm, thicknessUm: um }, currentAmp, location)
  const resistanceRangeOhm =
    lengthMm === null || operatingMaxDegC === null || resistivity === undefined
      ? null
      : findRange(
          [thicknessUm, { ...readEnds('resistivityOhmMm2PerM', resistivity), nominal: resistivity.value }],
          ([um = nominalUm, resistivityOhmMm2PerM = 0]) =>
            resistanceOhm({
              runs: [{ widthMm, thicknessUm: um, lengthMm }],
              // Hotter than that is no figure: the nominal one is then not computed, or carries a caution.
              temperatureDegC: Math.min(
                RESISTANCE_DEGC.max,
                Math.max(RESISTANCE_DEGC.min, operatingMaxDegC + riseAt(um)),
              ),
              resistivityOhmMm2PerM,
            }),
        )
  return {
    capacityRangeAmp:
      allowedRiseDegC === null
        ? null
        : findRange([thicknessUm], ([um = nominalUm]) =>
            currentCapacityAmp({ widthMm, thicknessUm: um }, { temperatureRiseDegC: allowedRiseDegC, location }),
          ),
    riseRangeDegC: currentAmp === null ? null : findRange([thicknessUm], ([um = nominalUm]) => riseAt(um)),
    resistanceRangeOhm,
    dropRangeVolt:
      resistanceRangeOhm === null || currentAmp === null
        ? null
        : { low: resistanceRangeOhm.low * currentAmp, high: resistanceRangeOhm.high * currentAmp },
  }
}
