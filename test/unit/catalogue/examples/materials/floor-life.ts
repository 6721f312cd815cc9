import type { ItemExample } from '../item-example'

export const floorLifeExamples: readonly ItemExample[] = [
  { name: 'bake in numbers', expect: 'meets' },
  {
    name: 'dry pack in numbers',
    change: (d) => {
      Object.assign(d.brief.assembly, { drying: 'dry-pack', bakeDegC: null, bakeHours: null })
    },
    expect: 'meets',
  },
  {
    name: 'to stay dry in a pack that is not dry',
    change: (d) => {
      Object.assign(d.brief.assembly, { drying: 'dry-pack', isDryPacked: false })
    },
    expect: 'fails',
  },
  {
    name: 'hotter than any guide prints',
    change: (d) => {
      Object.assign(d.brief.assembly, { bakeDegC: 180 })
    },
    expect: 'cannot-tell',
  },
  {
    name: 'soldered two days later',
    change: (d) => {
      Object.assign(d.brief.assembly, { toSolderHours: 48 })
    },
    expect: 'cannot-tell',
  },
  {
    name: 'bake time open, whatever the text says',
    change: (d) => {
      Object.assign(d.brief.assembly, { bakeHours: null })
      d.brief.bakeBeforeAssembly = '-'
    },
    expect: 'not-computed',
  },
  {
    name: 'nobody set it',
    change: (d) => {
      Object.assign(d.brief.assembly, { dryingSetBy: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'nothing is soldered',
    change: (d) => {
      d.brief.solderedAssembly = false
    },
    expect: 'not-applicable',
  },
]
