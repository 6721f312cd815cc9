import type { ItemExample } from '../item-example'

export const capabilityMatchExamples: readonly ItemExample[] = [
  {
    name: 'all within',
    facts: { capability: { comfortable: 22, stretch: 0, outside: 0, notStated: 0 } },
    expect: 'meets',
  },
  {
    name: 'some only as a stretch',
    facts: {
      capability: { comfortable: 20, stretch: 2, outside: 0, notStated: 0, stretchEntries: ['Conductor width'] },
    },
    expect: 'thin-margin',
  },
  {
    name: 'a matrix that is silent on most entries',
    facts: { capability: { comfortable: 2, stretch: 0, outside: 0, notStated: 20 } },
    expect: 'needs-judgment',
  },
  {
    name: 'one outside',
    facts: { capability: { comfortable: 20, stretch: 2, outside: 1, notStated: 0 } },
    expect: 'fails',
  },
  { name: 'no matrix at hand', expect: 'needs-judgment' },
]
