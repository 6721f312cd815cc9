import type { ItemExample } from '../item-example'

export const layerTableExamples: readonly ItemExample[] = [
  { name: 'recorded as done', expect: 'needs-judgment' },
  {
    name: 'recorded as not done',
    change: (d) => {
      d.features.routing.layersNamedOnDrawing = false
    },
    expect: 'fails',
  },
  {
    name: 'not known',
    change: (d) => {
      d.features.routing.layersNamedOnDrawing = null
    },
    expect: 'not-computed',
  },
]
