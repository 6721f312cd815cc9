import type { ArtworkNetsFacts } from '@/lib/artwork'
import { makeCopper, makeFacts, makeFile } from '../../../artwork/fact-factory'
import type { ItemExample } from '../item-example'

const NONE = { count: 0, first: [] }
const place = (name: string, x: number) => ({ name, atMm: [x, 1] as [number, number] })

function withNets(change: Partial<ArtworkNetsFacts['sources'][number]>, nets: Partial<ArtworkNetsFacts> = {}) {
  const source = {
    fileName: 'part.ipc',
    netCount: 12,
    placeCount: 40,
    onCopperCount: 40,
    firstOffCopper: null,
    unnamed: NONE,
    openCount: 0,
    shortCount: 0,
    opens: [],
    shorts: [],
    ...change,
  }
  const artwork = makeFacts(makeCopper(2))
  return {
    artworkFileCount: 3,
    artwork: {
      ...artwork,
      nets: { sources: [source], loose: NONE, platedHoleCount: 9, unknownHoleCount: 0, unorderedReason: null, ...nets },
    },
  }
}
const open = { openCount: 1, opens: [{ net: 'GND', parts: 2, places: [place('J1-3', 1), place('U1-4', 9)] }] }

export const netlistExamples: readonly ItemExample[] = [
  { name: 'every net hangs together by itself', facts: withNets({}), expect: 'meets' },
  { name: 'a net in two pieces', facts: withNets(open), expect: 'fails' },
  {
    name: 'two nets that hang together',
    facts: withNets({
      shortCount: 1,
      shorts: [{ nets: ['GND', 'VCC'], places: [place('J1-3', 1), place('J1-4', 2)] }],
    }),
    expect: 'fails',
  },
  {
    name: 'a net in two pieces that holes may join',
    facts: withNets(open, { unknownHoleCount: 3 }),
    expect: 'cannot-tell',
  },
  { name: 'a netlist of another part', facts: withNets({ onCopperCount: 3 }), expect: 'cannot-tell' },
  {
    name: 'copper and nothing that names a net',
    facts: { artworkFileCount: 2, artwork: makeFacts(makeCopper(2)) },
    expect: 'fails',
  },
  {
    name: 'a file that nobody could read, which may be the netlist',
    facts: { artworkFileCount: 3, artwork: makeFacts([...makeCopper(2), makeFile('part.net', { kind: 'other' })]) },
    expect: 'cannot-tell',
  },
  { name: 'no artwork yet', expect: 'not-computed' },
]
