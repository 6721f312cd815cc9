import { describe, expect, it } from 'vitest'
import {
  type BendLayer,
  computeFormedState,
  computeParallelFaceFold,
  computeSection,
  computeSpringback,
  yieldStrainPct,
} from '@/lib/engine/bending'
import { citeSource } from '@/lib/engine/sources'
import { bendToCurvature } from '@/test/factories/moment-curvature'
import { expectNear } from '../check-values'

/** A bare strip of elastic, perfectly plastic metal, free to contract: that keeps plane strain out of the textbook relations. */
const sheet: BendLayer = {
  id: 'sheet',
  thicknessUm: 100,
  modulusGpa: 100,
  poisson: 0,
  yieldStrengthMpa: 200,
  lateral: 'free',
}
const section = computeSection([sheet])
const yieldStrain = yieldStrainPct({ yieldStrengthMpa: 200, modulusGpa: 100, poisson: 0 }) / 100
/** First yield of a sheet: kappa_y = 2 eps_y / t. */
const yieldCurvaturePerMm = (2 * yieldStrain) / 0.1
const yieldMoment = section.rigidityNmm2PerMm * yieldCurvaturePerMm

describe(`moment of a sheet past yield: ${citeSource('plasticBending')}`, () => {
  it.each([0.25, 1, 1.5, 2, 5, 20])('M = 1.5 My (1 - (ky/k)^2/3) at %d times the yield curvature', (multiple) => {
    const state = bendToCurvature(section, multiple * yieldCurvaturePerMm)
    const expected = multiple <= 1 ? multiple * yieldMoment : 1.5 * yieldMoment * (1 - 1 / (3 * multiple ** 2))
    // The axis is found to 1e-9 of the thickness, and the moment is level there.
    expectNear(state.momentNPerMmWidth, expected, { rel: 1e-8 })
    expectNear(state.axisUm, 50, { rel: 1e-8 })
  })

  it('yields first where the surface strain equals the yield strain', () => {
    const { firstYieldInsideRadiusMm } = computeFormedState(section, 10)
    expectNear((firstYieldInsideRadiusMm ?? Number.NaN) + 0.05, 1 / yieldCurvaturePerMm, { rel: 1e-12 })
  })
})

describe(`springback of a sheet: ${citeSource('springback')}`, () => {
  it.each([1, 2, 5, 10, 20])('Ri/Rf = 4 x^3 - 3 x + 1, x = Ri Y / E t, at %d mm', (radiusMm) => {
    const axisRadiusMm = radiusMm + 0.05
    const x = (axisRadiusMm * 0.2) / (100 * 0.1)
    const spring = computeSpringback(section, radiusMm, 90)
    const keptFraction = 4 * x ** 3 - 3 * x + 1
    expectNear(spring.relaxedCurvaturePerMm * axisRadiusMm, keptFraction, { rel: 1e-6 })
    expectNear(spring.relaxedAngleDeg, 90 * keptFraction, { rel: 1e-6 })
    expectNear((spring.relaxedInsideRadiusMm ?? Number.NaN) + 0.05, axisRadiusMm / keptFraction, { rel: 1e-6 })
    expect(spring.reverseYield).toBe(false)
  })

  it('is complete above the radius of first yield', () => {
    const spring = computeSpringback(section, 30, 90)
    expect(spring).toMatchObject({ relaxedCurvaturePerMm: 0, relaxedInsideRadiusMm: null, springbackFraction: 1 })
    expect(spring.formed.yieldedFraction).toBe(0)
  })
})

describe(`letting go past a second yield: ${citeSource('reversedYield')}`, () => {
  it('a stiff elastic film that bends thin copper back yields it again; equilibrium by stepwise integration', () => {
    const layers: BendLayer[] = [
      { id: 'copper-inner', thicknessUm: 5, modulusGpa: 100, poisson: 0, yieldStrengthMpa: 80, lateral: 'free' },
      { id: 'film', thicknessUm: 75, modulusGpa: 5, poisson: 0 },
      { id: 'copper-outer', thicknessUm: 5, modulusGpa: 100, poisson: 0, yieldStrengthMpa: 80, lateral: 'free' },
    ]
    const stack = computeSection(layers)
    const spring = computeSpringback(stack, 2, 180)
    expect(spring.reverseYield).toBe(true)
    // Independent: slices that remember their plastic strain, bent up and let go in small steps until no moment is left.
    const relaxedPerMm = letGoStepwise(layers, spring.formed.curvaturePerMm)
    expectNear(spring.relaxedCurvaturePerMm, relaxedPerMm, { rel: 2e-3 })
  })
})

/** Symmetric stacks only: the axis stays in the middle. Perfect plasticity, slices through the thickness. */
function letGoStepwise(layers: readonly BendLayer[], formedCurvaturePerMm: number): number {
  const slicesPerLayer = 400
  const total = layers.reduce((sum, each) => sum + each.thicknessUm, 0)
  let depthUm = 0
  const slices = layers.flatMap((layer) => {
    const startUm = depthUm
    depthUm += layer.thicknessUm
    return Array.from({ length: slicesPerLayer }, (_, index) => ({
      armMm: (startUm + ((index + 0.5) * layer.thicknessUm) / slicesPerLayer - total / 2) / 1000,
      widthMm: layer.thicknessUm / slicesPerLayer / 1000,
      modulusMpa: layer.modulusGpa * 1000,
      yieldMpa: layer.yieldStrengthMpa ?? Number.POSITIVE_INFINITY,
      stressMpa: 0,
    }))
  })
  const stepPerMm = formedCurvaturePerMm / 20000
  const move = (changePerMm: number): number => {
    let moment = 0
    for (const slice of slices) {
      const trial = slice.stressMpa + slice.modulusMpa * slice.armMm * changePerMm
      slice.stressMpa = Math.max(-slice.yieldMpa, Math.min(slice.yieldMpa, trial))
      moment += slice.stressMpa * slice.armMm * slice.widthMm
    }
    return moment
  }
  let curvature = 0
  for (let step = 0; step < 20000; step += 1) {
    move(stepPerMm)
    curvature += stepPerMm
  }
  while (move(-stepPerMm) > 0) curvature -= stepPerMm
  return curvature
}

describe(`fold between parallel faces: ${citeSource('parallelFaceFold')}`, () => {
  const film = computeSection([{ id: 'film', thicknessUm: 125, modulusGpa: 72, poisson: 0 }])

  it('peak strain is 1.198 t / (D - t)', () => {
    const fold = computeParallelFaceFold(film, 5, 10)
    expectNear(0.125 / 2 / fold.tipAxisRadiusMm, (1.198 * 0.125) / (5 - 0.125), { rel: 2e-4 })
  })

  it('the factor is the integral of sqrt(sin) over a quarter turn, by quadrature', () => {
    // The substitution theta = u^2 takes the root's kink out of the integrand.
    const steps = 20000
    const width = Math.sqrt(Math.PI / 2) / steps
    let integral = 0
    for (let step = 0; step < steps; step += 1) {
      const u = (step + 0.5) * width
      integral += Math.sqrt(Math.sin(u * u)) * 2 * u * width
    }
    const fold = computeParallelFaceFold(film, 5, 10)
    expectNear((5 - 0.125) / (2 * fold.tipAxisRadiusMm), integral, { rel: 1e-8 })
    const expectedForceN = (2 * integral ** 2 * film.rigidityNmm2PerMm * 10) / (5 - 0.125) ** 2
    expectNear(fold.forceN, expectedForceN, { rel: 1e-8 })
  })
})
