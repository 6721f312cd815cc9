import type { MissingInput } from '../../../results'
import { defineItem } from '../../define-item'

export const performanceClass = defineItem({
  id: 'performance-class',
  section: 'fabrication',
  severity: 'major',
  question: 'Are performance class, type and installation use stated, and the right ones?',
  why: 'They decide copper, annular ring, inspection and price. One class too high is paid for on every part; one too low is found in the field.',
  howToCheck: 'Ask what a failure costs and who has to repair it; class 1 to 3, type 1 to 5, use A to D.',
  titles: { judgment: 'Somebody must state class, type and use' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['ipc6013'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  judgment: {
    evidence: 'The requirement of the product from which class and use follow.',
    findMissing: ({ design: { brief } }) => {
      const missing: MissingInput[] = []
      if (brief.performanceClass === null)
        missing.push({ path: ['brief', 'performanceClass'], label: 'performance class' })
      if (brief.circuitType === null) missing.push({ path: ['brief', 'circuitType'], label: 'circuit type' })
      if (brief.installationUse === null)
        missing.push({ path: ['brief', 'installationUse'], label: 'installation use' })
      return missing
    },
  },
})
