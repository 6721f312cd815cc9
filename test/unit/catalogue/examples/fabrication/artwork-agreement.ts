import type { ItemExample } from '../item-example'

export const artworkAgreementExamples: readonly ItemExample[] = [
  { name: 'no difference', facts: { artworkFileCount: 6, artworkDifferences: 0 }, expect: 'meets' },
  { name: 'a layer too many', facts: { artworkFileCount: 6, artworkDifferences: 1 }, expect: 'fails' },
  { name: 'no artwork yet', expect: 'needs-judgment' },
]
