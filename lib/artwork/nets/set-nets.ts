import type { CopperStack } from '../copper/copper-stack'
import { attributeOf, FLASH, LINE, NUMBERS_PER_OBJECT, REGION } from '../objects/objects'
import type { ArtworkSet } from '../set/read-set'
import { compareNets, type NetComparison, type NetPlace } from './compare-nets'
import { Connections, type JoiningHole } from './connect'
import { type DrawnConductor, findConductors, findUnnamed } from './drawn-conductors'

/** Nets by one source, held against the copper. */
export interface NetsOfSource extends NetComparison {
  /** The netlist's name; null for what the objects of the copper layers say of themselves (Gerber X2, `.N`). */
  readonly fileName: string | null
  /** Conductors on which none of its places lies. */
  readonly unnamed: readonly DrawnConductor[]
}

export interface SetNets {
  readonly sources: readonly NetsOfSource[]
  /** Conductors that join fewer than two lands, holes or areas: they end nowhere. */
  readonly loose: readonly DrawnConductor[]
  /** Drilled holes of which nobody says whether they are plated: none is taken to join layers. */
  readonly unknownHoleCount: number
  readonly platedHoleCount: number
}

/** Every netlist of a set against its copper; null where no file names a net, or there is no copper. */
export function findSetNets(set: ArtworkSet, stack: CopperStack): SetNets | null {
  if (stack.layers.length === 0) return null
  const { joining, unknownHoleCount } = listHoles(set, stack.layers.length)
  const named = [
    ...set.files.flatMap(({ name, reading }) =>
      reading.kind === 'netlist' && reading.points.length > 0
        ? [{ fileName: name, places: placesOfNetlist(reading.points, stack.layers.length) }]
        : [],
    ),
    { fileName: null, places: placesOfObjects(stack) },
  ].filter(({ places }) => places.length > 0)
  if (named.length === 0) return null
  const connections = new Connections(stack.layers, joining)
  const conductors = findConductors(stack, connections, joining)
  return {
    sources: named.map(({ fileName, places }) => ({
      fileName,
      ...compareNets(places, connections),
      unnamed: findUnnamed(conductors, places, connections),
    })),
    loose: conductors.filter(({ endCount }) => endCount < 2),
    unknownHoleCount,
    platedHoleCount: joining.length,
  }
}

/** Plated holes; slots join by their ends. */
export function listHoles(
  set: ArtworkSet,
  layerCount: number,
): { joining: JoiningHole[]; all: JoiningHole[]; unknownHoleCount: number } {
  const joining: JoiningHole[] = []
  const all: JoiningHole[] = []
  let unknownHoleCount = 0
  for (const { reading, role } of set.files) {
    if (reading.kind !== 'drill') continue
    const span = [
      Math.max(0, Math.min(...(role.span ?? [1])) - 1),
      Math.min(layerCount, Math.max(...(role.span ?? [layerCount]))) - 1,
    ] as const
    const { objects } = reading
    const platings = new Map(reading.tools.map(({ number, plating }) => [number, plating]))
    for (let index = 0; index < objects.count; index += 1) {
      const use = objects.apertures[objects.apertureAt[index] ?? -1]
      const diameterNm = use?.diameterNm ?? 0
      if (diameterNm <= 0) continue
      const plating = platings.get(use?.aperture.code ?? -1) ?? null
      const from = index * NUMBERS_PER_OBJECT
      const ends = objects.kinds[index] === FLASH ? [0] : [0, 2]
      for (const end of ends) {
        const hole = {
          xNm: objects.numbers[from + end] ?? 0,
          yNm: objects.numbers[from + end + 1] ?? 0,
          diameterNm,
          span,
        }
        all.push(hole)
        if (plating === 'plated') joining.push(hole)
      }
      if (plating === null) unknownHoleCount += 1
    }
  }
  return { joining, all, unknownHoleCount }
}

type NetPoints = Extract<ArtworkSet['files'][number]['reading'], { kind: 'netlist' }>['points']

/** Access 0 is both sides; 1 is the first layer (IPC-D-356, from memory). A hole is reached on every layer. */
function placesOfNetlist(points: NetPoints, layerCount: number): NetPlace[] {
  const all = Array.from({ length: layerCount }, (_, at) => at)
  return points.flatMap(({ net, part, pin, xNm, yNm, access, holeNm, line }): NetPlace[] => {
    if (net === '' || net === 'N/C') return []
    const isThrough = holeNm !== null || access === null || access === 0
    const layers = isThrough ? all : [Math.min(access, layerCount) - 1]
    return [{ net, xNm, yNm, layers, name: part === '' ? `line ${line}` : pin === '' ? part : `${part}-${pin}` }]
  })
}

/** Flashes and strokes of which the file says the net. Regions have no place of their own, and what is cleared later lies on no copper. */
function placesOfObjects({ layers }: CopperStack): NetPlace[] {
  return layers.flatMap(({ objects, fileName }, layer) => {
    const places: NetPlace[] = []
    for (let index = 0; index < objects.count; index += 1) {
      const kind = objects.kinds[index]
      if (objects.isClear[index] === 1 || kind === REGION) continue
      const [net] = attributeOf(objects, index, '.N') ?? []
      if (net === undefined || net === '' || net === 'N/C') continue
      const from = index * NUMBERS_PER_OBJECT
      const n = (offset: number) => objects.numbers[from + offset] ?? 0
      // The middle of an arc lies off its chord: one end of it stands for both.
      const [xNm, yNm] = kind === LINE ? [Math.round((n(0) + n(2)) / 2), Math.round((n(1) + n(3)) / 2)] : [n(0), n(1)]
      places.push({ net, xNm, yNm, layers: [layer], name: `${fileName} line ${objects.lines[index]}` })
    }
    return places
  })
}
