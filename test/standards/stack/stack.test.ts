import { expect } from 'vitest'
import { hatchCoverageFraction } from '@/lib/engine'
import { hatchModulusGpa } from '@/lib/engine/bending'
import { hatchConductanceFraction } from '@/lib/engine/conductors'
import { computeAdhesiveFlow, computeThicknessRange } from '@/lib/engine/thickness'
import { umFromLength } from '@/lib/engine/units'
import { type CheckCase, checkTopic, expectNear, expectValue, input, listOf } from '../check-values'

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

/** Any pitch: shares are of bar over pitch alone. */
const PITCH_MM = 0.5

checkTopic('15 artwork and stack measures', [
  [
    /^hatch-(\d|45deg|solid)/,
    (check) => {
      const pitchMm = input(check, 'pitchMm')
      const barMm = input(check, 'strokeWidthMm')
      expectValue(check, 'coverageFraction', hatchCoverageFraction({ barMm, pitchMm }))
    },
  ],
  [
    // The inverse: the stroke that is printed gives the share that was asked for.
    /^hatch-inverse/,
    (check) => {
      const barMm = Number(check.expected.strokeOverPitch) * PITCH_MM
      const coverage = hatchCoverageFraction({ barMm, pitchMm: PITCH_MM })
      expectNear(coverage, input(check, 'coverageFraction'), check.tolerance)
    },
  ],
  [
    /^hatch-sheet-/,
    (check) => {
      const barOverPitch = input(check, 'strokeOverPitch')
      const coverage = hatchCoverageFraction({ barMm: barOverPitch * PITCH_MM, pitchMm: PITCH_MM })
      expectValue(check, 'coverageFraction', coverage)
      expectValue(check, 'sheetResistanceOverSolid', 1 / hatchConductanceFraction(barOverPitch))
    },
  ],
  [
    // The bounds are for a strip that is free to contract, or Poisson 0; the table of the free strip lies between them.
    /^hatch-modulus-bounds-/,
    (check) => {
      const barOverPitch = input(check, 'strokeOverPitch')
      const modulusGpa = hatchModulusGpa(
        { barOverPitch, angleDeg: 0 },
        { modulusGpa: 1, poisson: 0.34, fillModulusGpa: 0, fillPoisson: 0, lateral: 'free' },
      )
      expect(modulusGpa).toBeGreaterThan(Number(check.expected.lowerModulusOverSolid))
      expect(modulusGpa).toBeLessThan(Number(check.expected.upperModulusOverSolid))
      const coverage = hatchCoverageFraction({ barMm: barOverPitch * PITCH_MM, pitchMm: PITCH_MM })
      expectValue(check, 'coverageFraction', coverage)
    },
  ],
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
