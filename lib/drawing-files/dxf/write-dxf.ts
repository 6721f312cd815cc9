import type { Piece } from '../curves'
import { circleThrough } from '../curves'

/** What a file is written from: ways in mm on named layers. */
export interface WrittenStroke {
  readonly layer: string
  readonly pieces: readonly Piece[]
  readonly isClosed: boolean
}

export interface WrittenCircle {
  readonly layer: string
  readonly middle: readonly [number, number]
  readonly radius: number
}

export interface WrittenDrawing {
  /** In the order in which a reader lists them, with a colour of the index (1 to 255). */
  readonly layers: readonly { readonly name: string; readonly colour: number }[]
  readonly strokes: readonly WrittenStroke[]
  readonly circles: readonly WrittenCircle[]
}

/**
 * A DXF of version AC1015 in mm: polylines with bulge, and circles. Tables, blocks and dictionary are the least that this version asks for, each
 * with handle and owner (DXF reference; which of them programs insist on is from memory).
 */
export function writeDxf(drawing: WrittenDrawing): string {
  const file = new Writer()
  const layers = drawing.layers.some(({ name }) => name === '0')
    ? drawing.layers
    : [{ name: '0', colour: 7 }, ...drawing.layers]
  const body = new Writer(file)
  writeTables(body, layers)
  writeBlocks(body)
  writeEntities(body, drawing)
  writeObjects(body)
  // The header names the next free handle, so it is written last and stands first.
  const header = new Writer(file)
  header.put(0, 'SECTION').put(2, 'HEADER')
  header.put(9, '$ACADVER').put(1, 'AC1015')
  header.put(9, '$HANDSEED').put(5, file.nextHandle())
  header.put(9, '$INSUNITS').put(70, 4)
  header.put(9, '$MEASUREMENT').put(70, 1)
  header.put(0, 'ENDSEC')
  return `${header.text()}${body.text()}  0\r\nEOF\r\n`
}

class Writer {
  private readonly lines: string[] = []
  private last = 0x20

  constructor(private readonly handles: Writer | null = null) {}

  put(code: number, value: string | number): this {
    this.lines.push(String(code).padStart(3), typeof value === 'number' ? writeNumber(value) : value)
    return this
  }

  nextHandle(): string {
    if (this.handles !== null) return this.handles.nextHandle()
    this.last += 1
    return this.last.toString(16).toUpperCase()
  }

  text(): string {
    return this.lines.map((line) => `${line}\r\n`).join('')
  }
}

/** Plain decimals; 0 is never negative. Tiny numbers would be written with a power of ten, which few readers know. */
function writeNumber(value: number): string {
  if (Number.isInteger(value)) return String(value + 0)
  const text = String(value)
  return text.includes('e') ? String(Math.round(value * 1e6) / 1e6 + 0) : text
}

/** Names outside of ASCII are written by number, since this version has no one code page. */
const writeName = (name: string): string =>
  [...name]
    .flatMap((letter) => [...letter.split('')])
    .map((letter) => {
      const code = letter.charCodeAt(0)
      return code >= 32 && code < 127 ? letter : `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`
    })
    .join('')

/** Handles of what others refer to. */
const ROOT = 'C'
const LAYER_TABLE = '2'
const RECORD_TABLE = '1'
const MODEL = '1F'
const PAPER = '1B'

function writeTables(out: Writer, layers: WrittenDrawing['layers']): void {
  out.put(0, 'SECTION').put(2, 'TABLES')
  table(out, 'VPORT', '8', 0)
  table(out, 'LTYPE', '5', 3)
  for (const [name, handle, says] of [
    ['ByBlock', '14', ''],
    ['ByLayer', '15', ''],
    ['Continuous', '16', 'Solid line'],
  ] as const) {
    record(out, 'LTYPE', handle, '5', 'AcDbLinetypeTableRecord').put(2, name).put(70, 0)
    out.put(3, says).put(72, 65).put(73, 0).put(40, 0)
  }
  out.put(0, 'ENDTAB')
  tableHead(out, 'LAYER', LAYER_TABLE, layers.length)
  for (const { name, colour } of layers) {
    const handle = name === '0' ? '10' : out.nextHandle()
    record(out, 'LAYER', handle, LAYER_TABLE, 'AcDbLayerTableRecord').put(2, writeName(name)).put(70, 0)
    out.put(62, colour).put(6, 'Continuous')
  }
  out.put(0, 'ENDTAB')
  tableHead(out, 'STYLE', '3', 1)
  record(out, 'STYLE', '11', '3', 'AcDbTextStyleTableRecord').put(2, 'Standard').put(70, 0)
  out.put(40, 0).put(41, 1).put(50, 0).put(71, 0).put(42, 2.5).put(3, 'txt').put(4, '').put(0, 'ENDTAB')
  for (const [name, handle] of [
    ['VIEW', '6'],
    ['UCS', '7'],
  ] as const) {
    tableHead(out, name, handle, 0).put(0, 'ENDTAB')
  }
  tableHead(out, 'APPID', '9', 1)
  record(out, 'APPID', '12', '9', 'AcDbRegAppTableRecord').put(2, 'ACAD').put(70, 0).put(0, 'ENDTAB')
  tableHead(out, 'DIMSTYLE', 'A', 0).put(100, 'AcDbDimStyleTable').put(71, 0).put(0, 'ENDTAB')
  tableHead(out, 'BLOCK_RECORD', RECORD_TABLE, 2)
  record(out, 'BLOCK_RECORD', MODEL, RECORD_TABLE, 'AcDbBlockTableRecord').put(2, '*Model_Space')
  record(out, 'BLOCK_RECORD', PAPER, RECORD_TABLE, 'AcDbBlockTableRecord').put(2, '*Paper_Space')
  out.put(0, 'ENDTAB').put(0, 'ENDSEC')
}

