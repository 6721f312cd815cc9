import { computeAdhesiveFlow, computeThicknessRange } from '@/lib/engine/thickness'
import { umFromLength } from '@/lib/engine/units'
import { type CheckCase, checkTopic, expectValue, input, listOf } from '../check-values'

/** The sum as the engine takes it: layers with a tolerance, added up; the middle of a symmetric range is the sum. */
function addUp(check: CheckCase): number {
  const thicknessesUm =
    check.inputs.thicknessesUm === undefined
      ? listOf(check.inputs, 'thicknessesMil').map((mil) => umFromLength(mil, 'mil'))
      : listOf(check.inputs, 'thicknessesUm')
  const { worstCase } = computeThicknessRange(
    thicknessesUm.map((nominalUm, index) => ({
      id: `layer-${index}`,
      nominalUm,
      minusUm: 0.1 * nominalUm,
      plusUm: 0.1 * nominalUm,
      spread: 'normal',
    })),
  )
  return (worstCase.minUm + worstCase.maxUm) / 2
}

checkTopic('15 artwork and stack measures', [
  [
    /^stack-sum-/,
    (check) => {
      const totalUm = addUp(check)
      expectValue(check, 'totalUm', totalUm)
      if (check.expected.deviationUm !== undefined) {
        expectValue(check, 'deviationUm', totalUm - input(check, 'statedUm'))
      }
    },
  ],
  [
    /^stack-prepreg-fill-/,
    (check) => {
      const { overConductorUm } = computeAdhesiveFlow({
        adhesiveThicknessUm: input(check, 'prepregUm'),
        conductorThicknessUm: input(check, 'copperUm'),
        coverageFraction: input(check, 'copperCoverage'),
        requiredOverConductorUm: 0,
      })
      expectValue(check, 'pressedThicknessUm', overConductorUm)
    },
  ],
])
