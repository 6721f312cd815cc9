import type { TDocumentDefinitions } from 'pdfmake/interfaces'
import type { TrailPage } from '../document-order'
import { PDF_FONT } from './pdf-writer'
import { HAIRLINE, INK, makeFacts, makeTable, PAGE_MARGINS, SOFT, STYLES, TEXT_WIDTH_PT } from './style'

/** The trail of a revision, oldest first, as a document definition. */
export function makeTrailDocument({ heading, facts, entries }: TrailPage): TDocumentDefinitions {
  return {
    pageSize: 'A4',
    pageMargins: PAGE_MARGINS,
    defaultStyle: { font: PDF_FONT, fontSize: 9, color: INK, lineHeight: 1.1 },
    styles: STYLES,
    content: [
      { text: heading, style: 'title' },
      makeFacts(facts),
      { text: 'Records', style: 'section' },
      makeTable(
        [
          { label: 'No.', width: 30, isNumeric: true },
          { label: 'When (UTC)', width: 92 },
          { label: 'Who', width: 80 },
          { label: 'What', width: '*' },
        ],
        entries.map(({ sequence, at, actorName, sentence, details, hash }) => [
          String(sequence),
          at.slice(0, 19).replace('T', ' '),
          actorName,
          {
            stack: [
              sentence,
              ...details.map(({ label, text }) => ({ text: `${label}: ${text}`, style: 'small' })),
              { text: `hash ${hash.slice(0, 16)}`, style: 'small' },
            ],
          },
        ]),
      ),
    ],
    footer: (page, pages) => ({
      stack: [
        {
          canvas: [{ type: 'line', x1: 0, y1: 0, x2: TEXT_WIDTH_PT, y2: 0, lineWidth: 0.35, lineColor: HAIRLINE }],
        },
        {
          columns: [
            { text: heading, fontSize: 8.5, color: SOFT },
            { text: `Page ${page} of ${pages}`, fontSize: 8.5, color: SOFT, alignment: 'right' },
          ],
          margin: [0, 4, 0, 0],
        },
      ],
      margin: [PAGE_MARGINS[0], 14, PAGE_MARGINS[2], 0],
    }),
  }
}
