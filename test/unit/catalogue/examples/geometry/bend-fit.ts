import { drawPlan } from '../../drawn-plan'
import { getBend, getZone } from '../changes'
import type { ItemExample } from '../item-example'

export const bendFitExamples: readonly ItemExample[] = [
  { name: '41 mm of arcs in 60 mm', expect: 'meets' },
  {
    name: '127 mm of arc in 60 mm',
    change: (d) => {
      Object.assign(getBend(d, 'hinge'), { insideRadiusMm: 20, angleDeg: 360 })
    },
    expect: 'fails',
  },
  {
    name: 'arcs that fit with straight film at nominal radius alone',
    change: (d) => {
      getZone(d, 'arm').lengthMm = 46.5
    },
    expect: 'thin-margin',
  },
  {
    name: 'arcs that leave straight film at one end alone',
    change: (d) => {
      getZone(d, 'arm').lengthMm = 44.5
    },
    expect: 'cannot-tell',
  },
  {
    name: 'arcs from edge to edge',
    change: (d) => {
      getZone(d, 'arm').lengthMm = 42
    },
    expect: 'fails',
  },
  {
    name: 'an axis longer than the part is wide',
    change: (d) => {
      getBend(d, 'fold').axisLengthMm = 12.5
    },
    expect: 'fails',
  },
  {
    name: 'length of the zone open',
    change: (d) => {
      getZone(d, 'arm').lengthMm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'bands that are drawn within their area',
    change: (d) => {
      drawPlan(d)
    },
    expect: 'meets',
  },
  {
    name: 'a band that is drawn into the board',
    change: (d) => {
      const plan = drawPlan(d)
      const bendLines = plan.bendLines.map((line): typeof line =>
        line.id === 'hinge' ? { ...line, fromMm: [44, 0], toMm: [44, 12] } : line,
      )
      d.plan = { ...plan, bendLines }
    },
    expect: 'fails',
  },
]
