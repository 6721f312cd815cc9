import type { ItemExample } from '../item-example'

export const panelFormExamples: readonly ItemExample[] = [
  { name: 'arrays for soldering', expect: 'meets' },
  {
    name: 'single parts for soldering',
    change: (d) => {
      d.brief.panelForm = 'single-parts'
    },
    expect: 'fails',
  },
  {
    name: 'the fabricator decides, and the part is soldered',
    change: (d) => {
      d.brief.panelForm = 'fabricator-decides'
    },
    expect: 'not-computed',
  },
  {
    name: 'the fabricator decides, and nothing is soldered',
    change: (d) => {
      Object.assign(d.brief, { panelForm: 'fabricator-decides', solderedAssembly: false })
    },
    expect: 'meets',
  },
  {
    name: 'not agreed',
    change: (d) => {
      d.brief.panelForm = null
    },
    expect: 'not-computed',
  },
]
