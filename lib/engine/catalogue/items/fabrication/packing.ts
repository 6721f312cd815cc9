import { defineItem } from '../../define-item'
import { listPackingTerms } from '../../drying-terms'
import { listOpen } from '../../given'

export const packing = defineItem({
  id: 'packing',
  section: 'fabrication',
  severity: 'minor',
  question: 'Are packing, storage and handling settled?',
  titles: { judgment: 'Somebody must settle packing and handling' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['ipc1601'],
  restsOn: [
    'brief.packingAndHandling',
    'brief.assembly.packedAs',
    'brief.assembly.isDryPacked',
    'brief.assembly.storageMonths',
    'brief.panelForm',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  judgment: {
    evidence: 'The note on the drawing or the purchase order.',
    findMissing: ({ design }) => listOpen(listPackingTerms(design.brief)),
  },
})
