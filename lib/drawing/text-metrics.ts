/**
 * Widths of the printable ASCII characters in hundredths of the type size, from the space up: the wider of DejaVu Sans
 * Condensed (in the PDF) and of the metrics that Arial-like faces share (an SVG elsewhere falls back to one), rounded up.
 */
const REGULAR_WIDTHS = [
  29, 37, 42, 76, 58, 89, 71, 25, 36, 36, 45, 76, 29, 34, 29, 31, 58, 58, 58, 58, 58, 58, 58, 58, 58, 58, 31, 31, 76,
  76, 76, 56, 102, 67, 67, 73, 73, 67, 62, 78, 73, 28, 50, 67, 56, 84, 73, 78, 67, 78, 73, 67, 62, 73, 67, 95, 67, 67,
  62, 36, 31, 36, 76, 56, 45, 56, 58, 50, 58, 56, 32, 58, 58, 25, 25, 53, 25, 88, 58, 56, 58, 58, 37, 50, 36, 58, 54,
  74, 54, 54, 50, 58, 31, 58, 76,
] as const
const BOLD_WIDTHS = [
  32, 42, 48, 76, 63, 91, 79, 28, 42, 42, 48, 76, 35, 38, 35, 33, 63, 63, 63, 63, 63, 63, 63, 63, 63, 63, 36, 36, 76,
  76, 76, 62, 98, 73, 73, 73, 75, 67, 62, 78, 76, 34, 56, 73, 62, 90, 76, 78, 67, 78, 73, 67, 62, 74, 70, 100, 70, 67,
  66, 42, 33, 42, 76, 56, 45, 61, 65, 56, 65, 62, 40, 65, 65, 31, 31, 60, 31, 94, 65, 62, 65, 65, 45, 56, 44, 65, 59,
  84, 59, 59, 53, 65, 33, 65, 76,
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
