import type { Design, Plan } from '@/lib/engine'
import { EMPTY_PLAN } from '@/lib/plan'
import type { ItemExample } from '../item-example'

/** Two columns of as many parts as are stated, in the stated frame. */
function drawArray(design: Design, different: Partial<NonNullable<NonNullable<Plan>['array']>>): void {
  const { partCount, frameWidthMm } = design.brief.array
  design.plan = {
    ...EMPTY_PLAN,
    array: {
      columns: 2,
      rows: (partCount ?? 2) / 2,
      columnStepMm: 150,
      rowStepMm: 20,
      frameMm: frameWidthMm,
      tabs: [],
      fiducials: [{ id: 'corner', atMm: [2, 2] }],
      ...different,
    },
  }
}

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
    name: 'drawn as stated',
    change: (d) => drawArray(d, {}),
    expect: 'needs-judgment',
  },
  {
    name: 'drawn without the fiducials that are stated',
    change: (d) => drawArray(d, { fiducials: [] }),
    expect: 'fails',
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
