import { describe, expect, it } from 'vitest'
import {
  type BendLayer,
  computeBendStrain,
  computePullStrainPct,
  computeSection,
  equivalentRadiusMm,
} from '@/lib/engine/bending'

/*
 * A section cut into fibres that remember their stress, led through a history of curvature and pull step by step: nothing of the engine's
 * closed forms is in it. Copper is perfectly plastic, films are elastic; strains are small (R/t near 100), so that both must agree.
 */

interface Fibre {
  readonly depthUm: number
  readonly areaUm: number
  readonly modulusGpa: number
  readonly yieldGpa: number
  readonly isCopper: boolean
  strain: number
  stress: number
}

const FIBRES_PER_LAYER = 120

interface Stated {
  readonly thicknessUm: number
  readonly modulusGpa: number
  readonly yieldMpa?: number
}

function makeFibres(layers: readonly Stated[]): Fibre[] {
  let innerUm = 0
  return layers.flatMap(({ thicknessUm, modulusGpa, yieldMpa }) => {
    const from = innerUm
    innerUm += thicknessUm
    return Array.from({ length: FIBRES_PER_LAYER }, (_, at) => ({
      depthUm: from + ((at + 0.5) * thicknessUm) / FIBRES_PER_LAYER,
      areaUm: thicknessUm / FIBRES_PER_LAYER,
      modulusGpa,
      yieldGpa: yieldMpa === undefined ? Number.POSITIVE_INFINITY : yieldMpa / 1000,
      isCopper: yieldMpa !== undefined,
      strain: 0,
      stress: 0,
    }))
  })
}

const stressAt = ({ stress, strain, modulusGpa, yieldGpa }: Fibre, to: number): number =>
  Math.max(-yieldGpa, Math.min(yieldGpa, stress + modulusGpa * (to - strain)))

/** Takes the section to a curvature under a force by small steps. */
function lead(fibres: Fibre[], from: readonly [number, number], to: readonly [number, number], steps = 60): void {
  for (let step = 1; step <= steps; step += 1) {
    const curvature = from[0] + ((to[0] - from[0]) * step) / steps
    const force = from[1] + ((to[1] - from[1]) * step) / steps
    const at = (middle: number) =>
      fibres.reduce((sum, fibre) => sum + fibre.areaUm * stressAt(fibre, middle + curvature * fibre.depthUm), 0) - force
    let [low, high] = [-0.2, 0.2]
    for (let round = 0; round < 60; round += 1) {
      const middle = (low + high) / 2
      if (at(middle) > 0) high = middle
      else low = middle
    }
    for (const fibre of fibres) {
      const strain = low + curvature * fibre.depthUm
      fibre.stress = stressAt(fibre, strain)
      fibre.strain = strain
    }
  }
}

/** Greatest range of any copper fibre in the last of several cycles. */
function findRangePct(
  layers: readonly Stated[],
  flat: readonly [number, number],
  tight: readonly [number, number],
  first?: readonly [number, number],
): number {
  const fibres = makeFibres(layers)
  if (first !== undefined) {
    lead(fibres, [0, 0], first)
    lead(fibres, first, tight)
  } else lead(fibres, [0, 0], tight)
  let range = 0
  for (let cycle = 0; cycle < 8; cycle += 1) {
    lead(fibres, tight, flat)
    const atFlat = fibres.map(({ strain }) => strain)
    lead(fibres, flat, tight)
    range = Math.max(...fibres.map((fibre, at) => (fibre.isCopper ? Math.abs(fibre.strain - (atFlat[at] ?? 0)) : 0)))
  }
  return 100 * range
}

