/**
 * Trimmed sheets after ISO 5457:1999 (Sizes and layout of drawing sheets): A4 stands, the larger ones lie. Number and
 * length of the fields as a drawing guide of 2016 quotes them from the standard; margins, line widths and heights of
 * lettering from memory.
 */
export const SHEET_SIZES = ['A4', 'A3', 'A2'] as const
export type SheetSize = (typeof SHEET_SIZES)[number]

export interface SheetFormat {
  readonly size: SheetSize
  readonly widthMm: number
  readonly heightMm: number
  /** Fields of the grid reference system along the width and along the height. */
  readonly fieldsAcross: number
  readonly fieldsDown: number
}

export const SHEET_FORMATS: Readonly<Record<SheetSize, SheetFormat>> = {
  A4: { size: 'A4', widthMm: 210, heightMm: 297, fieldsAcross: 4, fieldsDown: 6 },
  A3: { size: 'A3', widthMm: 420, heightMm: 297, fieldsAcross: 8, fieldsDown: 6 },
  A2: { size: 'A2', widthMm: 594, heightMm: 420, fieldsAcross: 12, fieldsDown: 8 },
}

/** Left margin, wide enough for filing, and the other three; from the trimmed edge to the frame of the drawing space. */
export const FILING_MARGIN_MM = 20
export const MARGIN_MM = 10
/** Width of the strip outside the frame in which the letters and numbers of the fields stand. */
export const REFERENCE_STRIP_MM = 5
export const FIELD_LENGTH_MM = 50
/** Letters and numbers of the fields: height of the capitals. */
export const REFERENCE_LETTER_MM = 3.5
export const FRAME_LINE_MM = 0.7
export const REFERENCE_LINE_MM = 0.35

/** Inside the frame nothing stands nearer to it than this. */
const CLEARANCE_MM = 5

export interface RectMm {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The frame that limits the drawing space. */
export function getFrame({ widthMm, heightMm }: SheetFormat): RectMm {
  return {
    x: FILING_MARGIN_MM,
    y: MARGIN_MM,
    width: widthMm - FILING_MARGIN_MM - MARGIN_MM,
    height: heightMm - 2 * MARGIN_MM,
  }
}

/** Where content may stand, title block included. */
export function getDrawingSpace(format: SheetFormat): RectMm {
  const frame = getFrame(format)
  return {
    x: frame.x + CLEARANCE_MM,
    y: frame.y + CLEARANCE_MM,
    width: frame.width - 2 * CLEARANCE_MM,
    height: frame.height - 2 * CLEARANCE_MM,
  }
}

export interface ReferenceField {
  readonly label: string
  /** From the sheet's left or upper edge. */
  readonly fromMm: number
  readonly toMm: number
}

/** Letters of the fields; I and O would be read as 1 and 0. */
const FIELD_LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/**
 * Fields of 50 mm counted from the sheet's axis of symmetry to both sides; what is left over goes to the corner fields.
 * Numbers run from left to right, letters from the top down.
 */
export function listReferenceFields(format: SheetFormat, along: 'width' | 'height'): ReferenceField[] {
  const frame = getFrame(format)
  const count = along === 'width' ? format.fieldsAcross : format.fieldsDown
  const middle = (along === 'width' ? format.widthMm : format.heightMm) / 2
  const first = along === 'width' ? frame.x : frame.y
  const last = along === 'width' ? frame.x + frame.width : frame.y + frame.height
  return Array.from({ length: count }, (_, index) => ({
    label: along === 'width' ? String(index + 1) : (FIELD_LETTERS[index] ?? ''),
    fromMm: index === 0 ? first : middle + (index - count / 2) * FIELD_LENGTH_MM,
    toMm: index === count - 1 ? last : middle + (index + 1 - count / 2) * FIELD_LENGTH_MM,
  }))
}
