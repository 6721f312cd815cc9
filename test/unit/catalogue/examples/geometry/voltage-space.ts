import { getOnly } from '../changes'
import type { ItemExample } from '../item-example'

const conductor = (change: { voltageVolt?: number | null; spaceMm?: number | null; isCovered?: boolean | null }) =>
  ((d) => {
    Object.assign(getOnly(d.features.conductors), change)
  }) satisfies ItemExample['change']

export const voltageSpaceExamples: readonly ItemExample[] = [
  { name: 'covered, at a known voltage', expect: 'meets' },
  { name: 'bare, at the same voltage', change: conductor({ isCovered: false }), expect: 'fails' },
  { name: 'nobody said whether it is covered', change: conductor({ isCovered: null }), expect: 'not-computed' },
  { name: 'wide enough bare or covered', change: conductor({ isCovered: null, spaceMm: 0.3 }), expect: 'meets' },
  { name: 'too near even covered', change: conductor({ isCovered: null, spaceMm: 0.1 }), expect: 'fails' },
  {
    name: 'between two known voltages, as wide as the higher one asks',
    change: conductor({ voltageVolt: 24, spaceMm: 0.16 }),
    expect: 'meets',
  },
  {
    name: 'between two known voltages, and between their spacings',
    change: conductor({ voltageVolt: 24, spaceMm: 0.14 }),
    expect: 'cannot-tell',
  },
  {
    name: 'below the lowest known voltage, and nearer than it asks',
    change: conductor({ voltageVolt: 5, spaceMm: 0.1 }),
    expect: 'cannot-tell',
  },
  { name: 'no voltage within one net', change: conductor({ voltageVolt: 0 }), expect: 'not-applicable' },
  { name: 'voltage not stated', change: conductor({ voltageVolt: null }), expect: 'not-computed' },
  { name: 'at 30 V it is asked here still', change: conductor({ voltageVolt: 30, spaceMm: 0.5 }), expect: 'meets' },
  { name: 'above 30 V another item asks', change: conductor({ voltageVolt: 48 }), expect: 'not-applicable' },
]

export const hazardousVoltageSpaceExamples: readonly ItemExample[] = [
  { name: 'mains rectified, covered', change: conductor({ voltageVolt: 325, spaceMm: 0.8 }), expect: 'meets' },
  { name: 'mains rectified, far too near', change: conductor({ voltageVolt: 325, spaceMm: 0.15 }), expect: 'fails' },
  {
    name: 'above the highest known voltage',
    change: conductor({ voltageVolt: 500, spaceMm: 5 }),
    expect: 'cannot-tell',
  },
  {
    name: 'bare, above the highest known voltage, nearer than that asks',
    change: conductor({ voltageVolt: 48, spaceMm: 0.4, isCovered: false }),
    expect: 'fails',
  },
  {
    name: 'bare, above the highest known voltage',
    change: conductor({ voltageVolt: 48, spaceMm: 2, isCovered: false }),
    expect: 'cannot-tell',
  },
  { name: 'space not stated', change: conductor({ voltageVolt: 48, spaceMm: null }), expect: 'not-computed' },
  { name: 'voltage not stated', change: conductor({ voltageVolt: null }), expect: 'not-computed' },
  { name: 'no hazardous voltage', expect: 'not-applicable' },
  { name: '30 V is none', change: conductor({ voltageVolt: 30 }), expect: 'not-applicable' },
]
