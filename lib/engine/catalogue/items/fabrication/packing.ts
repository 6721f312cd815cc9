import { defineItem } from '../../define-item'

export const packing = defineItem({
  id: 'packing',
  section: 'fabrication',
  severity: 'minor',
  question: 'Are packing, storage and handling settled?',
  titles: { judgment: 'Somebody must settle packing and handling' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['ipc1601'],
  restsOn: ['brief.packingAndHandling', 'brief.panelForm'],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  judgment: {
    evidence: 'The note on the drawing or the purchase order.',
    findMissing: ({ design }) =>
      design.brief.packingAndHandling.trim() === ''
        ? [{ path: ['brief', 'packingAndHandling'], label: 'packing and handling' }]
        : [],
  },
})
