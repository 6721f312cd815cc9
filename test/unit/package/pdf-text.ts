/**
 * The text of a PDF as it is drawn, page by page, for tests. Reads what our writer writes: uncompressed streams, subset fonts with a
 * table from glyphs to characters, glyphs in hexadecimal. Spaces are those between glyph runs; compare without them.
 */
export function readPdfPages(bytes: Uint8Array): string[] {
  const text = new TextDecoder('latin1').decode(bytes)
  const objects = new Map<string, string>()
  for (const [, id = '', body = ''] of text.matchAll(/(\d+) 0 obj\b([\s\S]*?)\bendobj/g)) objects.set(id, body)
  const fonts = new Map<string, ReadonlyMap<number, string>>()
  for (const body of objects.values()) {
    for (const [, name = '', id = ''] of body.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const table = /\/ToUnicode (\d+) 0 R/.exec(objects.get(id) ?? '')?.[1]
      if (table !== undefined) fonts.set(name, readGlyphTable(objects.get(table) ?? ''))
    }
  }
  return [...objects.values()].flatMap((body) => {
    const contents = /\/Type \/Page\b[\s\S]*?\/Contents (\d+) 0 R/.exec(body)?.[1]
    return contents === undefined ? [] : [readContent(objects.get(contents) ?? '', fonts)]
  })
}

function decodeUtf16(hex: string): string {
  return (hex.match(/.{4}/g) ?? []).map((unit) => String.fromCharCode(Number.parseInt(unit, 16))).join('')
}

/** `<0000> <00ff> [<0041> <0042> ...]`: characters of the glyphs from the first number on. */
function readGlyphTable(body: string): Map<number, string> {
  const characters = new Map<number, string>()
  for (const [, first = '', list = ''] of body.matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[([^\]]*)\]/gi)) {
    ;[...list.matchAll(/<([0-9a-f\s]*)>/gi)].forEach(([, hex = ''], at) => {
      characters.set(Number.parseInt(first, 16) + at, decodeUtf16(hex.replaceAll(/\s/g, '')))
    })
  }
  return characters
}

function readContent(body: string, fonts: ReadonlyMap<string, ReadonlyMap<number, string>>): string {
  let characters: ReadonlyMap<number, string> = new Map()
  let text = ''
  for (const [, font, run] of body.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
    if (font !== undefined) {
      characters = fonts.get(font) ?? new Map()
      continue
    }
    for (const [, hex = ''] of (run ?? '').matchAll(/<([0-9a-f]*)>/gi)) {
      for (const glyph of hex.match(/.{4}/g) ?? []) text += characters.get(Number.parseInt(glyph, 16)) ?? '\uFFFD'
    }
    text += ' '
  }
  return text
}
