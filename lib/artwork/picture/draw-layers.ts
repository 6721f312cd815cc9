import type { LayerToDraw } from '@/lib/artwork-picture'
import type { CopperStack } from '../copper/copper-stack'
import { Islands } from '../copper/islands'
import type { ArtworkSet, SetFile } from '../set/read-set'
import { shapeOfLayer } from '../shape/copper'

/** More objects than this on a layer that is no copper are a picture of their own, and would hold reading up. Our choice. */
const MOST_OBJECTS = 200_000
/** Corners over all layers beyond which the rest is left out: some 30 MB on the way to the reader. */
const MOST_CORNERS = 8_000_000
/** Arcs of layers that are no copper are followed this nearly: for the eye. */
const TOLERANCE_NM = 2000

/**
 * The layers of a set as they are looked at, copper first and from the top down, then the others by name: what each covers, in tiles. A layer that is left out
 * stands in the list with its reason. Work for a thread.
 */
export function drawLayers(set: ArtworkSet, stack: CopperStack): LayerToDraw[] {
  const drawn = set.files.filter(({ reading }) => reading.kind === 'gerber' || reading.kind === 'drill')
  const placeOf = ({ name }: SetFile): number => {
    const place = stack.layers.findIndex(({ fileName }) => fileName === name)
    return place < 0 ? Infinity : place
  }
  const ordered = [...drawn].sort((one, other) => {
    const [a, b] = [placeOf(one), placeOf(other)]
    return a === b ? (one.name < other.name ? -1 : 1) : a - b
  })
  let cornersLeft = MOST_CORNERS
  return ordered.map((file): LayerToDraw => {
    const place = placeOf(file)
    const head = {
      fileName: file.name,
      role: file.role.role,
      side: file.role.side,
      copperPlace: place === Infinity ? null : place,
      leftOutReason: null,
    }
    const leaveOut = (leftOutReason: string): LayerToDraw => ({ head: { ...head, leftOutReason }, tiles: [] })
    const islands = place === Infinity ? shapeOf(file) : (stack.layers[place]?.islands ?? null)
    if (islands === null) return leaveOut('it has more objects than are drawn')
    const corners = countCorners(islands)
    if (corners > cornersLeft) return leaveOut('the layers before it have as many corners as are drawn')
    cornersLeft -= corners
    return { head, tiles: piecesOf(islands) }
  })
}

function shapeOf({ reading }: SetFile): Islands | null {
  if (reading.kind !== 'gerber' && reading.kind !== 'drill') return null
  if (reading.objects.count > MOST_OBJECTS) return null
  return new Islands(shapeOfLayer(reading.objects, { toleranceNm: TOLERANCE_NM }))
}

const countCorners = ({ tiles }: Islands): number =>
  tiles.reduce((sum, { borders }) => sum + borders.reduce((inTile, { path }) => inTile + path.length / 2, 0), 0)

/** Of each tile: every piece with its outer border before its holes. */
function piecesOf({ tiles }: Islands): LayerToDraw['tiles'] {
  return tiles.map(({ borders }) => {
    const pieces = new Map<number, number[][]>()
    for (const { path, areaNm2, piece } of borders) {
      const paths = pieces.get(piece)
      if (paths === undefined) pieces.set(piece, [path])
      else if (areaNm2 > 0) paths.unshift(path)
      else paths.push(path)
    }
    return [...pieces.values()]
  })
}
