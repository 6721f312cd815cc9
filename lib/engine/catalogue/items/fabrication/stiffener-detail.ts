import { listStiffeners } from '../../../design'
import { checkDrawingSheet, placeOf } from '../../checks'
import { defineItem } from '../../define-item'

export const stiffenerDetail = defineItem({
  id: 'stiffener-detail',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is every stiffener on the drawing, with its adhesive and position?',
  titles: { meets: 'Stiffeners are on the drawing', fails: 'A stiffener is missing on the drawing' },
  appliesTo: { needs: ['stiffeners'], says: 'parts with a stiffener' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['features.stiffeners', 'construction.layers'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.stiffeners[].onDrawing', worse: 'no' }],
  check: (context) =>
    listStiffeners(context.design).map((stiffener, index) =>
      checkDrawingSheet(
        context,
        'stiffeners',
        {
          observed: stiffener.onDrawing,
          wanted: true,
          path: ['features', 'stiffeners', index, 'onDrawing'],
          label: `whether ${stiffener.name} is on the drawing`,
          whenRight: `${stiffener.name} is on the drawing.`,
          whenWrong: `${stiffener.name} is not on the drawing.`,
          places: [placeOf('stiffener', stiffener)],
          sourceKey: 'commonPractice',
        },
        stiffener.name,
      ),
    ),
})
