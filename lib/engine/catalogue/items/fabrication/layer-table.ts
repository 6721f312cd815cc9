import { checkDrawingSheet, ROUTING_PLACE } from '../../checks'
import { defineItem } from '../../define-item'

export const layerTable = defineItem({
  id: 'layer-table',
  section: 'fabrication',
  severity: 'major',
  question: 'Does the drawing carry a layer table that names the flex layers?',
  titles: { meets: 'The layer table names the flex layers', fails: 'The layer table does not name the flex layers' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'construction.layers',
    'construction.layers.*.name',
    'construction.zones',
    'features.routing.layersNamedOnDrawing',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.routing.layersNamedOnDrawing', worse: 'no' }],
  check: (context) => [
    checkDrawingSheet(context, 'layers', {
      observed: context.design.features.routing.layersNamedOnDrawing,
      wanted: true,
      path: ['features', 'routing', 'layersNamedOnDrawing'],
      label: 'whether the layer table names the flex layers',
      whenRight: 'The layer table names them.',
      whenWrong: 'The layer table does not name them.',
      places: [ROUTING_PLACE],
      sourceKey: 'commonPractice',
    }),
  ],
})
