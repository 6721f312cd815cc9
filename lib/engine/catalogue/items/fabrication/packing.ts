import { defineItem } from '../../define-item'

export const packing = defineItem({
  id: 'packing',
  section: 'fabrication',
  severity: 'minor',
  question: 'Are packing, storage and handling settled?',
  why: 'Creased in a bag, a part is scrap before it is used; damp, it blisters in soldering.',
  howToCheck: 'Flat or on a carrier, dry pack or not, handling points, and what assembly may not do.',
  titles: { judgment: 'Somebody must settle packing and handling' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['ipc1601'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  judgment: {
    evidence: 'The note on the drawing or the purchase order.',
    findMissing: ({ design }) =>
      design.brief.packingAndHandling.trim() === ''
        ? [{ path: ['brief', 'packingAndHandling'], label: 'packing and handling' }]
        : [],
  },
})
