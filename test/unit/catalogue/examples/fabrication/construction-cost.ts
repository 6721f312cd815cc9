import type { ItemExample } from '../item-example'

export const constructionCostExamples: readonly ItemExample[] = [
  { name: 'within a tenth', facts: { costOverCheapestRatio: 1.1 }, expect: 'meets' },
  { name: 'half as dear again', facts: { costOverCheapestRatio: 1.5 }, expect: 'fails' },
  { name: 'not compared', expect: 'needs-judgment' },
]
