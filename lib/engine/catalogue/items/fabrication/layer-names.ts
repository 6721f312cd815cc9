import type { EvaluationContext } from '../../../context'
import type { Layer } from '../../../design'
import { placeOf } from '../../checks'
import { decide, makeNoneAllowed } from '../../decide'
import { defineItem } from '../../define-item'
import { listConductorLayers } from '../../needs'

/** `5`, `L5`, `Layer 5`: says where in a file, not what. */
const BARE_NUMBER = /^(l|layer)?[ ._-]*\d+$/i

/** The word, or its letter before a number: `F1`, `FL2`. */
const SAYS_FLEX = /flex|(^|[^a-z])fl?[ ._-]?\d/i

export const layerNames = defineItem({
  id: 'layer-names',
  section: 'fabrication',
  severity: 'advice',
  question: 'Do layer names say what each layer is, with the flex layers named as such?',
  titles: { meets: 'Layer names say what each layer is', fails: 'Layer names leave the fabricator guessing' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['construction.layers', 'construction.layers.*.name', 'features.routing.layersNamedOnDrawing'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [],
  check: (context) => {
    const problems = findNameProblems(context)
    return [
      decide({
        value: problems.length,
        limit: makeNoneAllowed('unclearLayerNamesCount', 'commonPractice'),
        places: problems.map(({ layer }) => placeOf('layer', layer)),
        what: 'unclear layer names',
        equation: 'names as given',
        remark: problems.length === 0 ? undefined : `${problems.map(({ sentence }) => sentence).join('; ')}.`,
      }),
    ]
  },
})

function findNameProblems({ design, findZoneResult }: EvaluationContext): { layer: Layer; sentence: string }[] {
  const inFlex = new Set<string>()
  let hasRigid = false
  for (const zone of design.construction.zones) {
    if (zone.kind === 'flex') {
      for (const { layerId } of listConductorLayers(findZoneResult(zone.id))) inFlex.add(layerId)
    }
    if (zone.kind === 'rigid') hasRigid = true
  }
  const seen = new Set<string>()
  const problems: { layer: Layer; sentence: string }[] = []
  for (const layer of design.construction.layers) {
    const key = layer.name.toLowerCase()
    if (seen.has(key)) problems.push({ layer, sentence: `"${layer.name}" is used twice` })
    else if (BARE_NUMBER.test(layer.name)) problems.push({ layer, sentence: `"${layer.name}" is a bare number` })
    else if (hasRigid && layer.kind === 'conductor' && inFlex.has(layer.id) && !SAYS_FLEX.test(key)) {
      problems.push({ layer, sentence: `"${layer.name}" runs through the flex and does not say so` })
    }
    seen.add(key)
  }
  return problems
}
