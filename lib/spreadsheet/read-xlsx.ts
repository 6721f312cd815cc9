import { unzipSync } from 'fflate'
import { boundGrid, GRID_LIMITS, type GridReading } from './cell'
import { readXml } from './read-xml'
import { readNeutralised } from './text'
import { readSharedStrings, readWorksheet } from './worksheet'

/** Parts of the package that are read; whatever else is in it (macros, links to elsewhere, pictures) is left alone. */
const READ_PARTS =
  /^(_rels\/\.rels|xl\/(workbook\.xml|_rels\/workbook\.xml\.rels|sharedStrings\.xml|worksheets\/[^/]+\.xml))$/i

/**
 * A worksheet of an Office Open XML workbook (ECMA-376), as text: the first one that is wanted, else the first. Formulas are never evaluated, nor is the result
 * that the file remembers of one taken: such a cell is refused by its place.
 */
export function readXlsx(
  bytes: Uint8Array,
  isWanted: (rows: readonly (readonly string[])[]) => boolean = () => true,
): GridReading {
  if (bytes.byteLength > GRID_LIMITS.fileBytes) {
    return { ok: false, reason: `It has ${bytes.byteLength} bytes; at most ${GRID_LIMITS.fileBytes} are read.` }
  }
  try {
    const parts = unpack(bytes)
    if (parts === null) return { ok: false, reason: 'Unpacked it is larger than any sheet that is kept here.' }
    const sheets = listWorksheets(parts)
    if (sheets.length === 0) return { ok: false, reason: 'It holds no worksheet.' }
    const strings = parts.get('xl/sharedstrings.xml')
    const shared = strings === undefined ? [] : readSharedStrings(strings)
    let first: GridReading | null = null
    for (const sheet of sheets) {
      const grid = readWorksheet(sheet, shared)
      const reading: GridReading =
        grid === null
          ? { ok: false, reason: `At most ${GRID_LIMITS.rows} rows and ${GRID_LIMITS.columns} columns are read.` }
          : boundGrid({ ...grid, rows: grid.rows.map((row) => row.map(readNeutralised)) })
      if (reading.ok && isWanted(reading.grid.rows)) return reading
      first ??= reading
    }
    return first ?? { ok: false, reason: 'It holds no worksheet.' }
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

/** In the order of the workbook. */
function listWorksheets(parts: ReadonlyMap<string, string>): readonly string[] {
  const workbook = parts.get('xl/workbook.xml')
  const relations = parts.get('xl/_rels/workbook.xml.rels')
  if (workbook === undefined || relations === undefined) return []
  const ids: string[] = []
  readXml(workbook, {
    open: (name, attribute) => {
      const id = name === 's:sheet' ? attribute('r:id') : null
      if (typeof id === 'string') ids.push(id)
    },
  })
  const targets = new Map<string, string>()
  readXml(relations, {
    open: (name, attribute) => {
      const [id, target] = name === 'p:Relationship' ? [attribute('Id'), attribute('Target')] : [null, null]
      if (typeof id === 'string' && typeof target === 'string') targets.set(id, target)
    },
  })
  return ids.flatMap((id) => {
    const target = targets.get(id)
    if (target === undefined) return []
    const path = target.startsWith('/') ? target.slice(1) : `xl/${target}`
    return parts.get(path.toLowerCase()) ?? []
  })
}
