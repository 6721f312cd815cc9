import { defineItem } from '../../define-item'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

const PAIRS = ['orderOrDrawing', 'drawingOrArtwork', 'drawingOrStandard'] as const

export const precedence = defineItem({
  id: 'precedence',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is it agreed which document wins when two differ?',
  titles: { meets: 'The order of documents is agreed', fails: 'A standard overrules the drawing' },
  appliesTo: { needs: ['layers'], says: 'every design' },
  limits: [],
  sourceKeys: ['documentOrder'],
  restsOn: [
    'brief.agreements.orderOrDrawing',
    'brief.agreements.drawingOrArtwork',
    'brief.agreements.drawingOrStandard',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['lead', 'fabricator'],
  monotone: [],
  check: (context) => {
    const missing = findUnstated(context, 'agreements', PAIRS)
    if (missing.length > 0) return askFor(missing)
    return [
      context.design.brief.agreements.drawingOrStandard === 'standard'
        ? makeTermOutcome('fails', 'A general standard would overrule what the drawing asks for.', 'documentOrder')
        : makeTermOutcome('meets', `Agreed: ${listTerms(context, 'agreements', PAIRS)}.`, 'documentOrder'),
    ]
  },
})
