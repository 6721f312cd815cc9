import { getBend } from '../changes'
import type { ItemExample } from '../item-example'

const tried = (isTried: boolean | null) => (design: Parameters<NonNullable<ItemExample['change']>>[0]) => {
  getBend(design, 'hinge').triedOnModel = isTried
}

export const foldOrderModelExamples: readonly ItemExample[] = [
  { name: 'recorded as done', expect: 'needs-judgment' },
  { name: 'recorded as not done of one bend', change: tried(false), expect: 'fails' },
  { name: 'not known of one bend', change: tried(null), expect: 'not-computed' },
  {
    name: 'one bend',
    change: (design) => {
      leaveHinge(design)
    },
    expect: 'not-applicable',
  },
]

/** The fold goes, and what refers to it. */
function leaveHinge(design: Parameters<NonNullable<ItemExample['change']>>[0]): void {
  design.bends = design.bends.filter(({ id }) => id === 'hinge')
  const { conductors, holes, pads, widthSteps, coverlayOpenings, components, stiffeners } = design.features
  for (const conductor of conductors)
    conductor.crossings = conductor.crossings.filter(({ bendId }) => bendId === 'hinge')
  for (const each of [...holes, ...pads, ...widthSteps, ...coverlayOpenings, ...components, ...stiffeners]) {
    if (each.nearestBend !== null && each.nearestBend.bendId !== 'hinge') each.nearestBend = null
  }
}

export const foldModelExamples: readonly ItemExample[] = [
  { name: 'recorded as done', change: leaveHinge, expect: 'needs-judgment' },
  {
    name: 'recorded as not done',
    change: (design) => {
      leaveHinge(design)
      tried(false)(design)
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (design) => {
      leaveHinge(design)
      tried(null)(design)
    },
    expect: 'not-computed',
  },
  { name: 'several bends', expect: 'not-applicable' },
]
