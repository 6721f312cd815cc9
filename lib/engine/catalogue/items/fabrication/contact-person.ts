import { defineItem } from '../../define-item'
import { isOpen } from '../../given'

export const contactPerson = defineItem({
  id: 'contact-person',
  section: 'fabrication',
  severity: 'minor',
  question: 'Does everybody know whom to ask when in doubt?',
  titles: { judgment: 'A contact must be named' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.whoToAsk'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  judgment: {
    evidence: 'A person who has agreed to be asked.',
    findMissing: ({ design }) =>
      isOpen(design.brief.whoToAsk) ? [{ path: ['brief', 'whoToAsk'], label: 'who is asked when in doubt' }] : [],
  },
})
