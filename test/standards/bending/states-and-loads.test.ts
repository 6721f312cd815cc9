import { describe, expect, it } from 'vitest'
import {
  type BendLayer,
  computeBendStrain,
  computePullStrainPct,
  computeSection,
  computeStripTwist,
  equivalentRadiusMm,
  equivalentStrainPct,
  flatterRadiusMm,
  MOST_EDGE_STRAIN_RATIO,
  tighterRadiusMm,
} from '@/lib/engine/bending'

const copper = (thicknessUm: number, yieldStrengthMpa?: number): BendLayer => ({
  id: `copper-${thicknessUm}`,
  thicknessUm,
  modulusGpa: 110,
  poisson: 0.34,
  ...(yieldStrengthMpa === undefined ? {} : { yieldStrengthMpa, tangentModulusGpa: 0 }),
})
const film = (id: string, thicknessUm: number, modulusGpa: number): BendLayer => ({
  id,
  thicknessUm,
  modulusGpa,
  poisson: 0.34,
})

/** Geometry: a fibre at a distance y from the depth that keeps its length has the strain y / (R + y_n). */
describe('two states of a bend [exact geometry]', () => {
  it('strain a symmetric strip by t/2 times the difference of both curvatures', () => {
    const strip = computeSection([film('film', 100, 4)])
    for (const [tightMm, flatMm] of [
      [1, 2],
      [5, 6],
      [8, 400],
    ] as const) {
      const equivalentMm = equivalentRadiusMm(tightMm, strip.neutralAxisUm, { insideRadiusMm: flatMm }) ?? Number.NaN
      const { outerSurfacePct } = computeBendStrain(strip, equivalentMm)
      expect(outerSurfacePct).toBeCloseTo(100 * 0.05 * (1 / (tightMm + 0.05) - 1 / (flatMm + 0.05)), 10)
    }
  })

  it('are the same by radius and by angle over one length', () => {
    const axisUm = 60
    const [radiusMm, angleDeg, fromDeg] = [4, 180, 50]
    const lengthMm = ((radiusMm + axisUm / 1000) * angleDeg * Math.PI) / 180
    const fromMm = lengthMm / ((fromDeg * Math.PI) / 180) - axisUm / 1000
    const byAngle = { angleShare: fromDeg / angleDeg }
    expect(flatterRadiusMm(radiusMm, axisUm, byAngle)).toBeCloseTo(fromMm, 10)
    expect(equivalentRadiusMm(radiusMm, axisUm, byAngle)).toBeCloseTo(
      equivalentRadiusMm(radiusMm, axisUm, { insideRadiusMm: fromMm }) ?? Number.NaN,
      9,
    )
  })

  it('come to the bend from flat as the flatter end opens, and are no motion where both are alike', () => {
    for (const radiusMm of [0, 0.5, 8, 300]) {
      const far = equivalentRadiusMm(radiusMm, 70, { insideRadiusMm: 1e13 }) ?? Number.NaN
      expect(Math.abs(far - radiusMm)).toBeLessThanOrEqual(1e-9 * Math.max(radiusMm, 1))
      expect(equivalentRadiusMm(radiusMm, 70, { angleShare: 0 })).toBe(radiusMm)
      expect(equivalentRadiusMm(radiusMm, 70, { insideRadiusMm: radiusMm })).toBeNull()
      expect(equivalentRadiusMm(radiusMm, 70, { angleShare: 1 })).toBeNull()
    }
  })

  it('lead back to the tighter radius', () => {
    for (const from of [{ insideRadiusMm: 9 }, { angleShare: 0.4 }]) {
      const equivalentMm = equivalentRadiusMm(3, 55, from) ?? Number.NaN
      expect(tighterRadiusMm(equivalentMm, 55, from)).toBeCloseTo(3, 10)
    }
  })
})

