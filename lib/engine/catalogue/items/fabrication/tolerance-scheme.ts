import { defineItem } from '../../define-item'

export const toleranceScheme = defineItem({
  id: 'tolerance-scheme',
  section: 'fabrication',
  severity: 'major',
  question: 'Do datums and tolerances suit a part that is not rigid?',
  titles: { judgment: 'Somebody must judge datums and tolerances' },
  appliesTo: { needs: [], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.toleranceScheme', 'construction.zones.*.kind'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  judgment: {
    evidence: 'The drawing, with the datum scheme and the condition in which it is measured.',
    findMissing: ({ design }) =>
      design.brief.toleranceScheme.trim() === ''
        ? [{ path: ['brief', 'toleranceScheme'], label: 'tolerance and datum scheme' }]
        : [],
  },
})
