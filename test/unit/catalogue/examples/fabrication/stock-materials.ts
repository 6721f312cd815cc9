import type { ItemExample } from '../item-example'

export const stockMaterialsExamples: readonly ItemExample[] = [
  {
    name: 'one to order, in time',
    facts: { stock: { onShelf: 6, toOrder: 1, unknown: 0 }, orderSlackDays: 20 },
    expect: 'meets',
  },
  { name: 'too late', facts: { stock: { onShelf: 6, toOrder: 1, unknown: 0 }, orderSlackDays: -3 }, expect: 'fails' },
  { name: 'stock not known', expect: 'needs-judgment' },
]
