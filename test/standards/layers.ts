import type { BendLayer } from '@/lib/engine/bending'
import type { CheckCase } from './check-values'

/**
 * Layers of a check value in the engine's units. Poisson 0 makes the plane-strain modulus the modulus itself, as the
 * check values are stated; `umPerUnit` and `gpaPerUnit` convert inches, millimetres, psi and MPa.
 */
export function layersOf(
  check: CheckCase,
  { umPerUnit = 1, gpaPerUnit = 1, copperIndices = [] as number[] } = {},
): BendLayer[] {
  const stated = check.inputs.layersBottomToTop as { thickness: number; modulus: number }[]
  return stated.map(({ thickness, modulus }, index) => ({
    id: `layer-${index}`,
    thicknessUm: thickness * umPerUnit,
    modulusGpa: modulus * gpaPerUnit,
    poisson: 0,
    ...(copperIndices.includes(index) && {
      conductor: { coverageFraction: 1, fillModulusGpa: 1, fillPoisson: 0 },
    }),
  }))
}