function tableHead(out: Writer, name: string, handle: string, count: number): Writer {
  return out.put(0, 'TABLE').put(2, name).put(5, handle).put(330, '0').put(100, 'AcDbSymbolTable').put(70, count)
}

/** An empty table ends at once; the code that fills the others ends them. */
function table(out: Writer, name: string, handle: string, count: number): void {
  tableHead(out, name, handle, count)
  if (count === 0) out.put(0, 'ENDTAB')
}

function record(out: Writer, type: string, handle: string, owner: string, mark: string): Writer {
  return out.put(0, type).put(5, handle).put(330, owner).put(100, 'AcDbSymbolTableRecord').put(100, mark)
}

function writeBlocks(out: Writer): void {
  out.put(0, 'SECTION').put(2, 'BLOCKS')
  for (const [name, owner, begin, end] of [
    ['*Model_Space', MODEL, '17', '18'],
    ['*Paper_Space', PAPER, '19', '1A'],
  ] as const) {
    const paper = () => (name === '*Paper_Space' ? out.put(67, 1) : out)
    out.put(0, 'BLOCK').put(5, begin).put(330, owner).put(100, 'AcDbEntity')
    paper().put(8, '0').put(100, 'AcDbBlockBegin').put(2, name).put(70, 0)
    out.put(10, 0).put(20, 0).put(30, 0).put(3, name).put(1, '')
    out.put(0, 'ENDBLK').put(5, end).put(330, owner).put(100, 'AcDbEntity')
    paper().put(8, '0').put(100, 'AcDbBlockEnd')
  }
  out.put(0, 'ENDSEC')
}

function writeEntities(out: Writer, { strokes, circles }: WrittenDrawing): void {
  out.put(0, 'SECTION').put(2, 'ENTITIES')
  const begin = (type: string, layer: string, mark: string) =>
    out
      .put(0, type)
      .put(5, out.nextHandle())
      .put(330, MODEL)
      .put(100, 'AcDbEntity')
      .put(8, writeName(layer))
      .put(100, mark)
  for (const { layer, pieces, isClosed } of strokes) {
    const last = pieces.at(-1)
    if (last === undefined) continue
    begin('LWPOLYLINE', layer, 'AcDbPolyline').put(90, pieces.length + (isClosed ? 0 : 1))
    out.put(70, isClosed ? 1 : 0).put(43, 0)
    for (const piece of pieces) {
      out.put(10, piece.from[0]).put(20, piece.from[1])
      const bulge = bulgeOf(piece)
      if (bulge !== 0) out.put(42, bulge)
    }
    if (!isClosed) out.put(10, last.to[0]).put(20, last.to[1])
  }
  for (const { layer, middle, radius } of circles) {
    begin('CIRCLE', layer, 'AcDbCircle').put(10, middle[0]).put(20, middle[1]).put(30, 0).put(40, radius)
  }
  out.put(0, 'ENDSEC')
}

/** Tangent of a quarter of the angle: of an arc up to a half circle, by the angle at which its chord is seen. */
function bulgeOf({ from, via, to }: Piece): number {
  if (via === null) return 0
  const circle = circleThrough(from, via, to)
  if (circle === null) return 0
  const [, radius] = circle
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const half = Math.asin(Math.min(1, Math.hypot(dx, dy) / 2 / radius))
  const isLeft = dx * (via[1] - from[1]) - dy * (via[0] - from[0]) < 0
  return (isLeft ? 1 : -1) * Math.tan(half / 2)
}

function writeObjects(out: Writer): void {
  out.put(0, 'SECTION').put(2, 'OBJECTS')
  out.put(0, 'DICTIONARY').put(5, ROOT).put(330, '0').put(100, 'AcDbDictionary').put(281, 1)
  out.put(3, 'ACAD_GROUP').put(350, 'D')
  out.put(0, 'DICTIONARY').put(5, 'D').put(330, ROOT).put(100, 'AcDbDictionary').put(281, 1)
  out.put(0, 'ENDSEC')
}
