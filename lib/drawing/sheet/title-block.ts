import { CAUTIONS } from '@/lib/engine'
import type { Palette } from '../palette'
import { type DrawingNode, makeNode } from '../picture'
import { drawProductMark } from '../product-mark'
import { wrapText } from '../text-metrics'
import type { RevisionEntry } from './contents'
import { FONT_MM, getLinesHeightMm, makeLine, makeLines } from './marks'
import { FRAME_LINE_MM, getFrame, REFERENCE_LINE_MM, type SheetFormat } from './sheet-format'

/** What the title block says beside what follows from the design itself. */
export interface SheetIdentity {
  readonly ownerName: string
  readonly projectName: string
  readonly title: string
  /** Empty where it is not stated, as the revision. */
  readonly partNumber: string
  readonly revisionLabel: string
  /** Calendar day (`2027-03-01`) of release; null before that. */
  readonly issuedOn: string | null
  /** `released`, `early review` ...; whether it may be built from follows from `issuedOn`. */
  readonly status: string
  /** Who made design and artwork. */
  readonly createdBy: string
  /** Who declared the present content reviewed and made none of it. */
  readonly reviewedBy: readonly string[]
  /** Those whose signatures stand on this content. */
  readonly approvedBy: readonly string[]
  /** Where a sign-off policy looser than usual was made use of, a sentence each. */
  readonly loosenedBy: readonly string[]
  /** What was issued before, oldest first, and this revision last; none prints no list. */
  readonly revisions: readonly RevisionEntry[]
}

export interface TitleBlockTexts {
  readonly identity: SheetIdentity
  readonly unitsNote: string
  /** A view to scale is among the sheets. */
  readonly hasPlan: boolean
  readonly sheetNumber: number
  readonly sheetCount: number
}

/** After ISO 7200:2004 (Data fields in title blocks and document headers): total width, from memory. */
export const TITLE_BLOCK_WIDTH_MM = 180
const PADDING_MM = 1.5
const TOP_MM = 0.7
/** Side of the product's mark, in the right end of the field for the document's type. */
const MARK_MM = 6
/** The row with title, part number and revision. */
const TITLE_ROW = 2

interface Field {
  readonly hasMark?: boolean
  readonly label: string
  readonly text: string
  readonly widthMm: number
}

/**
 * Rows of the block; widths of a row add up to that of the block. Fields are those of ISO 7200 and the trade's units. The
 * cautions stand in it because a single sheet may travel without the others.
 */
function listRows({ identity, unitsNote, hasPlan, sheetNumber, sheetCount }: TitleBlockTexts, size: string): Field[][] {
  const stated = (text: string) => (text.trim() === '' ? 'not stated' : text)
  const status = identity.issuedOn === null ? `${identity.status}: do not build from this sheet` : identity.status
  return [
    [{ label: 'Cautions', text: CAUTIONS.join(' '), widthMm: TITLE_BLOCK_WIDTH_MM }],
    [
      { label: 'Legal owner', text: identity.ownerName, widthMm: 74 },
      { label: 'Document type', text: 'Construction and bend drawing', widthMm: 58, hasMark: true },
      { label: 'Document status', text: status, widthMm: 48 },
    ],
    [
      { label: 'Title', text: identity.title, widthMm: 74 },
      { label: 'Part number', text: stated(identity.partNumber), widthMm: 58 },
      { label: 'Project, revision', text: `${identity.projectName}, ${stated(identity.revisionLabel)}`, widthMm: 48 },
    ],
    [
      { label: 'Creator', text: stated(identity.createdBy), widthMm: 74 },
      {
        label: 'Reviewed by',
        text: identity.reviewedBy.length === 0 ? 'not reviewed' : identity.reviewedBy.join(', '),
        widthMm: 34,
      },
      {
        label: 'Approved by',
        text: identity.approvedBy.length === 0 ? 'not approved' : identity.approvedBy.join(', '),
        widthMm: 42,
      },
      { label: 'Date of issue', text: identity.issuedOn ?? 'not issued', widthMm: 30 },
    ],
    ...(identity.loosenedBy.length === 0
      ? []
      : [
          [
            {
              label: 'Sign-off policy looser than usual',
              text: `${identity.loosenedBy.join('; ')}.`,
              widthMm: TITLE_BLOCK_WIDTH_MM,
            },
          ],
        ]),
    [
      { label: 'Units and tolerances', text: unitsNote, widthMm: 102 },
      { label: 'Scale', text: hasPlan ? 'as marked' : 'not to scale', widthMm: 30 },
      { label: 'Size, language', text: `${size}, en`, widthMm: 21 },
      { label: 'Sheet', text: `${sheetNumber} of ${sheetCount}`, widthMm: 27 },
    ],
  ]
}

interface LaidField extends Field {
  readonly lines: readonly string[]
}

function layRows(texts: TitleBlockTexts, size: string): { heightMm: number; fields: LaidField[] }[] {
  return listRows(texts, size).map((row, index) => {
    const isBold = index === TITLE_ROW
    const fields = row.map((field) => ({
      ...field,
      lines: wrapText(
        field.text,
        field.widthMm - 2 * PADDING_MM - (field.hasMark === true ? MARK_MM : 0),
        FONT_MM.body,
        isBold,
      ),
    }))
    const lineCount = Math.max(...fields.map(({ lines }) => lines.length))
    return { heightMm: getLinesHeightMm(lineCount + 1, FONT_MM.body) + PADDING_MM + TOP_MM, fields }
  })
}

/** Height of the block; long names wrap, and make it higher. */
export function getTitleBlockHeight(texts: TitleBlockTexts, size: string): number {
  return layRows(texts, size).reduce((sum, { heightMm }) => sum + heightMm, 0)
}

/** The block in the lower right corner of the frame. */
export function drawTitleBlock(format: SheetFormat, texts: TitleBlockTexts, palette: Palette): DrawingNode[] {
  const rows = layRows(texts, format.size)
  const frame = getFrame(format)
  const left = frame.x + frame.width - TITLE_BLOCK_WIDTH_MM
  const right = frame.x + frame.width
  const bottom = frame.y + frame.height
  const height = rows.reduce((sum, { heightMm }) => sum + heightMm, 0)
  let y = bottom - height
  const nodes: DrawingNode[] = [
    makeNode('rect', {
      x: left,
      y,
      width: TITLE_BLOCK_WIDTH_MM,
      height,
      fill: palette.paper,
      stroke: palette.ink,
      'stroke-width': FRAME_LINE_MM,
    }),
  ]
  rows.forEach((row, index) => {
    if (index > 0) nodes.push(makeLine([left, y], [right, y], REFERENCE_LINE_MM, palette.ink))
    let x = left
    row.fields.forEach(({ label, lines, widthMm, hasMark }, at) => {
      if (at > 0) nodes.push(makeLine([x, y], [x, y + row.heightMm], REFERENCE_LINE_MM, palette.ink))
      const labelStyle = { fontMm: FONT_MM.body, isSoft: true }
      nodes.push(
        ...makeLines([label], x + PADDING_MM, y + TOP_MM, labelStyle, palette),
        ...makeLines(
          lines,
          x + PADDING_MM,
          y + TOP_MM + getLinesHeightMm(1, FONT_MM.body),
          { fontMm: FONT_MM.body, isBold: index === TITLE_ROW },
          palette,
        ),
      )
      if (hasMark === true) {
        const markX = x + widthMm - PADDING_MM - MARK_MM
        nodes.push(drawProductMark(markX, y + (row.heightMm - MARK_MM) / 2, MARK_MM, palette))
      }
      x += widthMm
    })
    y += row.heightMm
  })
  return nodes
}
