import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const coverlayCapture = defineItem({
  id: 'coverlay-capture',
  section: 'geometry',
  severity: 'major',
  question: 'Does the coverlay hold down the rim of pads that have no plated hole?',
  titles: { meets: 'Coverlay holds the rims of pads', fails: 'Coverlay hardly holds a pad' },
  appliesTo: { needs: ['coverlay', 'unsupported-pads'], says: 'pads without a plated hole, under coverlay' },
  limits: ['coverlayCaptureMm'],
  sourceKeys: [],
  restsOn: ['features.pads'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.pads[].coverlayCaptureMm', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'pads',
      field: 'coverlayCaptureMm',
      what: (name) => `coverlay over the rim of ${name}`,
      when: (pad) => pad.hasPlatedHole !== true,
      findUnknown: (pad) =>
        pad.hasPlatedHole === null ? { field: 'hasPlatedHole', label: `whether ${pad.name} has a plated hole` } : null,
      read: (pad) => pad.coverlayCaptureMm,
      limit: context.getLimit('coverlayCaptureMm'),
      equation: 'overlap as drawn',
    }),
})
