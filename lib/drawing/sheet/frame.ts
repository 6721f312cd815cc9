import type { Palette } from '../palette'
import { type DrawingNode, makeNode } from '../picture'
import { FONT_MM, makeLine, makeSheetText } from './marks'
import {
  FRAME_LINE_MM,
  getFrame,
  listReferenceFields,
  REFERENCE_LETTER_MM,
  REFERENCE_LINE_MM,
  REFERENCE_STRIP_MM,
  type SheetFormat,
} from './sheet-format'

/** How far a centring mark reaches past the frame into the drawing space. */
const CENTRING_REACH_MM = 5

/** Frame of the drawing space, the fields around it with letters and numbers, and the four centring marks. */
export function drawFrame(format: SheetFormat, palette: Palette): DrawingNode[] {
  const frame = getFrame(format)
  const left = frame.x
  const right = frame.x + frame.width
  const top = frame.y
  const bottom = frame.y + frame.height
  const strip = REFERENCE_STRIP_MM
  const { ink } = palette
  const box = (inset: number, widthMm: number) =>
    makeNode('rect', {
      x: left - inset,
      y: top - inset,
      width: frame.width + 2 * inset,
      height: frame.height + 2 * inset,
      fill: 'none',
      stroke: ink,
      'stroke-width': widthMm,
    })
  const nodes = [box(strip, REFERENCE_LINE_MM)]
  const letter = (text: string, x: number, y: number) =>
    nodes.push(
      makeSheetText(text, x, y + REFERENCE_LETTER_MM / 2, { fontMm: FONT_MM.large, anchor: 'middle' }, palette),
    )
  for (const { label, fromMm, toMm } of listReferenceFields(format, 'width')) {
    for (const y of [top - strip, bottom]) {
      letter(label, (fromMm + toMm) / 2, y + strip / 2)
      if (fromMm > left) nodes.push(makeLine([fromMm, y], [fromMm, y + strip], REFERENCE_LINE_MM, ink))
    }
  }
  for (const { label, fromMm, toMm } of listReferenceFields(format, 'height')) {
    for (const x of [left - strip, right]) {
      letter(label, x + strip / 2, (fromMm + toMm) / 2)
      if (fromMm > top) nodes.push(makeLine([x, fromMm], [x + strip, fromMm], REFERENCE_LINE_MM, ink))
    }
  }
  nodes.push(box(0, FRAME_LINE_MM))
  const middleX = format.widthMm / 2
  const middleY = format.heightMm / 2
  const reach = CENTRING_REACH_MM
  const mark = (from: readonly [number, number], to: readonly [number, number]) =>
    nodes.push(makeLine(from, to, FRAME_LINE_MM, ink))
  mark([middleX, top - strip], [middleX, top + reach])
  mark([middleX, bottom - reach], [middleX, bottom + strip])
  mark([left - strip, middleY], [left + reach, middleY])
  mark([right - reach, middleY], [right + strip, middleY])
  return nodes
}
