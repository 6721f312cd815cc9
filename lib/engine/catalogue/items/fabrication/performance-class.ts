import type { MissingInput } from '../../../results'
import { defineItem } from '../../define-item'

export const performanceClass = defineItem({
  id: 'performance-class',
  section: 'fabrication',
  severity: 'blocking',
  question: 'Are performance class, type and installation use stated, and the right ones?',
  titles: { judgment: 'Somebody must state class, type and use' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['ipc6013'],
  restsOn: ['brief.performanceClass', 'brief.circuitType', 'brief.installationUses', 'bends.*.use'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  judgment: {
    evidence: 'The requirement of the product from which class and use follow.',
    findMissing: ({ design: { brief } }) => {
      const missing: MissingInput[] = []
      if (brief.performanceClass === null)
        missing.push({ path: ['brief', 'performanceClass'], label: 'performance class' })
      if (brief.circuitType === null) missing.push({ path: ['brief', 'circuitType'], label: 'circuit type' })
      if (brief.installationUses.length === 0)
        missing.push({ path: ['brief', 'installationUses'], label: 'installation uses' })
      return missing
    },
  },
})
