import type { Design } from '@/lib/engine'
import type { ItemExample } from '../item-example'

/** Bends that stand still: one that moves near an edge makes it an item of its own. */
const standStill = (d: Design) => {
  for (const bend of d.bends) Object.assign(bend, { use: 'fold-once', requiredCycles: null })
}

const EXAMPLES: readonly ItemExample[] = [
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

export const beadExamples: readonly ItemExample[] = [
  ...EXAMPLES.map((example) => ({
    ...example,
    change: (d: Design) => {
      standStill(d)
      example.change?.(d)
    },
  })),
  { name: 'a bend that moves near the edge', expect: 'not-applicable' },
]

export const beadBesideMovingBendExamples: readonly ItemExample[] = [
  ...EXAMPLES,
  { name: 'nothing moves', change: standStill, expect: 'not-applicable' },
  {
    name: 'it moves, far from every edge',
    change: (d) => {
      for (const bend of d.bends) bend.distanceToRigidMm = 40
    },
    expect: 'not-applicable',
  },
  {
    name: 'how near it moves is not known, and nobody said',
    change: (d) => {
      for (const bend of d.bends) bend.distanceToRigidMm = null
      d.features.rigidEdges.bead = null
    },
    expect: 'not-computed',
  },
]
