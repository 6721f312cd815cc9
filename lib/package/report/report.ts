import type { TDocumentDefinitions } from 'pdfmake/interfaces'
import { sha256Hex } from '@/lib/review'
import type { PackageContent } from '../content'
import { makeArtworkCrops } from './artwork-crops'
import { makeBends } from './bends'
import { makeChecklist, makeChecklistAnnex } from './checklist'
import { makeConstruction } from './construction'
import { makeDecision } from './decision'
import { makeDeclarations } from './declarations'
import { makeFeatures } from './features'
import { makeFlexTests } from './flex-tests'
import { makeChronology, makeParticipants } from './history'
import { breakLongWords } from './long-words'
import { makeMinutes } from './minutes'
import { makeBrief, makeSummary, makeTitleBlock } from './opening'
import { PDF_FONT } from './pdf-writer'
import { makeArtwork, makeSignatures, makeThreads, makeWaivers } from './people'
import { makePictures } from './pictures'
import { makeActions } from './review-actions'
import { makeIndependence } from './sign-off'
import { makeSources } from './sources'
import { HAIRLINE, INK, PAGE_MARGINS, SOFT, STYLES, TEXT_WIDTH_PT } from './style'

/** The report as a document definition; `writePdf` lays it out. */
export function makeReport(content: PackageContent): TDocumentDefinitions {
  const { snapshot } = content
  const results = snapshot.evaluation?.results ?? null
  const pictures = results === null ? null : makePictures(snapshot.design, results)
  // A fabricator's edition lacks parts of what was signed: there the signature itself says which content it is on.
  const standing = snapshot.signatures.findLast(({ voided }) => voided === null)
  const contentHash =
    content.signedContent === null ? (standing?.contentHash ?? 'not signed') : sha256Hex(content.signedContent)
  const running = `${snapshot.projectName}, revision ${snapshot.label}`
  return {
    pageSize: 'A4',
    pageMargins: PAGE_MARGINS,
    defaultStyle: { font: PDF_FONT, fontSize: 9.5, color: INK, lineHeight: 1.1 },
    styles: STYLES,
    content: breakLongWords([
      ...makeTitleBlock(content, contentHash),
      ...makeDecision(content),
      ...makeSummary(content),
      ...makeBrief(content),
      ...makeConstruction(content, pictures),
      ...makeBends(content, pictures),
      ...makeFlexTests(content, pictures),
      ...makeFeatures(content),
      ...makeChecklist(content),
      ...makeArtworkCrops(content),
      ...makeWaivers(content),
      ...makeThreads(content),
      ...makeActions(content),
      ...makeDeclarations(content),
      ...makeSignatures(content),
      ...makeIndependence(content),
      ...makeArtwork(content),
      ...makeChronology(content),
      ...makeParticipants(content),
      ...makeSources(content),
      ...makeChecklistAnnex(content),
      ...makeMinutes(content),
    ]),
    header: (page) =>
      page === 1
        ? null
        : {
            columns: [
              { text: running, fontSize: 8.5, color: SOFT },
              { text: 'Manufacturability review', fontSize: 8.5, color: SOFT, alignment: 'right' },
            ],
            margin: [PAGE_MARGINS[0], 28, PAGE_MARGINS[2], 0],
          },
    footer: (page, pages) => ({
      stack: [
        {
          canvas: [{ type: 'line', x1: 0, y1: 0, x2: TEXT_WIDTH_PT, y2: 0, lineWidth: 0.35, lineColor: HAIRLINE }],
        },
        {
          columns: [
            { text: `Signed content ${contentHash.slice(0, 16)}`, fontSize: 8.5, color: SOFT },
            { text: `Page ${page} of ${pages}`, fontSize: 8.5, color: SOFT, alignment: 'right' },
          ],
          margin: [0, 4, 0, 0],
        },
      ],
      margin: [PAGE_MARGINS[0], 14, PAGE_MARGINS[2], 0],
    }),
  }
}
