import type { ItemExample } from '../item-example'

export const flameClassExamples: readonly ItemExample[] = [
  { name: 'none asked for', expect: 'meets' },
  {
    name: 'use D without a class',
    change: (d) => {
      d.brief.installationUses = ['use-d']
    },
    expect: 'fails',
  },
  {
    name: 'use open',
    change: (d) => {
      d.brief.installationUses = []
    },
    expect: 'not-computed',
  },
  {
    name: 'a class that the fabricator holds',
    change: (d) => {
      Object.assign(d.brief.acceptance, { flameClass: 'vtm-0', flameClassHeld: true })
    },
    expect: 'needs-judgment',
  },
  {
    name: 'a class that nobody asked the fabricator about',
    change: (d) => {
      d.brief.acceptance.flameClass = 'vtm-0'
    },
    expect: 'not-computed',
  },
  {
    name: 'a class that the fabricator does not hold',
    change: (d) => {
      Object.assign(d.brief.acceptance, { flameClass: 'v-0', flameClassHeld: false })
    },
    expect: 'fails',
  },
  {
    name: 'open',
    change: (d) => {
      d.brief.acceptance.flameClass = null
    },
    expect: 'not-computed',
  },
]
