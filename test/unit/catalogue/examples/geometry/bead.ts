import type { ItemExample } from '../item-example'

export const beadExamples: readonly ItemExample[] = [
  { name: 'called out', expect: 'meets' },
  {
    name: 'ruled out',
    change: (d) => {
      Object.assign(d.features.rigidEdges, { bead: 'ruled-out' })
    },
    expect: 'meets',
  },
  {
    name: 'too wide',
    change: (d) => {
      Object.assign(d.features.rigidEdges, { beadWidthMm: 4 })
    },
    expect: 'fails',
  },
  {
    name: 'too narrow',
    change: (d) => {
      Object.assign(d.features.rigidEdges, { beadWidthMm: 0.3 })
    },
    expect: 'fails',
  },
  {
    name: 'a dash for the material',
    change: (d) => {
      Object.assign(d.features.rigidEdges, { beadMaterial: '-' })
    },
    expect: 'not-computed',
  },
  {
    name: 'nobody said',
    change: (d) => {
      Object.assign(d.features.rigidEdges, { bead: null })
    },
    expect: 'not-computed',
  },
]
