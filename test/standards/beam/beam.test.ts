import { expect } from 'vitest'
import { type BondedSection, computeLeaves, computeSection, thermalCurvaturePerMm } from '@/lib/engine/bending'
import { gpaFromPsi } from '@/test/factories/pounds'
import { type CheckCase, checkTopic, expectNear, expectValue, input } from '../check-values'
import { layersOf } from '../layers'

const IN_UM = 25400
const N_PER_LBF = 4.4482216152605
const MPA_PER_PSI = gpaFromPsi(1) * 1000

/** Rigidity of the whole width in lbf in2, from N mm2 per mm. */
function rigidityLbIn2(section: BondedSection, widthIn: number): number {
  return (section.rigidityNmm2PerMm * widthIn * 25.4) / N_PER_LBF / 25.4 ** 2
}

/** Bending stress in the unit of the moment: sigma = E (M / EI) (y - y_n). */
function stressMpa(section: BondedSection, layerIndex: number, depthUm: number, curvaturePerMm: number): number {
  const modulusGpa = section.layers[layerIndex]?.effectiveModulusGpa ?? Number.NaN
  return Math.abs(modulusGpa * 1000 * curvaturePerMm * ((depthUm - section.neutralAxisUm) / 1000))
}

function imperial(check: CheckCase): { section: BondedSection; curvaturePerMm: number } {
  const section = computeSection(layersOf(check, { umPerUnit: IN_UM, gpaPerUnit: gpaFromPsi(1) }))
  expectValue(check, 'neutralAxisFromBottom', section.neutralAxisUm / IN_UM)
  expectValue(check, 'flexuralRigidityEI', rigidityLbIn2(section, input(check, 'width')))
  const momentNmm = input(check, 'momentLbIn') * N_PER_LBF * 25.4
  return { section, curvaturePerMm: momentNmm / (section.rigidityNmm2PerMm * input(check, 'width') * 25.4) }
}

