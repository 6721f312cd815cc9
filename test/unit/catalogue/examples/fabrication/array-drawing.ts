import { drawArray } from '../../drawn-plan'
import type { ItemExample } from '../item-example'

export const arrayDrawingExamples: readonly ItemExample[] = [
  { name: 'carries all', expect: 'needs-judgment' },
  {
    name: 'a tab on the flex',
    change: (d) => {
      Object.assign(d.brief.array, { tabsOffFlex: false })
    },
    expect: 'fails',
  },
  {
    name: 'no fiducials',
    change: (d) => {
      Object.assign(d.brief.array, { fiducials: false })
    },
    expect: 'fails',
  },
  {
    name: 'frame open',
    change: (d) => {
      Object.assign(d.brief.array, { frameWidthMm: null })
    },
    expect: 'not-computed',
  },
  {
    name: 'parts and frame that the drawing alone gives',
    change: (d) => {
      drawArray(d, {})
      Object.assign(d.brief.array, { partCount: null, frameWidthMm: null })
    },
    expect: 'needs-judgment',
  },
  {
    name: 'form open',
    change: (d) => {
      d.brief.panelForm = null
    },
    expect: 'not-computed',
  },
  {
    name: 'single parts',
    change: (d) => {
      d.brief.panelForm = 'single-parts'
    },
    expect: 'not-applicable',
  },
]
