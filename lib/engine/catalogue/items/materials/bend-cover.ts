import type { ZoneLayerResult, ZoneResult } from '../../../results'
import { listBends, notComputedLayers, placeOf } from '../../checks'
import { decide, makeNoneAllowed } from '../../decide'
import { defineItem } from '../../define-item'
import { hasCopper } from '../../needs'

export const bendCover = defineItem({
  id: 'bend-cover',
  section: 'materials',
  severity: 'blocking',
  question: 'Is every conductor layer in a bend covered by film on both faces?',
  titles: { meets: 'Film covers the copper in every bend', fails: 'Copper lies bare in a bend' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'designs with a bend and a conductor layer' },
  limits: [],
  sourceKeys: ['ownChoice', 'commonPractice'],
  restsOn: ['construction.layers', 'construction.zones', 'bends.*.zoneId'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) =>
    listBends(context).flatMap((checked) => {
      const { bend, zone, place } = checked
      const unknown = notComputedLayers(checked)
      if (unknown !== null || zone === null) return unknown ?? []
      const bare = listBareFaces(zone)
      return decide({
        value: bare.length,
        limit: makeNoneAllowed('bareCopperFacesCount', 'ownChoice'),
        places: [
          place,
          ...new Map(
            bare.map(({ layer }) => [layer.layerId, placeOf('layer', { id: layer.layerId, name: layer.name })]),
          ).values(),
        ],
        what: `bare copper faces in bend ${bend.name}`,
        equation: 'order of the layers',
        remark:
          bare.length === 0
            ? undefined
            : `Bare: ${bare.map(({ layer, face }) => `${layer.name}, ${face} face`).join('; ')}. Copper that is meant to lie bare, such as a layer kept at the neutral axis by leaving the cover out, needs a waiver.`,
      })
    }),
})

/** What keeps crack, chemistry and contact away from copper. Adhesive alone does not, and a solder mask cracks. */
const COVERS: readonly string[] = [
  'base-film',
  'coverlay-film',
  'bondply',
  'no-flow-prepreg',
  'rigid-laminate',
  'stiffener',
]

interface BareFace {
  readonly layer: ZoneLayerResult
  readonly face: 'upper' | 'lower'
}

/** Faces of copper with no film between them and the outside, or the air between leaves. Copper of coverage 0 is absent. */
function listBareFaces({ layers }: ZoneResult): BareFace[] {
  return layers.flatMap((layer, index) => {
    if (!hasCopper(layer)) return []
    const faces: BareFace[] = []
    if (!isCovered(layers.slice(0, index).reverse())) faces.push({ layer, face: 'upper' })
    if (!isCovered(layers.slice(index + 1))) faces.push({ layer, face: 'lower' })
    return faces
  })
}

/** Outwards from the copper, is there a film before the outside or a gap? */
function isCovered(outwards: readonly ZoneLayerResult[]): boolean {
  for (const { kind } of outwards) {
    if (kind === 'unbonded-gap') return false
    if (COVERS.includes(kind)) return true
  }
  return false
}
