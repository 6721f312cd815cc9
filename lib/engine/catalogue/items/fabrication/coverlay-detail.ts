import { checkDrawingSheet, ROUTING_PLACE } from '../../checks'
import { defineItem } from '../../define-item'

export const coverlayDetail = defineItem({
  id: 'coverlay-detail',
  section: 'fabrication',
  severity: 'minor',
  question: 'Does the drawing show coverlay and adhesive in detail?',
  titles: {
    meets: 'Coverlay and adhesive are on the drawing',
    fails: 'Coverlay and adhesive are missing on the drawing',
  },
  appliesTo: { needs: ['coverlay'], says: 'constructions with coverlay' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['features.routing.coverlayDetailOnDrawing', 'construction.layers', 'construction.zones'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.routing.coverlayDetailOnDrawing', worse: 'no' }],
  check: (context) => [
    checkDrawingSheet(context, 'coverlay', {
      observed: context.design.features.routing.coverlayDetailOnDrawing,
      wanted: true,
      path: ['features', 'routing', 'coverlayDetailOnDrawing'],
      label: 'whether coverlay and adhesive are detailed on the drawing',
      whenRight: 'Coverlay and adhesive are detailed.',
      whenWrong: 'Coverlay and adhesive are not detailed.',
      places: [ROUTING_PLACE],
      sourceKey: 'commonPractice',
    }),
  ],
})