checkTopic('3 composite beam', [
  [
    /^beam-gere-6.2-1/,
    (check) => {
      const { section, curvaturePerMm } = imperial(check)
      expectValue(check, 'faceStressPsi', stressMpa(section, 0, 0, curvaturePerMm) / MPA_PER_PSI)
      expectValue(check, 'coreStressPsi', stressMpa(section, 1, 0.1 * IN_UM, curvaturePerMm) / MPA_PER_PSI)
    },
  ],
  [
    // Parts that bend side by side without being joined: the engine's unbonded leaves. A millionth of the stated second
    // moments per mm of width keeps the leaves within the thickness that the engine accepts.
    /^beam-gere-6.2-2/,
    (check) => {
      const leafOf = (id: string, secondMomentMm4: number, modulusGpa: number) => [
        { id, thicknessUm: 1000 * Math.cbrt(12e-6 * secondMomentMm4), modulusGpa, poisson: 0 },
      ]
      const { rigidityNmm2PerMm } = computeLeaves({
        leaves: [
          leafOf('wood', input(check, 'woodIMm4'), input(check, 'woodEGPa')),
          leafOf('steel', input(check, 'steelIMm4'), input(check, 'steelEGPa')),
        ],
        gapsUm: [0],
        insideRadiusMm: 1000,
        angleDeg: 10,
      })
      // N mm2 to N m2 is 1e-6, which the scaling of the second moments cancels.
      expectValue(check, 'flexuralRigidityNm2', rigidityNmm2PerMm)
    },
  ],
  [
    /^beam-gere-wood-steel/,
    (check) => {
      const { section, curvaturePerMm } = imperial(check)
      expectValue(check, 'topFibreDistance', (section.totalThicknessUm - section.neutralAxisUm) / IN_UM)
      expectValue(
        check,
        'woodTopStressPsi',
        stressMpa(section, 1, section.totalThicknessUm, curvaturePerMm) / MPA_PER_PSI,
      )
      expectValue(check, 'steelBottomStressPsi', stressMpa(section, 0, 0, curvaturePerMm) / MPA_PER_PSI)
    },
  ],
  [
    /^beam-gere-sandwich/,
    (check) => {
      const section = computeSection(layersOf(check, { umPerUnit: 1000, gpaPerUnit: 1e-3 }))
      expectValue(check, 'neutralAxisFromBottom', section.neutralAxisUm / 1000)
      expectValue(check, 'flexuralRigidityEI', section.rigidityNmm2PerMm * input(check, 'width'))
      const curvaturePerMm = input(check, 'momentNmm') / (section.rigidityNmm2PerMm * input(check, 'width'))
      expectValue(check, 'faceStressMPa', stressMpa(section, 0, 0, curvaturePerMm))
      expectValue(check, 'coreStressMPa', stressMpa(section, 1, 5000, curvaturePerMm))
    },
  ],
  [
    /^beam-five-strips/,
    (check) => {
      const { section, curvaturePerMm } = imperial(check)
      expectValue(check, 'radiusOfCurvatureIn', 1 / curvaturePerMm / 25.4)
      if (check.expected.radiusOfCurvatureFt !== undefined) {
        expectValue(check, 'radiusOfCurvatureFt', 1 / curvaturePerMm / 25.4 / 12)
      }
      expectValue(check, 'outerStressPsi', stressMpa(section, 0, 0, curvaturePerMm) / MPA_PER_PSI)
      expectValue(check, 'secondStressPsi', stressMpa(section, 1, 0.5 * IN_UM, curvaturePerMm) / MPA_PER_PSI)
      expectValue(check, 'middleStressPsi', stressMpa(section, 2, 1 * IN_UM, curvaturePerMm) / MPA_PER_PSI)
    },
  ],
  [
    // Units are free in this case: rigidity of one um of width in GPa um^3 is a millionth of N mm2 per mm.
    /^beam-(bimetal-equal|homog)/,
    (check) => {
      const section = computeSection(layersOf(check))
      expectValue(check, 'neutralAxisFromBottom', section.neutralAxisUm)
      expectValue(check, 'flexuralRigidityEI', section.rigidityNmm2PerMm * 1e6 * input(check, 'width'))
    },
  ],
  [
    /^beam-fpc-/,
    (check) => {
      const section = computeSection(layersOf(check))
      expectValue(check, 'neutralAxisFromBottom', section.neutralAxisUm)
      expectValue(check, 'flexuralRigidityEI', section.rigidityNmm2PerMm * 1e6)
      expectValue(check, 'flexuralRigidityPerWidthNmm', section.rigidityNmm2PerMm)
      expectValue(check, 'totalThicknessUm', section.totalThicknessUm)
    },
  ],
  [
    /^beam-plane-strain-/,
    (check) =>
      expectValue(
        check,
        'planeStrainModulusGPa',
        computeSection([
          {
            id: 'wide-strip',
            thicknessUm: 50,
            modulusGpa: input(check, 'youngModulusGPa'),
            poisson: input(check, 'poissonRatio'),
          },
        ]).layers[0]?.effectiveModulusGpa ?? Number.NaN,
      ),
  ],
  [
    /^beam-width-fraction/,
    (check) => {
      const coverageFraction = input(check, 'coverage')
      const fillModulusGpa = input(check, 'fillModulusGPa')
      const conductorModulusGpa = input(check, 'youngModulusGPa')
      const { layers } = computeSection([
        {
          id: 'patterned',
          thicknessUm: 18,
          modulusGpa: conductorModulusGpa,
          poisson: 0,
          conductor: { coverageFraction, fillModulusGpa, fillPoisson: 0 },
        },
      ])
      expectValue(check, 'effectiveModulusGPa', layers[0]?.effectiveModulusGpa ?? Number.NaN)
    },
  ],
  [
    /^beam-timo-/,
    (check) => {
      const section = computeSection(
        [1, 2].map((n) => ({
          id: `layer-${n}`,
          thicknessUm: input(check, `thickness${n}Mm`) * 1000,
          modulusGpa: input(check, `modulus${n}`) / 1000,
          poisson: 0,
        })),
      )
      const curvaturePerMm = thermalCurvaturePerMm(
        section.layers.map(({ layer, effectiveModulusGpa }, at) => ({
          thicknessUm: layer.thicknessUm,
          modulusGpa: effectiveModulusGpa,
          expansionPpmPerC: input(check, `alpha${at + 1}PerC`) * 1e6,
        })),
        input(check, 'deltaT'),
      )
      expectValue(check, 'curvaturePerMm', curvaturePerMm)
      expectValue(check, 'radiusMm', 1 / curvaturePerMm)
      expect(Math.sign(curvaturePerMm)).toBe(Math.sign(input(check, 'deltaT')))
      expectNear(section.totalThicknessUm, 1000 * (input(check, 'thickness1Mm') + input(check, 'thickness2Mm')), {
        rel: 1e-12,
      })
    },
  ],
])
