import type { Plan } from '@/lib/engine'
import { drawPlan } from '../../drawn-plan'
import type { ItemExample } from '../item-example'

/** The arm in two areas along its length; gives the place where a line across it meets their border. */
function divideAlong(plan: Plan, x: number): [number, number] {
  const ends: [number, number][] = [
    [40, 5],
    [100, 5],
  ]
  plan.dividingLines.push({ id: 'along', name: 'along', nodes: ends.map((atMm) => ({ atMm, viaMm: null })) })
  plan.areas.push({ id: 'lower', name: 'Lower', zoneId: 'arm', markMm: [50, 2] })
  return [x, 5]
}

export const bendOnPlanExamples: readonly ItemExample[] = [
  { name: 'not drawn', expect: 'not-applicable' },
  {
    name: 'three lines across the arm',
    change: (d) => {
      drawPlan(d)
    },
    expect: 'meets',
  },
  {
    name: 'a bend without a line',
    change: (d) => {
      drawPlan(d).bendLines.pop()
    },
    expect: 'not-computed',
  },
  {
    name: 'a line on the board',
    change: (d) => {
      const [line] = drawPlan(d).bendLines
      if (line !== undefined) Object.assign(line, { fromMm: [20, 0], toMm: [20, 12] })
    },
    expect: 'fails',
  },
  {
    name: 'a line that stops short of an edge',
    change: (d) => {
      const [line] = drawPlan(d).bendLines
      if (line !== undefined) line.toMm = [55, 9]
    },
    expect: 'fails',
  },
  {
    name: 'a line over a window, from edge to edge',
    change: (d) => {
      const plan = drawPlan(d)
      const [line] = plan.bendLines
      if (line === undefined) return
      const [x] = line.fromMm
      const corners: [number, number][] = [
        [x - 0.5, 4],
        [x + 0.5, 4],
        [x + 0.5, 8],
        [x - 0.5, 8],
      ]
      plan.cutOuts.push({
        id: 'window',
        name: 'Window',
        nodes: corners.map((atMm) => ({ atMm, viaMm: null })),
      })
    },
    expect: 'meets',
  },
  {
    name: 'a line from an edge to a border, along which another area lies',
    change: (d) => {
      const plan = drawPlan(d)
      const [line] = plan.bendLines
      if (line !== undefined) line.toMm = divideAlong(plan, line.fromMm[0])
    },
    expect: 'fails',
  },
  {
    name: 'a line over two areas',
    change: (d) => {
      const plan = drawPlan(d)
      const [line] = plan.bendLines
      if (line !== undefined) divideAlong(plan, line.fromMm[0])
    },
    expect: 'fails',
  },
]
