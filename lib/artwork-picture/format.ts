import { z } from 'zod'
import { VarintReader, VarintWriter } from './varint'

/** Corners are kept to this: far below what a screen shows at its nearest. */
export const UNIT_NM = 100

const MAGIC = 'artpic1\n'

const layerHeadSchema = z.object({
  fileName: z.string(),
  /** As the roles of `lib/artwork`; null where nobody knows. */
  role: z.string().nullable(),
  side: z.enum(['top', 'bottom', 'inner']).nullable(),
  /** Of copper, from 0 at the top; null of other layers. */
  copperPlace: z.number().nullable(),
  /** Why the layer is not in the picture; null where it is. */
  leftOutReason: z.string().nullable(),
})

/** What a layer is, beside its geometry. */
export type LayerHead = Readonly<z.infer<typeof layerHeadSchema>>

const count = z.number().int().nonnegative()
const storedHeadSchema = layerHeadSchema.extend({
  tileCount: count,
  pieceCount: count,
  pathCount: count,
  cornerCount: count,
  byteCount: count,
})
type StoredHead = z.infer<typeof storedHeadSchema>

/** A border as x, y of each corner in nm, outer ones and holes alike: what lies within an odd number of a piece's borders is covered. */
type Border = readonly number[]
/** The outer border first, then its holes. */
type Piece = readonly Border[]

export interface LayerToDraw {
  readonly head: LayerHead
  /** Pieces of each tile. */
  readonly tiles: readonly (readonly Piece[])[]
}

/**
 * A layer as it is drawn, in flat arrays. Coordinates in `UNIT_NM`. A tile is a run of pieces, a piece a run of paths, a path a run of corners; each `starts`
 * has one entry more for the end. Pieces of a tile stand by size, the largest first; so do the holes of a piece, behind its outer border.
 */
export interface DrawnLayer {
  readonly head: LayerHead
  readonly corners: Int32Array
  readonly pathStarts: Uint32Array
  /** The longer side of the box round each path. */
  readonly pathSizes: Uint32Array
  readonly pieceStarts: Uint32Array
  readonly tileStarts: Uint32Array
  /** Least x, least y, greatest x, greatest y of each tile's pieces. */
  readonly tileBoxes: Int32Array
}

/** @returns the layers as one file: `artpic1`, the length of a JSON head (four bytes, the lowest first), the head, each layer's numbers as varints */
export function writePicture(layers: readonly LayerToDraw[]): Uint8Array<ArrayBuffer> {
  const written = layers.map(writeLayer)
  const head = new TextEncoder().encode(JSON.stringify(written.map(({ stored }) => stored)))
  const start = MAGIC.length + 4 + head.length
  const bytes = new Uint8Array(start + written.reduce((sum, { body }) => sum + body.length, 0))
  bytes.set(new TextEncoder().encode(MAGIC))
  new DataView(bytes.buffer).setUint32(MAGIC.length, head.length, true)
  bytes.set(head, MAGIC.length + 4)
  let at = start
  for (const { body } of written) {
    bytes.set(body, at)
    at += body.length
  }
  return bytes
}

function writeLayer({ head, tiles }: LayerToDraw): { stored: StoredHead; body: Uint8Array } {
  const writer = new VarintWriter()
  let [tileCount, pieceCount, pathCount, cornerCount] = [0, 0, 0, 0]
  let [penX, penY] = [0, 0]
  for (const tile of tiles) {
    const pieces = tile.map(orderPiece).filter((piece) => piece.length > 0)
    if (pieces.length === 0) continue
    pieces.sort((one, other) => (other[0]?.size ?? 0) - (one[0]?.size ?? 0))
    tileCount += 1
    pieceCount += pieces.length
    writer.unsigned(pieces.length)
    for (const piece of pieces) {
      writer.unsigned(piece.length)
      pathCount += piece.length
      for (const { corners } of piece) {
        writer.unsigned(corners.length / 2)
        cornerCount += corners.length / 2
        for (let at = 0; at < corners.length; at += 2) {
          const [x = 0, y = 0] = [corners[at], corners[at + 1]]
          writer.signed(x - penX)
          writer.signed(y - penY)
          penX = x
          penY = y
        }
      }
    }
  }
  const body = writer.finish()
  return { stored: { ...head, tileCount, pieceCount, pathCount, cornerCount, byteCount: body.length }, body }
}

interface Rounded {
  readonly corners: readonly number[]
  readonly size: number
}

