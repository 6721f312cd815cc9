import type { Design } from '@/lib/engine'
import { getFilm, getZone } from '../changes'
import type { ItemExample } from '../item-example'

const flatAt = (degC: number | null) => (d: Design) => {
  d.brief.flatAtDegC = degC
}

/** A board with laminate on one face alone: a bimetal strip. */
const oneSided = (d: Design) => {
  const gone = ['core-bottom', 'prepreg-bottom']
  const board = getZone(d, 'board')
  board.presence = board.presence.filter(({ layerId }) => !gone.includes(layerId))
  d.construction.layers = d.construction.layers.filter(({ id }) => !gone.includes(id))
  getFilm(d, 'core-top').thicknessUm = 60
}

export const thermalCurlExamples: readonly ItemExample[] = [
  {
    name: 'a symmetric board, and service close to where it lies flat',
    change: (d) => {
      flatAt(23)(d)
      d.brief.operatingMinDegC = 18
      d.brief.operatingMaxDegC = 28
    },
    expect: 'meets',
  },
  { name: 'a connector end with its stiffener below, over the whole range', change: flatAt(23), expect: 'thin-margin' },
  {
    name: 'a long board with laminate on one face alone, far from where it lies flat',
    change: (d) => {
      oneSided(d)
      flatAt(23)(d)
      d.brief.operatingMinDegC = -55
      getZone(d, 'board').lengthMm = 240
    },
    expect: 'fails',
  },
  { name: 'nobody measured where it lies flat', change: flatAt(null), expect: 'not-computed' },
  {
    name: 'the length is not known',
    change: (d) => {
      flatAt(23)(d)
      for (const zone of d.construction.zones) {
        zone.lengthMm = null
        zone.widthMm = null
      }
    },
    expect: 'not-computed',
  },
]
