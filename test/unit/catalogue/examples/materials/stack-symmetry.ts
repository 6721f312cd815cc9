import { getConductorLayer, getFilm, getZone, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

export const stackSymmetryExamples: readonly ItemExample[] = [
  { name: 'mirrored laminate, prepreg and copper', expect: 'meets' },
  {
    name: 'a plane against a few conductors',
    change: (d) => {
      getConductorLayer(d, 'l1').coverageFraction = 1
      getConductorLayer(d, 'l3').coverageFraction = 0.05
    },
    expect: 'fails',
  },
  {
    name: 'half the laminate on one side',
    change: (d) => {
      getFilm(d, 'core-bottom').thicknessUm = 100
    },
    expect: 'fails',
  },
  {
    name: 'laminate on one side only',
    change: (d) => {
      const board = getZone(d, 'board')
      board.presence = board.presence.filter(({ layerId }) => layerId !== 'core-bottom')
      d.construction.layers = d.construction.layers.filter(({ id }) => id !== 'core-bottom')
    },
    expect: 'fails',
  },
  {
    name: 'both laminates and both prepregs above the flexible core',
    change: (d) => {
      const { layers } = d.construction
      const moved = layers.filter(({ id }) => id === 'prepreg-bottom' || id === 'core-bottom')
      const others = layers.filter((layer) => !moved.includes(layer))
      const after = others.findIndex(({ id }) => id === 'prepreg-top') + 1
      d.construction.layers = [...others.slice(0, after), ...moved, ...others.slice(after)]
    },
    expect: 'fails',
  },
  {
    name: 'copper of twice the weight on one side',
    change: (d) => {
      getConductorLayer(d, 'l3').thicknessUm = 70
    },
    expect: 'fails',
  },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
