import { type Design, makePresence, UNKNOWN_IMPEDANCE } from '@/lib/engine'
import { getConductorLayer, getOnly } from '../changes'
import type { ItemExample } from '../item-example'

/** A line of 45 um over a plane 25 um below, both through the arm alone, under a coverlay. */
function addLine(design: Design, impedanceOhm: number, tolerancePct = 30): void {
  const arm = design.construction.zones.find(({ id }) => id === 'arm')
  for (const zone of design.construction.zones) {
    if (zone !== arm) zone.presence = zone.presence.filter(({ layerId }) => layerId !== 'l2')
  }
  arm?.presence.push(makePresence('l3', 1))
  Object.assign(getConductorLayer(design, 'l3'), { role: 'plane', planePattern: 'solid', coverageFraction: 1 })
  Object.assign(getOnly(design.features.conductors), {
    widthMm: 0.045,
    impedanceOhm,
    impedance: { tolerancePct, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: null },
  })
}

/** The needs of the conductor stand with its net class instead. */
function moveToClass(design: Design): void {
  const conductor = getOnly(design.features.conductors)
  const { tolerancePct, kind, referenceLayerId, coupon } = conductor.impedance
  const { impedanceOhm } = conductor
  const needs = {
    impedanceOhm,
    tolerancePct,
    kind,
    referenceLayerId,
    coupon,
    crosstalkLimitPct: null,
    riseTimePs: null,
  }
  design.features.netClasses.push({ id: 'fast', name: 'Fast signals', ...needs })
  Object.assign(conductor, { netClassId: 'fast', impedanceOhm: null, impedance: UNKNOWN_IMPEDANCE })
}

export const impedanceValueExamples: readonly ItemExample[] = [
  { name: 'a line of 45 um under a cover, 45 ohm', change: (d) => addLine(d, 45), expect: 'meets' },
  { name: 'the same with a band of 5 %', change: (d) => addLine(d, 45, 5), expect: 'thin-margin' },
  { name: 'far from what is asked for', change: (d) => addLine(d, 90), expect: 'fails' },
  {
    name: 'width open',
    change: (d) => {
      addLine(d, 45)
      getOnly(d.features.conductors).widthMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a pair whose space is open',
    change: (d) => {
      addLine(d, 80)
      Object.assign(getOnly(d.features.conductors), { spaceMm: null })
      getOnly(d.features.conductors).impedance.kind = 'pair'
    },
    expect: 'not-computed',
  },
  {
    name: 'as asked for, at a frequency whose wavelength is no longer long against its field',
    change: (d) => {
      addLine(d, 45)
      getOnly(d.features.conductors).frequencyMhz = 400_000
    },
    expect: 'cannot-tell',
  },
  {
    name: 'over a hatched plane',
    change: (d) => {
      addLine(d, 45)
      getConductorLayer(d, 'l3').planePattern = 'hatched'
      const presence = d.construction.zones
        .find(({ id }) => id === 'arm')
        ?.presence.find(({ layerId }) => layerId === 'l3')
      Object.assign(presence ?? {}, { coverageFraction: null, hatch: { barMm: 0.2, pitchMm: 0.5, angleDeg: 45 } })
    },
    expect: 'cannot-tell',
  },
  {
    name: 'over a hatched plane, and too high even over a whole one',
    change: (d) => {
      addLine(d, 25)
      getConductorLayer(d, 'l3').planePattern = 'hatched'
      const presence = d.construction.zones
        .find(({ id }) => id === 'arm')
        ?.presence.find(({ layerId }) => layerId === 'l3')
      Object.assign(presence ?? {}, { coverageFraction: null, hatch: { barMm: 0.2, pitchMm: 0.5, angleDeg: 45 } })
    },
    expect: 'fails',
  },
  {
    name: 'a hatch of which bar and pitch are open',
    change: (d) => {
      addLine(d, 45)
      getConductorLayer(d, 'l3').planePattern = 'hatched'
    },
    expect: 'not-computed',
  },
  {
    name: 'a split plane',
    change: (d) => {
      addLine(d, 45)
      getConductorLayer(d, 'l3').planePattern = 'split'
    },
    expect: 'not-computed',
  },
  {
    name: 'a split plane with a gap under the line',
    change: (d) => {
      addLine(d, 45)
      getConductorLayer(d, 'l3').planePattern = 'split'
      getOnly(d.features.conductors).impedance.referenceUnbroken = false
    },
    expect: 'cannot-tell',
  },
  {
    name: 'a split plane that goes on under the line',
    change: (d) => {
      addLine(d, 45)
      getConductorLayer(d, 'l3').planePattern = 'split'
      getOnly(d.features.conductors).impedance.referenceUnbroken = true
    },
    expect: 'meets',
  },
  {
    name: 'a need that the net class states',
    change: (d) => {
      addLine(d, 45)
      moveToClass(d)
    },
    expect: 'meets',
  },
  {
    name: 'a need of the net class that the build misses',
    change: (d) => {
      addLine(d, 90)
      moveToClass(d)
    },
    expect: 'fails',
  },
  { name: 'no impedance stated', expect: 'not-applicable' },
]
