/**
 * Widths of the printable ASCII characters in hundredths of the type size, from the space up: the wider of Source Sans 3
 * (embedded in the PDF) and of the metrics that Arial-like faces share (an SVG elsewhere falls back to one), rounded up.
 */
const REGULAR_WIDTHS = [
  28, 29, 43, 56, 56, 89, 67, 25, 34, 34, 42, 59, 28, 34, 28, 35, 56, 56, 56, 56, 56, 56, 56, 56, 56, 56, 28, 28, 59,
  59, 59, 56, 102, 67, 67, 73, 73, 67, 62, 78, 73, 28, 50, 67, 56, 84, 73, 78, 67, 78, 73, 67, 62, 73, 67, 95, 67, 67,
  62, 31, 35, 31, 50, 56, 55, 56, 56, 50, 56, 56, 30, 56, 56, 25, 25, 50, 26, 84, 56, 56, 56, 56, 35, 50, 34, 56, 50,
  73, 50, 50, 50, 34, 26, 34, 59,
] as const
const BOLD_WIDTHS = [
  28, 34, 49, 56, 56, 89, 73, 28, 34, 34, 44, 59, 28, 34, 28, 35, 56, 56, 56, 56, 56, 56, 56, 56, 56, 56, 34, 34, 59,
  59, 59, 62, 98, 73, 73, 73, 73, 67, 62, 78, 73, 29, 56, 73, 62, 84, 73, 78, 67, 78, 73, 67, 62, 73, 67, 95, 67, 67,
  62, 34, 35, 34, 59, 56, 55, 56, 62, 56, 62, 56, 34, 62, 62, 28, 28, 56, 28, 89, 62, 62, 62, 62, 39, 56, 37, 62, 56,
  78, 56, 56, 50, 39, 28, 39, 59,
] as const
/** Other scripts and signs, and those outside the basic plane (two UTF-16 units), on the safe side. */
const OTHER_WIDTH = 100
const PAIR_WIDTH = 140
const FIRST = 0x20

/** Line to line, in relation to the type size. */
export const LINE_HEIGHT_EM = 1.3

/** Width of a line of text, in the unit of `fontSize`; never less than what the faces in use need. */
export function measureText(text: string, fontSize: number, isBold = false): number {
  const widths = isBold ? BOLD_WIDTHS : REGULAR_WIDTHS
  let hundredths = 0
  for (const character of text) {
    // An accented Latin letter is as wide as its base.
    const code = character.normalize('NFD').codePointAt(0) ?? FIRST
    hundredths += widths[code - FIRST] ?? (code > 0xffff ? PAIR_WIDTH : OTHER_WIDTH)
  }
  return (hundredths / 100) * fontSize
}

/** Longest beginning of a word that fits; at least one character. */
function takeFitting(word: string, width: number, fontSize: number, isBold: boolean): string {
  let taken = ''
  for (const character of word) {
    if (taken !== '' && measureText(taken + character, fontSize, isBold) > width) break
    taken += character
  }
  return taken
}

/** Breaks text at spaces, and inside a word that is longer than the line. Nothing is left out. */
export function wrapText(text: string, width: number, fontSize: number, isBold = false): string[] {
  const lines: string[] = []
  for (const paragraph of text.trim().split(/[\r\n\u2028\u2029]+/u)) {
    let line = ''
    for (const word of paragraph.trim().split(/\s+/u)) {
      let rest = word
      if (line !== '' && measureText(`${line} ${rest}`, fontSize, isBold) > width) {
        lines.push(line)
        line = ''
      }
      while (measureText(rest, fontSize, isBold) > width) {
        const part = takeFitting(rest, width, fontSize, isBold)
        if (part.length === rest.length) break
        lines.push(part)
        rest = rest.slice(part.length)
      }
      line = line === '' ? rest : `${line} ${rest}`
    }
    lines.push(line)
  }
  return lines
}
