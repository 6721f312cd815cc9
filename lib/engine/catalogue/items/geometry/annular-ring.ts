import { checkDimension } from '../../checks'
import { defineItem } from '../../define-item'

export const annularRing = defineItem({
  id: 'annular-ring',
  section: 'geometry',
  severity: 'major',
  question: 'Is there enough copper around each plated hole?',
  titles: {
    meets: 'Plated holes have enough copper around them',
    fails: 'A plated hole has too little copper around it',
  },
  appliesTo: { needs: ['plated-holes'], says: 'designs with plated holes' },
  limits: ['annularRingMm'],
  sourceKeys: [],
  restsOn: ['artwork', 'features.holes'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'features.holes[].landMm', worse: 'smaller' },
    { path: 'features.holes[].drillMm', worse: 'larger' },
  ],
  check: (context) =>
    checkDimension(context, {
      list: 'holes',
      field: 'landMm',
      what: (name) => `copper around the hole of ${name}, per side`,
      when: (hole) => hole.plated !== false,
      findUnknown: (hole) => {
        if (hole.plated === null) return { field: 'plated', label: `whether ${hole.name} is plated` }
        return hole.drillMm === null ? { field: 'drillMm', label: `drill of ${hole.name}` } : null
      },
      read: (hole) => (hole.landMm === null || hole.drillMm === null ? null : (hole.landMm - hole.drillMm) / 2),
      limit: context.getLimit('annularRingMm'),
      equation: '(land - drill) / 2',
    }),
})
