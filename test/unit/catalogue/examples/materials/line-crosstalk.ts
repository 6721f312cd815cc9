import { type Design, makePresence } from '@/lib/engine'
import { getConductorLayer, getOnly } from '../changes'
import type { ItemExample } from '../item-example'

/** A line of 45 um over a plane 25 um below, both through the arm alone, with another line beside it. */
function addLine(design: Design, spaceMm: number | null): void {
  const arm = design.construction.zones.find(({ id }) => id === 'arm')
  for (const zone of design.construction.zones) {
    if (zone !== arm) zone.presence = zone.presence.filter(({ layerId }) => layerId !== 'l2')
  }
  arm?.presence.push(makePresence('l3', 1))
  Object.assign(getConductorLayer(design, 'l3'), { role: 'plane', planePattern: 'solid', coverageFraction: 1 })
  Object.assign(getOnly(design.features.conductors), {
    widthMm: 0.045,
    spaceMm,
    impedanceOhm: 45,
    impedance: { tolerancePct: 30, kind: 'single', referenceLayerId: 'l3', coupon: true, referenceUnbroken: null },
  })
}

function addClass(design: Design, needs: { crosstalkLimitPct: number | null; riseTimePs: number | null }): void {
  const others = { impedanceOhm: null, tolerancePct: null, kind: null, referenceLayerId: null, coupon: null }
  design.features.netClasses.push({ id: 'fast', name: 'Fast signals', ...others, ...needs })
  getOnly(design.features.conductors).netClassId = 'fast'
}

export const lineCrosstalkExamples: readonly ItemExample[] = [
  { name: 'lines 150 um apart', change: (d) => addLine(d, 0.15), expect: 'meets' },
  { name: 'lines 30 um apart', change: (d) => addLine(d, 0.03), expect: 'fails' },
  {
    name: 'lines 30 um apart, whose net class allows more',
    change: (d) => {
      addLine(d, 0.03)
      addClass(d, { crosstalkLimitPct: 40, riseTimePs: null })
    },
    expect: 'meets',
  },
  {
    name: 'lines 150 um apart, whose net class allows next to nothing',
    change: (d) => {
      addLine(d, 0.15)
      addClass(d, { crosstalkLimitPct: 0.01, riseTimePs: null })
    },
    expect: 'fails',
  },
  {
    name: 'lines 30 um apart, too short for the edge of their net class',
    change: (d) => {
      addLine(d, 0.03)
      getOnly(d.features.conductors).lengthMm = 20
      addClass(d, { crosstalkLimitPct: null, riseTimePs: 20_000 })
    },
    expect: 'meets',
  },
  { name: 'space open', change: (d) => addLine(d, null), expect: 'not-computed' },
  {
    name: 'a line on the layer above, whose offset nobody states',
    change: (d) => {
      addLine(d, 0.15)
      const arm = d.construction.zones.find(({ id }) => id === 'arm')
      arm?.presence.push(makePresence('l1', 0.5))
      const line = getOnly(d.features.conductors)
      d.features.conductors.push({
        ...structuredClone(line),
        id: 'upper',
        name: 'Upper',
        layerId: 'l1',
        impedanceOhm: null,
      })
    },
    expect: 'cannot-tell',
  },
  {
    name: 'a pair over a hatched plane, and a line above it that would be allowed over a whole one',
    change: (d) => {
      addLine(d, 0.15)
      const arm = d.construction.zones.find(({ id }) => id === 'arm')
      arm?.presence.push(makePresence('l1', 0.5))
      const line = getOnly(d.features.conductors)
      line.impedance.kind = 'pair'
      addClass(d, { crosstalkLimitPct: 80, riseTimePs: null })
      d.features.conductors.push({
        ...structuredClone(line),
        id: 'upper',
        name: 'Upper',
        layerId: 'l1',
        netClassId: null,
        impedanceOhm: null,
      })
      getConductorLayer(d, 'l3').planePattern = 'hatched'
      const presence = arm?.presence.find(({ layerId }) => layerId === 'l3')
      Object.assign(presence ?? {}, { coverageFraction: null, hatch: { barMm: 0.2, pitchMm: 0.5, angleDeg: 45 } })
    },
    expect: 'cannot-tell',
  },
  {
    name: 'a line of no stated width on the layer above',
    change: (d) => {
      addLine(d, 0.15)
      d.construction.zones.find(({ id }) => id === 'arm')?.presence.push(makePresence('l1', 0.5))
      const line = structuredClone(getOnly(d.features.conductors))
      d.features.conductors.push({
        ...line,
        id: 'upper',
        name: 'Upper',
        layerId: 'l1',
        impedanceOhm: null,
        widthMm: null,
      })
    },
    expect: 'not-computed',
  },
  {
    name: 'a layer of conductors above, of which none is listed',
    change: (d) => {
      addLine(d, 0.15)
      d.construction.zones.find(({ id }) => id === 'arm')?.presence.push(makePresence('l1', 0.5))
    },
    expect: 'not-computed',
  },
  { name: 'no impedance stated', expect: 'not-applicable' },
]
