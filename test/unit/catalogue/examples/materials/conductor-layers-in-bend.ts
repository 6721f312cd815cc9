import { addFlexLayers } from '../changes'
import type { ItemExample } from '../item-example'

export const conductorLayersInBendExamples: readonly ItemExample[] = [
  { name: 'one layer', expect: 'meets' },
  { name: 'two layers through the hinge', change: (d) => addFlexLayers(d, 2), expect: 'fails' },
]
