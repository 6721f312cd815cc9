import { unzipSync } from 'fflate'
import { boundGrid, GRID_LIMITS, type GridReading } from './cell'
import { readXml } from './read-xml'
import { readNeutralised } from './text'
import { readSharedStrings, readWorksheet } from './worksheet'

/** Parts of the package that are read; whatever else is in it (macros, links to elsewhere, pictures) is left alone. */
const READ_PARTS =
  /^(_rels\/\.rels|xl\/(workbook\.xml|_rels\/workbook\.xml\.rels|sharedStrings\.xml|worksheets\/[^/]+\.xml))$/i

/**
 * The first worksheet of an Office Open XML workbook (ECMA-376), as text. Formulas are never evaluated, nor is the result
 * that the file remembers of one taken: such a cell is refused by its place.
 */
export function readXlsx(bytes: Uint8Array): GridReading {
  if (bytes.byteLength > GRID_LIMITS.fileBytes) {
    return { ok: false, reason: `It has ${bytes.byteLength} bytes; at most ${GRID_LIMITS.fileBytes} are read.` }
  }
  try {
    const parts = unpack(bytes)
    if (parts === null) return { ok: false, reason: 'Unpacked it is larger than any sheet that is kept here.' }
    const sheet = findFirstWorksheet(parts)
    if (sheet === null) return { ok: false, reason: 'It holds no worksheet.' }
    const strings = parts.get('xl/sharedstrings.xml')
    const grid = readWorksheet(sheet, strings === undefined ? [] : readSharedStrings(strings))
    if (grid === null)
      return { ok: false, reason: `At most ${GRID_LIMITS.rows} rows and ${GRID_LIMITS.columns} columns are read.` }
    return boundGrid({ ...grid, rows: grid.rows.map((row) => row.map(readNeutralised)) })
  } catch (error) {
    const why = error instanceof Error ? error.message : 'it is damaged'
    return { ok: false, reason: `It is not an XLSX workbook that can be read: ${why}.` }
  }
}

/** Parts by their name in lower case; null where they are too large. Sizes are looked at before anything is unpacked. */
function unpack(bytes: Uint8Array): ReadonlyMap<string, string> | null {
  let total = 0
  const files = unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      if (!READ_PARTS.test(name)) return false
      total += originalSize
      return total <= GRID_LIMITS.unpackedBytes
    },
  })
  // What a directory of the archive says of sizes may be untrue: what came out counts too.
  const unpacked = Object.values(files).reduce((sum, file) => sum + file.byteLength, 0)
  if (Math.max(total, unpacked) > GRID_LIMITS.unpackedBytes) return null
  const decoder = new TextDecoder('utf-8', { fatal: true })
  return new Map(Object.entries(files).map(([name, file]) => [name.toLowerCase(), decoder.decode(file)]))
}

function findFirstWorksheet(parts: ReadonlyMap<string, string>): string | null {
  const workbook = parts.get('xl/workbook.xml')
  const relations = parts.get('xl/_rels/workbook.xml.rels')
  if (workbook === undefined || relations === undefined) return null
  let firstId: string | null = null
  readXml(workbook, {
    open: (name, attribute) => {
      if (name === 's:sheet') firstId ??= attribute('r:id')
    },
  })
  let target: string | null = null
  readXml(relations, {
    open: (name, attribute) => {
      if (name === 'p:Relationship' && attribute('Id') === firstId) target = attribute('Target')
    },
  })
  if (target === null) return null
  const path = (target as string).startsWith('/') ? (target as string).slice(1) : `xl/${target as string}`
  return parts.get(path.toLowerCase()) ?? null
}
