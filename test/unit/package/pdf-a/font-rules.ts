import type { PDFDict } from '@cantoo/pdf-lib'
import * as fontkit from 'fontkit'
import { readCodes } from './content'
import { type ReadPdf, reader } from './document'
import { listDrawn } from './page-rules'

/**
 * Fonts of ISO 19005-2:2011, 6.2.11, clauses from memory: every font that draws is in the file, holds every glyph that is drawn, and is as wide as
 * the file says. That each glyph has its character is level U of the standard; it is held too, since a report is searched.
 */
export function findFontFaults(pdf: ReadPdf): string[] {
  const { nameOf, dictOf, find, keysOf, listOf, streamOf } = reader(pdf)
  const fonts = new Map(
    pdf.dictionaries.flatMap(([, one]) =>
      nameOf(one, 'Type') === '/Font' ? [[one, readUsed(pdf, one)] as const] : [],
    ),
  )
  const faults: string[] = []
  for (const [font, codes] of fonts) {
    const [kind, name] = [nameOf(font, 'Subtype'), nameOf(font, 'BaseFont')]
    // Parts of composite fonts, read with the font that holds them.
    if (kind.startsWith('/CIDFont')) continue
    if (kind !== '/Type0') {
      if (!keysOf(dictOf(font, 'FontDescriptor')).some((key) => /^FontFile[23]?$/.test(key))) {
        faults.push(`6.2.11.4.1: the font ${name} is not embedded`)
      } else faults.push(`6.2.11: the font ${name} is of a kind that this test does not judge`)
      continue
    }
    const part = listOf(font, 'DescendantFonts')[0] as PDFDict | undefined
    const file = streamOf(dictOf(part, 'FontDescriptor'), 'FontFile2')
    if (nameOf(font, 'Encoding') !== '/Identity-H') faults.push(`6.2.11.3.3: the font ${name} has another encoding`)
    if (nameOf(part, 'CIDToGIDMap') !== '/Identity') faults.push(`6.2.11.3.2: the font ${name} does not map its glyphs`)
    if (!/Adobe/.test(find(dictOf(part, 'CIDSystemInfo'), 'Registry')?.toString() ?? '')) {
      faults.push(`6.2.11.3.1: the font ${name} does not say of which collection it is`)
    }
    if (file === undefined) {
      faults.push(`6.2.11.4.1: the font ${name} is not embedded`)
      continue
    }
    faults.push(...findGlyphFaults(pdf, { font, part, name, codes }, Buffer.from(file.getContents())))
  }
  return faults
}

/** Codes that any content draws with the font. */
function readUsed(pdf: ReadPdf, font: PDFDict): Set<number> {
  const { dictOf } = reader(pdf)
  const used = new Set<number>()
  for (const { resources, operations } of listDrawn(pdf)) {
    const own = dictOf(resources, 'Font')
    let isCurrent = false
    for (const { operator, operands } of operations) {
      if (operator === 'Tf') isCurrent = dictOf(own, (operands[0] ?? '').slice(1)) === font
      if (isCurrent && (operator === 'TJ' || operator === 'Tj')) for (const code of readCodes(operands)) used.add(code)
    }
  }
  return used
}

interface Composite {
  readonly font: PDFDict
  readonly part: PDFDict | undefined
  readonly name: string
  readonly codes: ReadonlySet<number>
}

/** Thousandths of the em by which widths may differ (6.2.11.5). */
const SLACK = 1

function findGlyphFaults(pdf: ReadPdf, { font, part, name, codes }: Composite, bytes: Buffer): string[] {
  const { streamOf } = reader(pdf)
  const program = fontkit.create(bytes) as fontkit.Font
  const widths = readWidths(pdf, part)
  const map = new TextDecoder('latin1').decode(streamOf(font, 'ToUnicode')?.getContents() ?? new Uint8Array())
  const characters = countCharacters(map)
  const faults: string[] = []
  for (const code of codes) {
    if (code === 0) faults.push(`6.2.11.8: ${name} draws the glyph for what is not there`)
    if (code >= program.numGlyphs) {
      faults.push(`6.2.11.4.1: ${name} does not hold the glyph ${code}`)
      continue
    }
    const drawn = (program.getGlyph(code).advanceWidth * 1000) / program.unitsPerEm
    const stated = widths.get(code) ?? 1000
    if (Math.abs(drawn - stated) > SLACK)
      faults.push(`6.2.11.5: ${name}, glyph ${code}: ${drawn} wide, stated ${stated}`)
    if (code >= characters) faults.push(`6.2.11.7 (level U): ${name}, glyph ${code} has no character`)
  }
  return faults
}

/** `W` (ISO 32000-1:2008, 9.7.4.3): `first [w w w]` or `first last w`. */
function readWidths(pdf: ReadPdf, part: PDFDict | undefined): Map<number, number> {
  const { find } = reader(pdf)
  const text = find(part, 'W')?.toString() ?? ''
  const widths = new Map<number, number>()
  for (const [, first = '', list, last, width] of text
    .slice(1, -1)
    .matchAll(/(\d+)\s*(?:\[([^\]]*)\]|(\d+)\s+([\d.]+))/g)) {
    const from = Number(first)
    if (list !== undefined) {
      list
        .trim()
        .split(/\s+/)
        .forEach((one, at) => {
          widths.set(from + at, Number(one))
        })
    } else for (let code = from; code <= Number(last); code += 1) widths.set(code, Number(width))
  }
  return widths
}

/** Glyphs of our writer are numbered from zero without a gap. */
function countCharacters(map: string): number {
  return [...map.matchAll(/<([0-9a-f]{4})> <([0-9a-f]{4})> \[/gi)].reduce(
    (most, [, , last = '']) => Math.max(most, Number.parseInt(last, 16) + 1),
    0,
  )
}
