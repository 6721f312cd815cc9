import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const slitEndRelief = defineItem({
  id: 'slit-end-relief',
  section: 'geometry',
  severity: 'major',
  question: 'Does every slit end in a relief hole?',
  titles: { meets: 'Slits end in relief holes', fails: 'A slit ends without enough relief' },
  appliesTo: { needs: ['slits'], says: 'parts with slits or narrow cut-outs' },
  limits: ['slitEndReliefDiameterMm'],
  sourceKeys: [],
  restsOn: ['plan', 'features.slits', 'features.none'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.slits[].endReliefDiameterMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'slits',
      field: 'endReliefDiameterMm',
      what: (name) => `relief diameter of ${name}`,
      read: (slit) => slit.endReliefDiameterMm,
      limit: context.getLimit('slitEndReliefDiameterMm'),
      equation: 'diameter as drawn',
    }),
})
