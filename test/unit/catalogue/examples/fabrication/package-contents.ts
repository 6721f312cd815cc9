import type { ArtworkFileFacts } from '@/lib/artwork'
import type { Design } from '@/lib/engine'
import { makeCopper, makeFacts, makeFile } from '../../../artwork/fact-factory'
import { drawPlan } from '../../drawn-plan'
import type { ItemExample } from '../item-example'

const plain = (name: string, role: ArtworkFileFacts['role']['role']) =>
  makeFile(name, { role: { role, from: 'attribute', reason: 'its attribute says so' } })

const FILES = [
  ...makeCopper(3),
  plain('outline.gbr', 'profile'),
  plain('cover-top.gbr', 'coverlay'),
  plain('mask-top.gbr', 'solder mask'),
  plain('mask-bottom.gbr', 'solder mask'),
  plain('stiffener.gbr', 'stiffener'),
  plain('legend.gbr', 'legend'),
  plain('holes.drl', 'holes'),
]

const given = (files: readonly ArtworkFileFacts[]) => ({ artworkFileCount: files.length, artwork: makeFacts(files) })
const without = (...names: readonly string[]) => given(FILES.filter(({ name }) => !names.includes(name)))
const change = (d: Design) => drawPlan(d)

export const packageContentsExamples: readonly ItemExample[] = [
  { name: 'each file, and bends drawn in plan', change, facts: given(FILES), expect: 'meets' },
  { name: 'no file of one conductor layer', change, facts: without('L2.gbr'), expect: 'fails' },
  { name: 'no outline', change, facts: without('outline.gbr'), expect: 'fails' },
  { name: 'no coverlay', change, facts: without('cover-top.gbr'), expect: 'fails' },
  { name: 'no holes', change, facts: without('holes.drl'), expect: 'fails' },
  { name: 'nothing says where the bends lie', facts: given(FILES), expect: 'fails' },
  {
    name: 'a drawing that may show where the bends lie',
    facts: given([...FILES, plain('drawing.gbr', 'drawing')]),
    expect: 'cannot-tell',
  },
  { name: 'one solder mask for two', change, facts: without('mask-top.gbr'), expect: 'cannot-tell' },
  {
    name: 'a file that nobody knows where one is missing',
    change,
    facts: given([...FILES.filter(({ name }) => name !== 'outline.gbr'), makeFile('x.gbr')]),
    expect: 'cannot-tell',
  },
  {
    name: 'a list of holes that nobody filled or marked',
    change: (d) => {
      drawPlan(d)
      d.features.holes = []
    },
    facts: given(FILES),
    expect: 'not-computed',
  },
  { name: 'artwork that nobody read', change, facts: { artworkFileCount: 9, artwork: null }, expect: 'not-computed' },
  { name: 'no artwork yet', expect: 'not-computed' },
]
