import { callByName } from '../../../design'
import type { Outcome, ZoneResult } from '../../../results'
import { inSentence } from '../../../units'
import { isDynamic, listBends, notComputedLayers, notComputedUse, placeOf } from '../../checks'
import { decide } from '../../decide'
import { defineItem } from '../../define-item'
import { BEND_PLACE_INPUTS } from '../../item-inputs'
import { hasCopper } from '../../needs'

export const conductorLayersInBend = defineItem({
  id: 'conductor-layers-in-bend',
  section: 'materials',
  severity: 'major',
  question: 'Does each bend carry as few conductor layers as possible in a leaf, and only one where it moves?',
  titles: { meets: 'Bends carry few conductor layers', fails: 'A bend carries more conductor layers than it should' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'designs with a bend and a conductor layer' },
  limits: ['conductorLayersInDynamicBendCount', 'conductorLayersInStaticBendCount'],
  sourceKeys: [],
  restsOn: ['construction.layers', 'construction.zones', ...BEND_PLACE_INPUTS, 'bends.*.insideFace', 'bends.*.use'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) =>
    listBends(context).map((checked): Outcome => {
      const { bend, result, zone, place } = checked
      if (bend.use === null) return notComputedUse(checked)
      const unknown = notComputedLayers(checked)
      if (unknown !== null) return unknown
      // Leaves that are not bonded bend each for itself: the one with the most layers decides.
      const leaves = listLeaves(zone)
      const layers = leaves.reduce<ZoneResult['layers']>((most, leaf) => (leaf.length > most.length ? leaf : most), [])
      const extraUm = layers.slice(1).reduce((sum, layer) => sum + layer.nominalUm, 0)
      return decide({
        value: layers.length,
        limit: context.getLimit(
          isDynamic(bend) ? 'conductorLayersInDynamicBendCount' : 'conductorLayersInStaticBendCount',
        ),
        places: [place, ...layers.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name }))],
        what: `conductor layers in ${leaves.length > 1 ? 'one leaf of ' : ''}${callByName('bend', bend.name)}`,
        equation: 'count of layers bonded together; air gaps part the leaves',
        remark:
          layers.length < 2
            ? undefined
            : `Beyond the first they bring ${inSentence(extraUm, 'um')} of copper${result.peakStrainPct === null ? '' : ` and a peak strain of ${inSentence(result.peakStrainPct, 'pct')}`}; the remedies of the bend show it on one layer.`,
      })
    }),
})

/** Conductor layers with copper, leaf by leaf; an air gap that is there parts two leaves. */
function listLeaves(zone: ZoneResult | null): ZoneResult['layers'][] {
  const leaves: ZoneResult['layers'][number][][] = [[]]
  for (const layer of zone?.layers ?? []) {
    if (layer.kind === 'unbonded-gap') leaves.push([])
    else if (hasCopper(layer)) leaves.at(-1)?.push(layer)
  }
  return leaves.filter((leaf) => leaf.length > 0)
}
