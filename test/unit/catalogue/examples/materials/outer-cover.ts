import { getZone, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

export const outerCoverExamples: readonly ItemExample[] = [
  { name: 'mask over both faces of the board', expect: 'meets' },
  {
    name: 'a board without mask',
    change: (design) => {
      const { construction } = design
      const board = getZone(design, 'board')
      const masks = construction.layers.filter(({ kind }) => kind === 'solder-mask').map(({ id }) => id)
      board.presence = board.presence.filter(({ layerId }) => !masks.includes(layerId))
      construction.layers = construction.layers.filter(({ id }) => !masks.includes(id))
    },
    expect: 'fails',
  },
  {
    name: 'a board with mask on one face alone',
    change: (design) => {
      const { construction } = design
      const board = getZone(design, 'board')
      const below = construction.layers.findLast(({ kind }) => kind === 'solder-mask')
      board.presence = board.presence.filter(({ layerId }) => layerId !== below?.id)
      construction.layers = construction.layers.filter((layer) => layer !== below)
    },
    expect: 'fails',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
