import { describe, expect, it } from 'vitest'
import { evaluate, getConnectorThickness, simulateZoneThickness } from '@/lib/engine'
import { readDemoDesign } from './demo-design-files'

const skua = readDemoDesign('skua-rev-b')
const finger = evaluate(skua).zones.find(({ kind }) => kind === 'finger')
if (finger === undefined) throw new Error('the demo design has a finger zone')
const simulate = (seed: number, draws = 100_000) => {
  const simulation = simulateZoneThickness(skua, finger.zoneId, { seed, draws })
  if (simulation === null) throw new Error('the finger zone varies')
  return simulation
}

describe('finished thickness of many circuits in a finger zone', () => {
  const layersUm = (finger.rootSumSquareUm.high - finger.rootSumSquareUm.low) / 2
  const simulation = simulate(1)

  it('stands on the nominal thickness over the contacts and the root sum square', () => {
    expect(simulation.meanUm).toBeCloseTo(getConnectorThickness(finger).thicknessUm, 1)
    // Plating of the pads varies by 4 um, their finish by 1 um.
    const halfUm = Math.hypot(layersUm, 4, 1)
    // Limits of the root sum square are three standard deviations; 100,000 draws give those to about 0.7 %.
    expect((3 * simulation.standardDeviationUm) / halfUm).toBeCloseTo(1, 1)
  })

  it('counts every draw once in the histogram', () => {
    const { counts, edgesUm } = simulation.histogram
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(100_000)
    expect(edgesUm).toHaveLength(counts.length + 1)
  })

  it('gives each layer the share of the variance that the evaluation gives it', () => {
    const { layerShares } = simulation
    expect(layerShares.reduce((sum, { shareFraction }) => sum + shareFraction, 0)).toBeCloseTo(1, 9)
    const ofLayers = layerShares.filter(({ name }) => name !== 'Finish on the contacts')
    expect(ofLayers).toHaveLength(layerShares.length - 1)
    for (const { layerId, shareFraction } of ofLayers) {
      const layer = finger.layers.find((each) => each.layerId === layerId)
      // The finish and the pads' plating, which the foil's layer carries, take their part of the whole.
      const padsUm = layerId === 'l2' ? 4 : 0
      const varianceUm2 = (layer?.varianceShareFraction ?? Number.NaN) * layersUm ** 2 + padsUm ** 2
      expect(shareFraction).toBeCloseTo(varianceUm2 / (layersUm ** 2 + 4 ** 2 + 1), 1)
    }
    const sorted = [...layerShares].sort((a, b) => b.shareFraction - a.shareFraction)
    expect(layerShares).toEqual(sorted)
  })

  it('gives Cpk against the window of the connector, which the share of draws outside bears out', () => {
    const window = skua.construction.zones.find(({ id }) => id === finger.zoneId)?.connectorWindow
    if (window == null) throw new Error('the finger zone has a window')
    const { meanUm, standardDeviationUm, capability, outsideWindow } = simulation
    const nearestUm = Math.min(window.maxUm - meanUm, meanUm - window.minUm)
    expect(capability?.cpk).toBeCloseTo(nearestUm / (3 * standardDeviationUm), 12)
    const outsidePpm = 1e6 * ((outsideWindow?.belowFraction ?? 0) + (outsideWindow?.aboveFraction ?? 0))
    expect(Math.abs(outsidePpm - (capability?.ppmTotal ?? Number.NaN))).toBeLessThan(200)
  })

  it('has no capability without a window, and no draws where nothing varies', () => {
    expect(simulateZoneThickness(skua, 'hinge', { seed: 1, draws: 1000 })?.capability).toBeNull()
    expect(simulateZoneThickness(skua, 'nowhere', { seed: 1, draws: 1000 })).toBeNull()
  })

  it('gives the same circuits for the same seed, and others for another', () => {
    expect(simulate(7, 5000)).toEqual(simulate(7, 5000))
    expect(simulate(8, 5000).meanUm).not.toBe(simulate(7, 5000).meanUm)
  })
})