const SECTIONS: Readonly<Record<string, readonly Stated[]>> = {
  'symmetric, one foil': [
    { thicknessUm: 50, modulusGpa: 3 },
    { thicknessUm: 35, modulusGpa: 110, yieldMpa: 80 },
    { thicknessUm: 50, modulusGpa: 3 },
  ],
  'unequal covers': [
    { thicknessUm: 25, modulusGpa: 4.8 },
    { thicknessUm: 18, modulusGpa: 110, yieldMpa: 80 },
    { thicknessUm: 75, modulusGpa: 2.5 },
  ],
  'two foils of unequal weight': [
    { thicknessUm: 25, modulusGpa: 2.5 },
    { thicknessUm: 18, modulusGpa: 110, yieldMpa: 80 },
    { thicknessUm: 50, modulusGpa: 4.8 },
    { thicknessUm: 35, modulusGpa: 110, yieldMpa: 80 },
    { thicknessUm: 25, modulusGpa: 2.5 },
  ],
}

const layersOf = (stated: readonly Stated[]): BendLayer[] =>
  stated.map(({ thicknessUm, modulusGpa, yieldMpa }, at) => ({
    id: `layer-${at}`,
    thicknessUm,
    modulusGpa,
    poisson: 0,
    ...(yieldMpa === undefined
      ? {}
      : {
          yieldStrengthMpa: yieldMpa,
          tangentModulusGpa: 0,
          lateral: 'free' as const,
          conductor: { coverageFraction: 1, fillModulusGpa: 0, fillPoisson: 0 },
        }),
  }))

const curvatureOf = (radiusMm: number, axisUm: number): number => 1 / (1000 * radiusMm + axisUm)

describe('cycles of a section cut into fibres', () => {
  for (const [name, stated] of Object.entries(SECTIONS)) {
    const layers = layersOf(stated)
    const section = computeSection(layers)
    const axisUm = section.neutralAxisUm
    const radiusMm = (100 * section.totalThicknessUm) / 1000

    it.each([1.3, 2, 4, 1e6])(`${name}: range between R and %s R`, (ratio) => {
      const fromMm = ratio * radiusMm
      const equivalentMm = equivalentRadiusMm(radiusMm, axisUm, { insideRadiusMm: fromMm }) ?? Number.NaN
      const { conductors } = computeBendStrain(section, equivalentMm, 'one-way')
      const computedPct = Math.max(...conductors.map(({ rangePct }) => rangePct ?? Number.NaN))
      const seenPct = findRangePct(stated, [curvatureOf(fromMm, axisUm), 0], [curvatureOf(radiusMm, axisUm), 0])
      expect(Math.abs(computedPct / seenPct - 1)).toBeLessThan(0.015)
    })

    it(`${name}: a fold before leaves the range as it is`, () => {
      const tight = [curvatureOf(radiusMm, axisUm), 0] as const
      const flat = [curvatureOf(3 * radiusMm, axisUm), 0] as const
      const plain = findRangePct(stated, flat, tight)
      const folded = findRangePct(stated, flat, tight, [curvatureOf(radiusMm / 4, axisUm), 0])
      expect(Math.abs(folded / plain - 1)).toBeLessThan(0.01)
    })

    it(`${name}: a pull that comes and goes with the bend, or against it, ranges no more than both together`, () => {
      const { conductors } = computeBendStrain(section, radiusMm, 'one-way')
      const bendingPct = Math.max(...conductors.map(({ rangePct }) => rangePct ?? Number.NaN))
      for (const pullNPerMm of [0.3, 1]) {
        const addedPct =
          computePullStrainPct(layers, { insideRadiusMm: radiusMm, loading: 'one-way', pullNPerMm }) ?? Number.NaN
        const curvature = curvatureOf(radiusMm, axisUm)
        const withBend = findRangePct(stated, [0, 0], [curvature, pullNPerMm])
        const against = findRangePct(stated, [0, pullNPerMm], [curvature, 0])
        expect(Math.max(withBend, against)).toBeLessThanOrEqual((bendingPct + addedPct) * 1.015)
        expect(Math.max(withBend, against)).toBeGreaterThan(bendingPct * 0.985)
      }
    })
  }
})
