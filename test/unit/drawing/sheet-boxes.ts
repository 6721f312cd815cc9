import { type DrawingNode, type DrawnSheet, getFrame, measureText, SHEET_FORMATS } from '@/lib/drawing'

export interface TextBox {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

interface Frame {
  readonly x: number
  readonly y: number
  readonly scale: number
}

/** Every text of a sheet as a box in mm: from its baseline up by the capitals' height and down by the descenders'. */
export function listTextBoxes(sheet: { readonly nodes: readonly DrawingNode[] }): TextBox[] {
  const boxes: TextBox[] = []
  const visit = (node: DrawingNode | string, frame: Frame) => {
    if (typeof node === 'string') return
    const here = move(frame, node.attributes.transform)
    if (node.tag === 'text') boxes.push(toBox(node, here))
    for (const child of node.children) visit(child, here)
  }
  for (const node of sheet.nodes) visit(node, { x: 0, y: 0, scale: 1 })
  return boxes
}

function move(frame: Frame, transform: string | number | undefined): Frame {
  if (transform === undefined) return frame
  const found = /^translate\((\S+) (\S+)\) scale\((\S+)\)$/.exec(String(transform))
  if (found === null) throw new Error(`the test does not read the transform "${transform}"`)
  const [, x, y, scale] = found
  return {
    x: frame.x + Number(x) * frame.scale,
    y: frame.y + Number(y) * frame.scale,
    scale: frame.scale * Number(scale),
  }
}

function toBox({ attributes, children }: DrawingNode, { x, y, scale }: Frame): TextBox {
  const text = children.join('')
  const fontMm = Number(attributes['font-size']) * scale
  const widthMm = measureText(text, fontMm, attributes['font-weight'] === 'bold')
  const at = x + Number(attributes.x) * scale
  const baseline = y + Number(attributes.y) * scale
  const anchor = attributes['text-anchor'] ?? 'start'
  const left = anchor === 'end' ? at - widthMm : anchor === 'middle' ? at - widthMm / 2 : at
  return { text, left, right: left + widthMm, top: baseline - 0.73 * fontMm, bottom: baseline + 0.24 * fontMm }
}

/** Texts that reach beyond the frame; letters and numbers of the fields stand outside it on purpose. */
export function findOutside(sheet: DrawnSheet): string[] {
  const frame = getFrame(SHEET_FORMATS[sheet.size])
  return listTextBoxes(sheet)
    .filter(
      ({ left, right, top, bottom }) =>
        left < frame.x || right > frame.x + frame.width || top < frame.y || bottom > frame.y + frame.height,
    )
    .map(({ text }) => text)
    .filter((text) => !/^([A-HJ-NP-Z]|\d{1,2})$/.test(text))
}

/** Less than this is the rounding of positions to a hundredth of a millimetre, and of texts' scaled sizes. */
const TOUCHING_MM = 0.05

/** Pairs of texts that lie over each other. */
export function findOverlaps(sheet: DrawnSheet): string[] {
  const boxes = listTextBoxes(sheet).sort((a, b) => a.top - b.top)
  const found: string[] = []
  boxes.forEach((box, index) => {
    for (let at = index + 1; at < boxes.length; at += 1) {
      const other = boxes[at]
      if (other === undefined || other.top > box.bottom) break
      const across = Math.min(box.right, other.right) - Math.max(box.left, other.left)
      const down = Math.min(box.bottom, other.bottom) - Math.max(box.top, other.top)
      if (across > TOUCHING_MM && down > TOUCHING_MM)
        found.push(`"${box.text}" and "${other.text}" on sheet ${sheet.number}`)
    }
  })
  return found
}
