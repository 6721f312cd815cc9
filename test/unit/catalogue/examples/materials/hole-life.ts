import { getOnly, getZone } from '../changes'
import type { ItemExample } from '../item-example'

export const holeLifeExamples: readonly ItemExample[] = [
  { name: 'a few hundred mild cycles', expect: 'meets' },
  {
    name: 'as many cycles as a test of space hardware has, over a wide range',
    change: (d) => {
      Object.assign(d.brief, { cycleMinDegC: -65, cycleMaxDegC: 130, temperatureCycles: 20_000 })
    },
    expect: 'fails',
  },
  {
    name: 'cycles into the glass transition',
    change: (d) => {
      d.brief.cycleMaxDegC = 140
    },
    expect: 'cannot-tell',
  },
  {
    name: 'operation is hotter than the cycles',
    change: (d) => {
      Object.assign(d.brief, { operatingMinDegC: 0, operatingMaxDegC: (d.brief.cycleMaxDegC ?? 0) + 1 })
    },
    expect: 'cannot-tell',
  },
  {
    name: 'operation is colder than the cycles, which are too many as they are',
    change: (d) => {
      Object.assign(d.brief, { operatingMinDegC: -90, cycleMinDegC: -65, cycleMaxDegC: 130, temperatureCycles: 20_000 })
    },
    expect: 'fails',
  },
  {
    name: 'nobody rated the plating, and even poor plating lasts',
    change: (d) => {
      Object.assign(d.brief, { holePlatingQuality: null, temperatureCycles: 2 })
    },
    expect: 'meets',
  },
  {
    name: 'nobody rated the plating, and not even the best lasts',
    change: (d) => {
      Object.assign(d.brief, { holePlatingQuality: null, temperatureCycles: 10_000_000 })
    },
    expect: 'fails',
  },
  {
    name: 'nobody rated the plating, and it decides',
    change: (d) => {
      Object.assign(d.brief, { holePlatingQuality: null, temperatureCycles: 3_000 })
    },
    expect: 'not-computed',
  },
  {
    name: 'nobody measured the stack',
    change: (d) => {
      getZone(d, 'board').throughExpansionPpmPerC = null
    },
    expect: 'not-computed',
  },
  {
    name: 'two cycles on a wall of 5 um: the relation knows nothing of such walls',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 5
      d.brief.temperatureCycles = 2
    },
    expect: 'cannot-tell',
  },
  {
    name: 'nobody rated the plating, and the wall is 5 um',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 5
      Object.assign(d.brief, { holePlatingQuality: null, temperatureCycles: 2 })
    },
    expect: 'cannot-tell',
  },
  {
    name: 'many cycles on a wall of 5 um: too short even for a whole wall',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 5
      d.brief.temperatureCycles = 10_000_000
    },
    expect: 'fails',
  },
  {
    name: 'a hole without plating has no wall to crack, whatever is not stated of it',
    change: (d) => {
      d.features.holes.push({ ...getOnly(d.features.holes), id: 'bare', name: 'Bare', plated: false, drillMm: null })
    },
    expect: 'meets',
  },
  {
    name: 'a second hole of which nobody said whether it is plated',
    change: (d) => {
      d.features.holes.push({ ...getOnly(d.features.holes), id: 'open', name: 'Open', plated: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'a second hole of which nobody stated the plating',
    change: (d) => {
      d.features.holes.push({ ...getOnly(d.features.holes), id: 'open', name: 'Open', wallPlatingUm: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'plating that leaves a thread of a hole',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 149
    },
    expect: 'meets',
  },
  {
    name: 'no plating on the wall of a plated hole',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 0
    },
    expect: 'cannot-tell',
  },
  {
    name: 'as much plating as is said to be enough, through few cycles',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 15
      d.brief.temperatureCycles = 20
    },
    expect: 'meets',
  },
  {
    name: 'a micrometre less, through as many',
    change: (d) => {
      getOnly(d.features.holes).wallPlatingUm = 14
      d.brief.temperatureCycles = 20
    },
    expect: 'cannot-tell',
  },
  {
    name: 'cycles as wide as operation, to the degree',
    change: (d) => {
      Object.assign(d.brief, { operatingMinDegC: d.brief.cycleMinDegC, operatingMaxDegC: d.brief.cycleMaxDegC })
    },
    expect: 'meets',
  },
  {
    name: 'operation of which nobody stated the ends',
    change: (d) => {
      Object.assign(d.brief, { operatingMinDegC: null, operatingMaxDegC: null })
    },
    expect: 'meets',
  },
  {
    // 732 to 2762 cycles over tolerances and constants, as computed with the handbook's relation.
    name: 'cycles that the shortest life does not reach',
    change: (d) => {
      d.brief.temperatureCycles = 800
    },
    expect: 'thin-margin',
  },
  {
    name: 'cycles of half the width last many times as long',
    change: (d) => {
      Object.assign(d.brief, {
        cycleMinDegC: 0,
        cycleMaxDegC: 45,
        operatingMinDegC: 0,
        operatingMaxDegC: 45,
        temperatureCycles: 5000,
      })
    },
    expect: 'meets',
  },
  {
    name: 'the cycles are not stated',
    change: (d) => {
      d.brief.temperatureCycles = null
    },
    expect: 'not-computed',
  },
  {
    name: 'a hole through a zone with one conductor layer',
    change: (d) => {
      getOnly(d.features.holes).zoneId = 'arm'
      Object.assign(getZone(d, 'arm'), { throughExpansionPpmPerC: 60, throughModulusGpa: 4, glassTransitionDegC: 150 })
    },
    expect: 'cannot-tell',
  },
  {
    name: 'a second hole of which nobody stated the drill',
    change: (d) => {
      d.features.holes.push({ ...getOnly(d.features.holes), id: 'open', name: 'Open', drillMm: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'a second hole of no zone',
    change: (d) => {
      d.features.holes.push({ ...getOnly(d.features.holes), id: 'open', name: 'Open', zoneId: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'operation is colder than the cycles, which last',
    change: (d) => {
      d.brief.operatingMinDegC = (d.brief.cycleMinDegC ?? 0) - 1
    },
    expect: 'cannot-tell',
  },
]
