import { addFlexLayers, getConductorLayer, getFilm, getZone, withoutConstruction } from '../changes'
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
    // 260 um above, 234 um below: a tenth, by hand.
    name: 'laminate that is thinner on one side by what is allowed',
    change: (d) => {
      getFilm(d, 'core-bottom').thicknessUm = 174
    },
    expect: 'meets',
  },
  {
    name: 'laminate that is thinner below by a little more',
    change: (d) => {
      getFilm(d, 'core-bottom').thicknessUm = 173
    },
    expect: 'fails',
  },
  {
    name: 'laminate that is thinner above by as much',
    change: (d) => {
      getFilm(d, 'core-top').thicknessUm = 173
    },
    expect: 'fails',
  },
  {
    // 1 - 0.165 / 0.4 is 0.59, by hand; at most 0.6.
    name: 'copper that covers less below, within what is allowed',
    change: (d) => {
      getConductorLayer(d, 'l3').coverageFraction = 0.165
    },
    expect: 'meets',
  },
  {
    name: 'copper that covers less below, by a little more',
    change: (d) => {
      getConductorLayer(d, 'l3').coverageFraction = 0.155
    },
    expect: 'fails',
  },
  {
    name: 'copper that covers less above, by as much',
    change: (d) => {
      getConductorLayer(d, 'l1').coverageFraction = 0.155
    },
    expect: 'fails',
  },
  {
    name: 'a flex zone that is alike nowhere, beside a board that is',
    change: (d) => {
      addFlexLayers(d, 2)
      getConductorLayer(d, 'flex-2').thicknessUm = 35
      getConductorLayer(d, 'flex-2').coverageFraction = 0.05
    },
    expect: 'meets',
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
