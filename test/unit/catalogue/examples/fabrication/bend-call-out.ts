import { getBend, makeBendsFolds } from '../changes'
import type { ItemExample } from '../item-example'

export const bendCallOutExamples: readonly ItemExample[] = [
  { name: 'called out', expect: 'needs-judgment' },
  {
    name: 'not on the drawing',
    change: (d) => {
      d.features.routing.bendsCalledOutOnDrawing = false
    },
    expect: 'fails',
  },
  {
    name: 'cycles open',
    change: (d) => {
      getBend(d, 'hinge').requiredCycles = null
    },
    expect: 'not-computed',
  },
  {
    name: 'lowest temperature of what moves open',
    change: (d) => {
      d.brief.operatingMinDegC = null
    },
    expect: 'not-computed',
  },
  {
    name: 'highest temperature of what moves open',
    change: (d) => {
      d.brief.operatingMaxDegC = null
    },
    expect: 'not-computed',
  },
  {
    name: 'temperatures open, and nothing moves',
    change: (d) => {
      makeBendsFolds(d)
      Object.assign(d.brief, { operatingMinDegC: null, operatingMaxDegC: null })
    },
    expect: 'needs-judgment',
  },
]
