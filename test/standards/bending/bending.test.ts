import { expect } from 'vitest'
import {
  computeBendStrain,
  computeHandbookRadius,
  computeLeafLengthDifference,
  computeLeaves,
  computeRatioRadius,
  computeSection,
  developedLengthMm,
  findRatioTable,
  HANDBOOK_DEFORMATION_PCT,
  type HandbookConstruction,
  type RatioUse,
  surfaceStrainPctFromRatio,
} from '@/lib/engine/bending'
import { type CheckCase, checkTopic, expectNear, expectValue, input, listOf } from '../check-values'
import { layersOf } from '../layers'

function handbookConstruction(check: CheckCase): HandbookConstruction {
  const common = {
    copperThicknessUm: input(check, 'copperThicknessUm'),
    coverThicknessUm: input(check, 'coverThicknessUm'),
  }
  return input(check, 'sides') === 1
    ? { sides: 'single', ...common }
    : { sides: 'double', ...common, dielectricThicknessUm: input(check, 'dielectricBetweenConductorsUm') }
}

checkTopic('4 bend strain and radius', [
  [
    /^bend-ipc-/,
    (check) => {
      const construction = handbookConstruction(check)
      const handbook = computeHandbookRadius(construction, input(check, 'allowableCopperDeformationPercent'))
      expectValue(check, 'minInsideRadiusUm', handbook.formulaRadiusUm)
      const expectedUm = Number(check.expected.minInsideRadiusUm)
      expect(handbook.clamped).toBe(expectedUm < 0)
      expect(handbook.warning === null).toBe(expectedUm >= 0)
      expectNear(handbook.minInsideRadiusMm, Math.max(0, expectedUm) / 1000, check.tolerance)
      expect(handbook.source).toBe(check.sourceKind === 'memory' ? 'ipc2223Recalled' : 'ipc2223')
    },
  ],
  [
    /^bend-EB-table/,
    ({ expected }) => {
      expect(HANDBOOK_DEFORMATION_PCT['fold-once']['rolled-annealed']).toBe(expected.oneTimeCreaseRA)
      expect(HANDBOOK_DEFORMATION_PCT['fold-once'].electrodeposited).toBe(expected.oneTimeCreaseED)
      expect(HANDBOOK_DEFORMATION_PCT['flex-to-install']['rolled-annealed']).toBe(expected.flexToInstallRA)
      expect(HANDBOOK_DEFORMATION_PCT['flex-to-install'].electrodeposited).toBeNull()
      expect(HANDBOOK_DEFORMATION_PCT.dynamic['rolled-annealed']).toBe(expected.dynamic)
      // Nothing here is a read head: its figure stands in the list, and a general dynamic bend must not be held to less.
      expect(expected.readHead).toBeLessThan(HANDBOOK_DEFORMATION_PCT.dynamic['rolled-annealed'])
    },
  ],
  [
    /^bend-(strain|plane)-/,
    (check) => {
      const section = computeSection(layersOf(check, { copperIndices: listOf(check.inputs, 'copperLayerIndices') }))
      const bend = computeBendStrain(section, input(check, 'insideRadiusUm') / 1000)
      expectValue(check, 'neutralAxisFromInsideUm', bend.axisUm)
      const faces = check.expected.copperStrainPercentInnerOuter as [number, number][]
      expect(bend.conductors).toHaveLength(faces.length)
      for (const [index, [inner, outer]] of faces.entries()) {
        const conductor = bend.conductors[index]
        expectNear(conductor?.innerFacePct ?? Number.NaN, inner, check.tolerance)
        expectNear(conductor?.outerFacePct ?? Number.NaN, outer, check.tolerance)
      }
    },
  ],
  [
    /^bend-homog-/,
    (check) => {
      const thicknessUm = input(check, 'totalThicknessMm') * 1000
      const sheet = computeSection([{ id: 'sheet', thicknessUm, modulusGpa: 3, poisson: 0.34 }])
      expectValue(
        check,
        'outerFibreStrainPercent',
        computeBendStrain(sheet, input(check, 'insideRadiusMm')).outerSurfacePct,
      )
      expectValue(check, 'ratio', (input(check, 'insideRadiusMm') * 1000) / thicknessUm)
    },
  ],
  [
    /^bend-ratio-to-strain/,
    (check) => {
      const expected = listOf(check.expected, 'outerFibreStrainPercent')
      for (const [index, ratio] of listOf(check.inputs, 'ratios').entries()) {
        expectNear(surfaceStrainPctFromRatio(ratio), expected[index] ?? Number.NaN, check.tolerance)
      }
    },
  ],
  [
    /^bend-ratio-\dL-/,
    (check) => {
      const [, , layers = '', use = ''] = check.id.split('-')
      const table = findRatioTable('attributed-to-ipc-2223')
      if (table === null) throw new Error('the table is gone')
      const useByWord: Record<string, RatioUse> = { static: 'static', semi: 'occasional', dynamic: 'dynamic' }
      const radius = computeRatioRadius({
        table,
        use: useByWord[use] ?? 'static',
        conductorLayerCount: Number(layers.replace('L', '')),
        totalThicknessUm: input(check, 'totalThicknessMm') * 1000,
      })
      expect(radius.kind).toBe('stated')
      if (radius.kind !== 'stated') return
      expect(radius.requiredRatio).toBe(input(check, 'ratio'))
      expectValue(check, 'minInsideRadiusMm', radius.minInsideRadiusMm)
    },
  ],
  [
    /^bend-arc-length/,
    (check) =>
      expectValue(
        check,
        'bendLengthAtNeutralAxisMm',
        developedLengthMm({
          insideRadiusMm: input(check, 'insideRadiusMm'),
          neutralAxisUm: input(check, 'neutralAxisFromInsideMm') * 1000,
          angleDeg: input(check, 'angleDeg'),
        }),
      ),
  ],
  [
    // The handbook's 250 um for each leaf is the exact length for one pitch at each angle.
    /^bend-leaf-250/,
    (check) => {
      for (const [key, angleDeg] of [
        ['equalsPitchAt90DegMm', 90],
        ['equalsPitchAt180DegMm', 180],
      ] as const) {
        const { exactMm } = computeLeafLengthDifference(1000 * Number(check.expected[key]), angleDeg)
        expectNear(exactMm, input(check, 'extraLengthPerLeafMm'), check.tolerance)
      }
    },
  ],
  [
    /^bend-bookbinder/,
    (check) => {
      const pitchUm = input(check, 'layerPitchMm') * 1000
      const extra = computeLeafLengthDifference(pitchUm, input(check, 'angleDeg'))
      expectValue(check, 'extraLengthPerLayerExactMm', extra.exactMm)
      expectValue(check, 'extraLengthRuleMm', extra.ruleOfThumbMm)
      const leaf = [{ id: 'film', thicknessUm: pitchUm, modulusGpa: 3, poisson: 0.34 }]
      const fold = computeLeaves({
        leaves: [leaf, leaf],
        gapsUm: [0],
        insideRadiusMm: 2,
        angleDeg: input(check, 'angleDeg'),
      })
      expectValue(check, 'extraLengthPerLayerExactMm', fold.greatestExtraLengthMm)
    },
  ],
])
