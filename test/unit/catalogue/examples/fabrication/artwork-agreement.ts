import type { ItemExample } from '../item-example'

export const artworkAgreementExamples: readonly ItemExample[] = [
  { name: 'no difference', facts: { artworkFileCount: 6, artworkDifferences: 0 }, expect: 'needs-judgment' },
  {
    name: 'artwork that nobody compared',
    facts: { artworkFileCount: 6, artworkDifferences: null },
    expect: 'needs-judgment',
  },
  { name: 'a layer too many', facts: { artworkFileCount: 6, artworkDifferences: 1 }, expect: 'fails' },
  { name: 'no artwork yet', expect: 'needs-judgment' },
]
