import type { ItemExample } from '../item-example'

export const carrierExamples: readonly ItemExample[] = [
  { name: 'the frame of the array', expect: 'needs-judgment' },
  {
    name: 'nothing',
    change: (d) => {
      Object.assign(d.brief.assembly, { carrier: 'nothing' })
    },
    expect: 'fails',
  },
  {
    name: 'a frame that single parts do not have',
    change: (d) => {
      d.brief.panelForm = 'single-parts'
    },
    expect: 'fails',
  },
  {
    name: 'not stated',
    change: (d) => {
      Object.assign(d.brief.assembly, { carrier: null })
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
