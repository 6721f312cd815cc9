import type { ItemExample } from '../item-example'

export const capabilityMatchExamples: readonly ItemExample[] = [
  {
    name: 'all within',
    facts: { capability: { comfortable: 20, stretch: 2, outside: 0, notStated: 1 } },
    expect: 'meets',
  },
  {
    name: 'one outside',
    facts: { capability: { comfortable: 20, stretch: 2, outside: 1, notStated: 0 } },
    expect: 'fails',
  },
  { name: 'no matrix at hand', expect: 'needs-judgment' },
]
