import type { ItemExample } from '../item-example'

export const engineeringQueriesExamples: readonly ItemExample[] = [
  { name: 'all answered', facts: { openEngineeringQueries: 0, openMustChangeThreads: 0 }, expect: 'meets' },
  { name: 'one open', facts: { openEngineeringQueries: 1 }, expect: 'fails' },
  { name: 'outside a review', expect: 'needs-judgment' },
]