/** Mechanics of Materials (Gere), chapter 2, 2004, bars of several materials: eps = P / sum(E A); from memory. */
describe('pull on a composite bar', () => {
  it('is shared by stiffness while nothing yields', () => {
    const layers = [film('base', 25, 4.83), copper(18), film('cover', 50, 2.5)]
    const stiffnessNPerMm = 25 * 4.83 + 18 * 110 + 50 * 2.5
    for (const pullNPerMm of [0.01, 1, 8]) {
      const strainPct = computePullStrainPct(layers, { insideRadiusMm: 5, loading: 'once', pullNPerMm })
      expect(strainPct).toBeCloseTo((100 * pullNPerMm) / stiffnessNPerMm, 9)
    }
  })

  it('counts half where a bend to both sides has half of its range against the allowable', () => {
    const layers = [copper(35)]
    const at = (loading: 'one-way' | 'reversed') =>
      computePullStrainPct(layers, { insideRadiusMm: 50, loading, pullNPerMm: 2 }) ?? Number.NaN
    expect(at('reversed')).toBeCloseTo(at('one-way') / 2, 12)
  })
})

/**
 * Rectangular section of a perfectly plastic material under moment and force (Lubliner, Plasticity Theory, 1990, from memory): the axis moves by
 * e = N / (2 sigma_y) per width as soon as both faces yield, which gives M / M_p + (N / N_p)^2 = 1 at full yield.
 */
describe('pull on copper that bending has taken past yield', () => {
  it('moves the axis by N / (2 sigma_y)', () => {
    const foil = { ...copper(35, 100), lateral: 'free' as const }
    const insideRadiusMm = 2
    for (const share of [0.05, 0.2, 0.35]) {
      const pullNPerMm = share * 35e-3 * 100
      const shiftUm = (1000 * pullNPerMm) / (2 * 100)
      const strainPct = computePullStrainPct([foil], { insideRadiusMm, loading: 'once', pullNPerMm }) ?? Number.NaN
      expect(strainPct).toBeCloseTo((100 * shiftUm) / (1000 * insideRadiusMm + 17.5), 8)
      const [momentOverFull, forceOverFull] = [1 - (2 * shiftUm) ** 2 / 35 ** 2, share]
      expect(momentOverFull + forceOverFull ** 2).toBeCloseTo(1, 12)
    }
  })

  it('cannot be carried past full yield, where nothing else carries', () => {
    const foil = copper(35, 100)
    expect(computePullStrainPct([foil], { insideRadiusMm: 2, loading: 'once', pullNPerMm: 3.6 })).toBeNull()
  })

  it('adds at least what an elastic section would stretch by, and at most what the films alone would', () => {
    const layers = [film('cover', 50, 2.5), copper(18, 80), film('base', 25, 4.83)]
    for (const insideRadiusMm of [1, 3, 10, 100]) {
      for (const pullNPerMm of [0.1, 0.5, 1]) {
        const strainPct = computePullStrainPct(layers, { insideRadiusMm, loading: 'once', pullNPerMm }) ?? Number.NaN
        const films = 50 * 2.5 + 25 * 4.83
        expect(strainPct).toBeGreaterThanOrEqual(((100 * pullNPerMm) / (films + 18 * 110)) * (1 - 1e-9))
        expect(strainPct).toBeLessThanOrEqual((100 * pullNPerMm) / films)
      }
    }
  })
})

/** Helices: a fibre at x from the middle of a strip of twist theta has the length sqrt(1 + theta^2 x^2). */
describe('edge of a twisted strip [exact geometry]', () => {
  it('strains by no more than the bound, whichever fibre keeps its length', () => {
    const layers = [film('film', 50, 4)]
    for (const twistRatePerMm of [0.001, 0.01, 0.04]) {
      const widthMm = 10
      const { edgeStrainPct } = computeStripTwist(layers, { twistRatePerMm, widthMm })
      const exactPct = 100 * (Math.sqrt(1 + (twistRatePerMm * widthMm) ** 2 / 4) - 1)
      expect(exactPct).toBeLessThanOrEqual(MOST_EDGE_STRAIN_RATIO * edgeStrainPct * (1 + 1e-12))
      expect(exactPct).toBeGreaterThan(0.98 * MOST_EDGE_STRAIN_RATIO * edgeStrainPct)
    }
  })

  it('and shear come to one strain: in pure shear gamma / sqrt(3) (von Mises)', () => {
    expect(equivalentStrainPct(0, 3)).toBeCloseTo(Math.sqrt(3), 12)
    expect(equivalentStrainPct(0.7, 0)).toBe(0.7)
    expect(equivalentStrainPct(3, 4 * Math.sqrt(3))).toBeCloseTo(5, 12)
  })
})
