/**
 * Marks every page of a PDF that this program wrote, by an incremental update: what was there stays byte for byte, and
 * what is added stands after it.
 *
 * Source  ISO 32000-1:2008, 7.5.6 (incremental updates) and 12.5.6.12 (rubber stamp annotations); from memory
 */
export function markPdf(bytes: Uint8Array, lines: readonly string[]): Uint8Array {
  const text = Buffer.from(bytes).toString('latin1')
  const trailer = readTrailer(text)
  let next = trailer.size
  const added: { readonly id: number; readonly body: string }[] = []
  const add = (body: string) => {
    added.push({ id: next, body })
    next += 1
    return next - 1
  }
  const font = add('<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica-Bold /Encoding /WinAnsiEncoding >>')
  const changed: { readonly id: number; readonly body: string }[] = []
  for (const page of findPages(text)) {
    const box = readBox(page.body)
    const height = 10 + lines.length * 12
    const stream = drawMark(lines, box.width, height)
    const form = add(
      `<< /Type /XObject /Subtype /Form /BBox [0 0 ${box.width} ${height}] /Resources << /Font << /F ${font} 0 R >> >> /Length ${stream.length} >>\nstream\n${stream}\nendstream`,
    )
    const annotation = add(
      `<< /Type /Annot /Subtype /Stamp /Rect [0 ${box.height - height} ${box.width} ${box.height}] /F 4 /Contents ${literal(lines.join(' '))} /AP << /N ${form} 0 R >> >>`,
    )
    changed.push({ id: page.id, body: withAnnotation(page.body, annotation) })
  }
  if (changed.length === 0) throw new TypeError('the PDF has no pages to mark')
  changed.push(...withoutArchivalClaim(text, trailer))
  return append(bytes, trailer, next, [...changed, ...added])
}

/** The mark's typeface is not embedded, so a marked copy is no PDF/A: it must not go on saying that it is one. */
function withoutArchivalClaim(text: string, { root }: Trailer): { readonly id: number; readonly body: string }[] {
  const id = Number.parseInt(root, 10)
  const catalog = findObjects(text).findLast((object) => object.id === id)
  if (catalog === undefined) throw new TypeError('the PDF has no catalogue of the kind that this program writes')
  return [{ id, body: catalog.body.replace(/\n\/(Metadata \d+ 0 R|OutputIntents \[[^\]]*\])/g, '') }]
}

interface Trailer {
  readonly size: number
  readonly root: string
  readonly info: string
  readonly id: string
  readonly startXref: number
}

function readTrailer(text: string): Trailer {
  const at = text.lastIndexOf('trailer')
  const dictionary = text.slice(at)
  const size = /\/Size (\d+)/.exec(dictionary)?.[1]
  const root = /\/Root (\d+ \d+ R)/.exec(dictionary)?.[1]
  const start = /startxref\s+(\d+)/.exec(dictionary)?.[1]
  if (at < 0 || size === undefined || root === undefined || start === undefined) {
    throw new TypeError('the PDF has no trailer of the kind that this program writes')
  }
  return {
    size: Number(size),
    root,
    info: /\/Info (\d+ \d+ R)/.exec(dictionary)?.[1] ?? '',
    id: /\/ID (\[[^\]]*\])/.exec(dictionary)?.[1] ?? '',
    startXref: Number(start),
  }
}

function findObjects(text: string): { readonly id: number; readonly body: string }[] {
  const objects = text.matchAll(/(?:^|\n)(\d+) 0 obj\n(<<(?:(?!endobj|\nstream)[\s\S])*?\n>>)\nendobj/g)
  return [...objects].map(([, id, body = '']) => ({ id: Number(id), body }))
}

const findPages = (text: string) => findObjects(text).filter(({ body }) => /\/Type \/Page\n/.test(body))

function readBox(body: string): { readonly width: number; readonly height: number } {
  const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(body)
  if (box === null) throw new TypeError('a page of the PDF has no size')
  return { width: Number(box[1]), height: Number(box[2]) }
}

function withAnnotation(body: string, annotation: number): string {
  if (!/\/Annots \[/.test(body)) return body.replace(/\n>>$/, `\n/Annots [${annotation} 0 R]\n>>`)
  return body.replace(/\/Annots \[/, `/Annots [${annotation} 0 R `)
}

/** A PDF string of printable ASCII and what WinAnsi has; anything else becomes a question mark. */
function literal(text: string): string {
  const plain = [...text].map((sign) => (sign >= ' ' && sign <= '~' ? sign : '?')).join('')
  return `(${plain.replaceAll(/[\\()]/g, (sign) => `\\${sign}`)})`
}

function drawMark(lines: readonly string[], width: number, height: number): string {
  const rows = lines.map((line, index) => `1 0 0 1 12 ${height - 15 - index * 12} Tm ${literal(line)} Tj`)
  return ['q 0.72 0.07 0.07 rg', `0 0 ${width} ${height} re f Q`, 'BT /F 10 Tf 1 1 1 rg', ...rows, 'ET'].join('\n')
}

function append(
  bytes: Uint8Array,
  trailer: Trailer,
  size: number,
  objects: readonly { readonly id: number; readonly body: string }[],
): Uint8Array {
  let at = bytes.length + 1
  const parts: string[] = []
  const entries: string[] = []
  for (const { id, body } of [...objects].sort((a, b) => a.id - b.id)) {
    const part = `${id} 0 obj\n${body}\nendobj\n`
    entries.push(`${id} 1\n${String(at).padStart(10, '0')} 00000 n \n`)
    parts.push(part)
    at += part.length
  }
  const info = trailer.info === '' ? '' : ` /Info ${trailer.info}`
  const id = trailer.id === '' ? '' : ` /ID ${trailer.id}`
  const tail = `xref\n${entries.join('')}trailer\n<< /Size ${size} /Root ${trailer.root}${info}${id} /Prev ${trailer.startXref} >>\nstartxref\n${at}\n%%EOF\n`
  return new Uint8Array(Buffer.concat([Buffer.from(bytes), Buffer.from(`\n${parts.join('')}${tail}`, 'latin1')]))
}
