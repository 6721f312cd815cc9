import type { ItemExample } from '../item-example'

export const fabricatorCurrencyExamples: readonly ItemExample[] = [
  {
    name: 'seen as it stands',
    facts: { changesSinceFabricatorLooked: 0, daysSinceFabricatorLooked: 2 },
    expect: 'meets',
  },
  {
    name: 'three changes since',
    facts: { changesSinceFabricatorLooked: 3, daysSinceFabricatorLooked: 9 },
    expect: 'fails',
  },
  { name: 'never shown', facts: { changesSinceFabricatorLooked: null }, expect: 'needs-judgment' },
]