/** Borders in whole units; a piece whose outer border has become nothing is nothing. */
function orderPiece([outer = [], ...holes]: Piece): Rounded[] {
  const first = round(outer)
  if (first.corners.length < 6) return []
  const others = holes.map(round).filter(({ corners }) => corners.length >= 6)
  return [first, ...others.sort((one, other) => other.size - one.size)]
}

function round(border: Border): Rounded {
  const corners: number[] = []
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let at = 0; at + 1 < border.length; at += 2) {
    const x = Math.round((border[at] ?? 0) / UNIT_NM)
    const y = Math.round((border[at + 1] ?? 0) / UNIT_NM)
    if (x === corners.at(-2) && y === corners.at(-1)) continue
    corners.push(x, y)
    minX = Math.min(minX, x)
    minY = Math.min(minY, y)
    maxX = Math.max(maxX, x)
    maxY = Math.max(maxY, y)
  }
  return { corners, size: Math.max(maxX - minX, maxY - minY) }
}

/** @throws RangeError where the bytes are no picture of this version, or end too early */
export function readPicture(bytes: Uint8Array): DrawnLayer[] {
  const decoder = new TextDecoder()
  if (decoder.decode(bytes.subarray(0, MAGIC.length)) !== MAGIC) throw new RangeError('the bytes are no picture')
  const headLength = new DataView(bytes.buffer, bytes.byteOffset).getUint32(MAGIC.length, true)
  let at = MAGIC.length + 4
  const heads = readHeads(decoder.decode(bytes.subarray(at, at + headLength)))
  at += headLength
  return heads.map((head) => {
    const end = at + head.byteCount
    if (end > bytes.length) throw new RangeError('the picture ends too early')
    const layer = readLayer(head, new VarintReader(bytes, at, end))
    at = end
    return layer
  })
}

function readHeads(text: string): StoredHead[] {
  try {
    return z.array(storedHeadSchema).parse(JSON.parse(text))
  } catch {
    throw new RangeError('the head of the picture cannot be read')
  }
}

function readLayer(stored: StoredHead, reader: VarintReader): DrawnLayer {
  const { tileCount, pieceCount, pathCount, cornerCount, byteCount: _byteCount, ...head } = stored
  const corners = new Int32Array(2 * cornerCount)
  const pathStarts = new Uint32Array(pathCount + 1)
  const pathSizes = new Uint32Array(pathCount)
  const pieceStarts = new Uint32Array(pieceCount + 1)
  const tileStarts = new Uint32Array(tileCount + 1)
  const tileBoxes = new Int32Array(4 * tileCount)
  let [piece, path, corner, x, y] = [0, 0, 0, 0, 0]
  for (let tile = 0; tile < tileCount; tile += 1) {
    tileStarts[tile] = piece
    const whole: Box = [Infinity, Infinity, -Infinity, -Infinity]
    for (let pieces = reader.unsigned(); pieces > 0; pieces -= 1) {
      pieceStarts[piece] = path
      for (let paths = reader.unsigned(); paths > 0; paths -= 1) {
        pathStarts[path] = corner
        const box: Box = [Infinity, Infinity, -Infinity, -Infinity]
        for (let left = reader.unsigned(); left > 0; left -= 1) {
          x += reader.signed()
          y += reader.signed()
          corners[2 * corner] = x
          corners[2 * corner + 1] = y
          corner += 1
          widen(box, x, y, x, y)
        }
        pathSizes[path] = Math.max(box[2] - box[0], box[3] - box[1])
        widen(whole, ...box)
        path += 1
      }
      piece += 1
    }
    tileBoxes.set(whole, 4 * tile)
  }
  tileStarts[tileCount] = piece
  pieceStarts[pieceCount] = path
  pathStarts[pathCount] = corner
  if (!reader.isAtEnd || corner !== cornerCount || path !== pathCount || piece !== pieceCount)
    throw new RangeError('the picture holds something else than its head says')
  return { head, corners, pathStarts, pathSizes, pieceStarts, tileStarts, tileBoxes }
}

type Box = [minX: number, minY: number, maxX: number, maxY: number]

function widen(box: Box, minX: number, minY: number, maxX: number, maxY: number): void {
  box[0] = Math.min(box[0], minX)
  box[1] = Math.min(box[1], minY)
  box[2] = Math.max(box[2], maxX)
  box[3] = Math.max(box[3], maxY)
}
