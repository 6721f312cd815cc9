import { drawPlan } from '../../drawn-plan'
import type { ItemExample } from '../item-example'

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
]
