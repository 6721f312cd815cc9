import type { EvaluationContext } from '../../../context'
import { type Bend, callByName } from '../../../design'
import type { Outcome } from '../../../results'
import { listBends, notComputedLayers, notComputedUse, placeOf } from '../../checks'
import { decide, makeNoneAllowed, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { listConductorLayers } from '../../needs'

export const planeInBend = defineItem({
  id: 'plane-in-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Are planes hatched or split where they flex?',
  titles: {
    meets: 'Planes are hatched or split where they flex',
    fails: 'A solid plane runs through a bend that flexes',
  },
  appliesTo: {
    needs: ['bends', 'conductor-layers'],
    says: 'bends that move or are flexed to install, with a plane in them',
  },
  limits: [],
  sourceKeys: ['guideDesignRules'],
  restsOn: ['artwork', 'plan', 'construction.layers', 'construction.zones', 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [],
  // A bend of which nobody stated the use may flex.
  check: (context) => checkPlanes(context, (use) => use !== 'fold-once', 'no plane runs through a bend that flexes'),
})

export const planeInFold = defineItem({
  id: 'plane-in-fold',
  section: 'geometry',
  severity: 'advice',
  question: 'Are planes hatched or split where they are folded once?',
  titles: { meets: 'Planes are hatched or split in folds', fails: 'A solid plane runs through a fold' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'bends that are folded once, with a plane in them' },
  limits: [],
  sourceKeys: ['guideDesignRules'],
  restsOn: ['artwork', 'plan', 'construction.layers', 'construction.zones', 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [],
  check: (context) => checkPlanes(context, (use) => use === 'fold-once', 'no plane runs through a fold'),
})

function checkPlanes(context: EvaluationContext, isAsked: (use: Bend['use']) => boolean, nothing: string): Outcome[] {
  const outcomes: Outcome[] = []
  for (const checked of listBends(context, ({ use }) => isAsked(use))) {
    const { bend, zone, place } = checked
    const unknown = notComputedLayers(checked)
    if (unknown !== null) outcomes.push(unknown)
    for (const layerResult of listConductorLayers(zone)) {
      const layer = context.layersById.get(layerResult.layerId)
      if (layer?.kind !== 'conductor' || layer.role === 'signal') continue
      if (layer.planePattern === 'none') continue
      const places = [place, placeOf('layer', layer)]
      if (layer.planePattern === null) {
        const index = context.design.construction.layers.indexOf(layer)
        outcomes.push(
          notComputed(['construction', 'layers', index, 'planePattern'], `pattern of plane ${layer.name}`, places),
        )
        continue
      }
      if (bend.use === null && layer.planePattern === 'solid') {
        outcomes.push(notComputedUse(checked))
        continue
      }
      outcomes.push(
        decide({
          value: layer.planePattern === 'solid' ? 1 : 0,
          limit: makeNoneAllowed('solidPlanesInBendCount', 'guideDesignRules'),
          places,
          what: `solid planes on ${layer.name} in ${callByName('bend', bend.name)}`,
          equation: 'pattern as specified',
          isTyped: true,
        }),
      )
    }
  }
  return outcomes.length === 0 ? [notApplicable(nothing)] : outcomes
}
