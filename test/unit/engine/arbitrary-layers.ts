import fc from 'fast-check'
import type { BendLayer } from '@/lib/engine/bending'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A layer as flexible circuits have them: 5 to 200 um, 0.2 to 200 GPa, patterned copper among them. */
export const bendLayer: fc.Arbitrary<BendLayer> = fc
  .record({
    thicknessUm: between(5, 200),
    modulusGpa: between(0.2, 200),
    poisson: between(0, 0.45),
    conductor: fc.option(
      fc.record({ coverageFraction: between(0.05, 1), fillModulusGpa: between(0, 5), fillPoisson: between(0, 0.45) }),
      { nil: undefined },
    ),
  })
  .map(({ conductor, ...layer }) => ({ id: 'layer', ...layer, ...(conductor !== undefined && { conductor }) }))

/** One to twelve layers, innermost first, each with its own id. */
export const bendStack: fc.Arbitrary<BendLayer[]> = fc
  .array(bendLayer, { minLength: 1, maxLength: 12 })
  .map((layers) => layers.map((layer, index) => ({ ...layer, id: `layer-${index}` })))

export const insideRadiusMm: fc.Arbitrary<number> = between(0.05, 50)
export { between }
