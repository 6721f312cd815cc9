import { callByName } from '../../../design'
import { listBareFaces } from '../../bare-faces'
import { getRadiusRangeMm, listBends, notComputedLayers, notComputedUse, placeOf } from '../../checks'
import { decide, makeNoneAllowed } from '../../decide'
import { defineItem } from '../../define-item'
import { mayMaskStay } from '../../flexible-mask'

export const bendCover = defineItem({
  id: 'bend-cover',
  section: 'materials',
  severity: 'blocking',
  question: 'Is every conductor layer in a bend covered by film on both faces?',
  titles: { meets: 'Film covers the copper in every bend', fails: 'Copper lies bare in a bend' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'designs with a bend and a conductor layer' },
  limits: ['flexibleMaskRadiusMm'],
  sourceKeys: ['ownChoice', 'commonPractice'],
  restsOn: ['construction.layers', 'construction.zones', 'materials', 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) =>
    listBends(context).flatMap((checked) => {
      const { bend, zone, place } = checked
      const unknown = notComputedLayers(checked)
      if (unknown !== null || zone === null) return unknown ?? []
      const radiusMm = getRadiusRangeMm(bend)
      const listBareAt = (insideRadiusMm: number) =>
        listBareFaces(zone, (layer) => mayMaskStay(context, bend, layer, insideRadiusMm))
      const atNominal = listBareAt(bend.insideRadiusMm)
      const bare = listBareAt(radiusMm.low)
      // Under a flexible mask the use decides whether the copper is covered.
      if (bend.use === null && atNominal.length === 0 && listBareFaces(zone).length > 0) return notComputedUse(checked)
      return decide({
        value: atNominal.length,
        ...(bare.length === atNominal.length
          ? {}
          : { range: { low: listBareAt(radiusMm.high).length, high: bare.length } }),
        limit: makeNoneAllowed('bareCopperFacesCount', 'ownChoice'),
        places: [
          place,
          ...new Map(
            bare.map(({ layer }) => [layer.layerId, placeOf('layer', { id: layer.layerId, name: layer.name })]),
          ).values(),
        ],
        what: `bare copper faces in ${callByName('bend', bend.name)}`,
        equation: 'order of the layers',
        remark:
          bare.length === 0
            ? undefined
            : `Bare: ${bare.map(({ layer, face }) => `${layer.name}, ${face} face`).join('; ')}. Copper that is meant to lie bare, such as a layer kept at the neutral axis by leaving the cover out, needs a waiver.`,
      })
    }),
})
