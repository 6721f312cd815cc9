import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const padAnchors = defineItem({
  id: 'pad-anchors',
  section: 'geometry',
  severity: 'major',
  question: 'Do pads without a plated hole have anchors under the coverlay?',
  titles: { meets: 'Pads without a hole are anchored', fails: 'A pad has neither plated hole nor anchor' },
  appliesTo: { needs: ['unsupported-pads'], says: 'pads without a plated hole' },
  limits: ['padAnchorCount'],
  sourceKeys: [],
  restsOn: ['features.pads'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.pads[].anchorCount', worse: 'smaller' }],
  check: (context) =>
    checkDimension(context, {
      list: 'pads',
      field: 'anchorCount',
      what: (name) => `anchors of ${name}`,
      when: (pad) => pad.hasPlatedHole !== true,
      findUnknown: (pad) =>
        pad.hasPlatedHole === null ? { field: 'hasPlatedHole', label: `whether ${pad.name} has a plated hole` } : null,
      read: (pad) => pad.anchorCount,
      limit: context.getLimit('padAnchorCount'),
      equation: 'count of anchors',
    }),
})
