import type { LayerObjects } from '../objects/objects'
import type { ArtworkSet, SetFile } from '../set/read-set'
import { shapeOfLayer } from '../shape/copper'
import { CopperEdges } from './edges'
import { Islands } from './islands'

/** A copper layer of a set with what it covers. */
export interface StackedCopper {
  readonly fileName: string
  readonly objects: LayerObjects
  readonly areaMm2: number
  readonly islands: Islands
  readonly edges: CopperEdges
}

export interface CopperStack {
  /** From the top down; where the order is not known, as the files come. */
  readonly layers: readonly StackedCopper[]
  /** Why nobody knows which layer lies over which; null where it is known. */
  readonly unorderedReason: string | null
}

/** More objects than this on a layer are a picture, and take minutes. */
const MOST_OBJECTS = 1_500_000

/** What the copper layers of a set cover. Work for a thread: a layer of a hundred thousand objects takes seconds. */
export function buildCopperStack(set: ArtworkSet, onProgress: (fraction: number) => void = () => {}): CopperStack {
  const files = set.files.filter(
    ({ role, reading }) => role.role === 'copper' && reading.kind === 'gerber' && reading.objects.count <= MOST_OBJECTS,
  )
  const { ordered, reason } = orderCopper(files)
  const layers = ordered.flatMap(({ name, reading }, at): StackedCopper[] => {
    if (reading.kind !== 'gerber') return []
    const shape = shapeOfLayer(reading.objects)
    const islands = new Islands(shape)
    onProgress((at + 1) / ordered.length)
    return [
      {
        fileName: name,
        objects: reading.objects,
        areaMm2: shape.areaMm2,
        islands,
        edges: new CopperEdges(islands),
      },
    ]
  })
  return { layers, unorderedReason: reason }
}

/** Numbers decide; without them the top is first, the bottom last, and one layer may lie between. Names such as `.G1`, `.G2` count inner layers from the top. */
export function orderCopper(files: readonly SetFile[]): { ordered: SetFile[]; reason: string | null } {
  const count = files.length
  const placeOf = ({ role, name }: SetFile): number | null => {
    if (role.side === 'top') return 1
    if (role.side === 'bottom') return count
    if (role.layerNumber !== null) return role.layerNumber
    const inner = /\.g(?:p)?(\d{1,2})$/i.exec(name)
    if (inner !== null) return 1 + Number(inner[1])
    return count === 3 ? 2 : null
  }
  const places = new Map(files.map((file) => [file, placeOf(file)]))
  const ordered = [...files].sort((one, other) => (places.get(one) ?? 1.5) - (places.get(other) ?? 1.5))
  const known = ordered.map((file) => places.get(file) ?? null)
  const isOrdered = known.every((place, at) => place !== null && (at === 0 || (known[at - 1] ?? 0) < place))
  return {
    ordered,
    reason: isOrdered || count < 2 ? null : 'the files do not say in which order the copper layers lie',
  }
}
