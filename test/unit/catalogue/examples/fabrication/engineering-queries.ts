import type { ItemExample } from '../item-example'

export const engineeringQueriesExamples: readonly ItemExample[] = [
  {
    name: 'all answered',
    facts: { openEngineeringQueries: 0, openMustChangeThreads: 0, daysSinceFabricatorLooked: 3 },
    expect: 'meets',
  },
  {
    name: 'none open, and nobody has looked',
    facts: { openEngineeringQueries: 0, daysSinceFabricatorLooked: null },
    expect: 'needs-judgment',
  },
  { name: 'one open', facts: { openEngineeringQueries: 1 }, expect: 'fails' },
  {
    name: 'no query, and a must-change that is open',
    facts: { openEngineeringQueries: 0, openMustChangeThreads: 1, daysSinceFabricatorLooked: 3 },
    expect: 'fails',
  },
  { name: 'outside a review', expect: 'needs-judgment' },
]
