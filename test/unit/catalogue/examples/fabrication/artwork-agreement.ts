import { makeCopper, makeFacts } from '../../../artwork/fact-factory'
import type { ItemExample } from '../item-example'

export const artworkAgreementExamples: readonly ItemExample[] = [
  {
    name: 'as many layers',
    facts: { artworkFileCount: 3, artwork: makeFacts(makeCopper(3)) },
    expect: 'cannot-tell',
  },
  { name: 'artwork that nobody read', facts: { artworkFileCount: 6, artwork: null }, expect: 'needs-judgment' },
  { name: 'a layer too many', facts: { artworkFileCount: 4, artwork: makeFacts(makeCopper(4)) }, expect: 'fails' },
  { name: 'no artwork yet', expect: 'needs-judgment' },
]
