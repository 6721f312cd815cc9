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
  // No person's word stands against it: a judgment would take "meets".
  { name: 'shared with nobody', facts: { fabricatorsInvited: 0, changesSinceFabricatorLooked: null }, expect: 'fails' },
  { name: 'never shown', facts: { changesSinceFabricatorLooked: null }, expect: 'needs-judgment' },
]
