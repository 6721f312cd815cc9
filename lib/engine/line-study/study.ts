import type { EvaluationContext } from '../context'
import {
  describeZoneLine,
  findDistanceUm,
  findFieldAcrossUm,
  findWidthMm,
  solveCoupling,
  solveRoughly,
  type ZoneLine,
} from '../lines'
import {
  type ChargedFace,
  findChargedFaces,
  findLineLoss,
  findLossBases,
  getLineFigures,
  getPairFigures,
  isQuasiStatic,
  type LineLoss,
  type LineMode,
  type LineSection,
  type MeshFineness,
  ROUGH_FINENESS,
  solveSection,
  USUAL_FINENESS,
} from '../signals'
import { followSpaces, type SpacingPoint } from './over-spacing'
import { findShareInBand, type ShareInBand } from './share-in-band'

type Solvable = Extract<ZoneLine, { kind: 'solvable' }>

/** A conductor with a stated impedance in a zone whose section can be solved. */
export interface StudiedLine {
  readonly conductorId: string
  readonly conductorName: string
  readonly zoneId: string
  readonly zoneName: string
  readonly isPair: boolean
  readonly widthMm: number
  readonly targetOhm: number
  /** Null where none is stated. */
  readonly tolerancePct: number | null
  readonly line: Solvable
  /** What carries its field. */
  readonly acrossUm: number
  /** Conductor layers of the section, other than its own: where a second line may lie. */
  readonly otherLayers: readonly { readonly layerId: string; readonly name: string }[]
  readonly resistivityOhmMm2PerM: number | null
}

export interface CurvePoint {
  readonly size: number
  readonly impedanceOhm: number
}

export interface OffsetPoint {
  readonly offsetMm: number
  /** Saturated step at the near end, and the other convention; shares of the step. */
  readonly nearEndFraction: number
  readonly backwardFraction: number
  readonly farEndFraction: number
  /** Share of the line's width that lies over the other: 1 is stacked, 0 staggered. */
  readonly overlapFraction: number
}

export interface ModeLosses {
  readonly mode: LineMode
  /** Smooth copper, and copper as rough as its skin is deep: the same model's bounds. */
  readonly points: readonly { readonly frequencyMhz: number; readonly smooth: LineLoss; readonly rough: LineLoss }[]
}

export interface LineStudy {
  readonly section: LineSection
  readonly faces: readonly ChargedFace[]
  readonly impedanceOhm: number
  readonly effectivePermittivity: number
  readonly delayPsPerMm: number
  /** Null for a single line. */
  readonly modes: { readonly evenOhm: number; readonly oddOhm: number; readonly commonOhm: number } | null
  /** The same section by ever finer pieces. */
  readonly refinement: readonly { readonly unknowns: number; readonly impedanceOhm: number }[]
  /** Sizes in mm. */
  readonly overWidth: readonly CurvePoint[]
  /** Sizes in um of the dielectrics on the side without the reference; 0 is bare. Empty where there are none. */
  readonly overCover: readonly CurvePoint[]
  readonly widthForTargetMm: number | null
  readonly distanceForTargetUm: number | null
  readonly distanceUm: number
  readonly share: ShareInBand | null
  readonly crosstalk: readonly { readonly layerName: string; readonly points: readonly OffsetPoint[] }[]
  /** To a line beside it on its own layer, with and without a guard. Empty for a pair, whose lines are meant to couple. */
  readonly overSpace: readonly SpacingPoint[]
  /** Of a single line, or of each mode of a pair; empty where they cannot be computed. */
  readonly losses: readonly ModeLosses[]
}

/** Lines whose impedance is stated, in each zone that has their layer and their reference. */
export function listStudiedLines(context: EvaluationContext): readonly StudiedLine[] {
  return context.design.features.conductors.flatMap((conductor, index) => {
    const { widthMm, impedanceOhm, impedance } = conductor
    if (widthMm === null || impedanceOhm === null) return []
    return context.zones.flatMap((zone): StudiedLine[] => {
      const line = describeZoneLine({ ...conductor, widthMm }, index, zone, context)
      if (line.kind !== 'solvable') return []
      const own = context.layersById.get(conductor.layerId)
      const foil = own?.kind === 'conductor' ? context.findMaterial(own.materialId) : null
      return [
        {
          conductorId: conductor.id,
          conductorName: conductor.name,
          zoneId: zone.zoneId,
          zoneName: zone.name,
          isPair: impedance.kind === 'pair',
          widthMm,
          targetOhm: impedanceOhm,
          tolerancePct: impedance.tolerancePct,
          line,
          acrossUm: findFieldAcrossUm(line, { ...conductor, widthMm }),
          otherLayers: zone.layers.flatMap(({ layerId, name, kind, coverageFraction }) =>
            kind === 'conductor' && (coverageFraction ?? 0) > 0 && layerId !== conductor.layerId
              ? [{ layerId, name }]
              : [],
          ),
          resistivityOhmMm2PerM: foil?.foil?.resistivityOhmMm2PerM.value ?? null,
        },
      ]
    })
  })
}

const WIDTH_TIMES = [0.5, 0.63, 0.8, 1, 1.26, 1.6, 2]
const COVER_TIMES = [0, 0.25, 0.5, 1, 1.5, 2, 3]
/** In widths of the line. */
const OFFSETS = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 3, 4]
const FREQUENCIES_MHZ = [100, 300, 1000, 3000, 10_000]
/** Pieces of the last step are so small that the figure stands still. */
const FINER: readonly MeshFineness[] = [
  ROUGH_FINENESS,
  { cornerShare: 0.008, growth: 2.6, cornerGrowth: 8, order: 3 },
  USUAL_FINENESS,
  { cornerShare: 0.001, growth: 1.8, cornerGrowth: 4, order: 5 },
]

/**
 * Curves and figures of a line. Between solutions it yields, so that a page stays alive.
 *
 * @returns null where the section has no solution
 */
export function* studyLine(studied: StudiedLine): Generator<undefined, LineStudy | null> {
  const { line, widthMm, isPair, targetOhm, tolerancePct } = studied
  const section = line.makeSection('nominal', widthMm)
  const solved = solveSection(section)
  if (!solved.ok) return null
  yield
  const pair = isPair ? getPairFigures(solved) : null
  const figures = pair === null ? getLineFigures(solved) : { ...pair.odd, impedanceOhm: pair.differentialOhm }
  const faces = findChargedFaces(section, isPair ? [0.5, -0.5] : [1]) ?? []
  yield
  const refinement: { unknowns: number; impedanceOhm: number }[] = []
  for (const fineness of FINER) {
    const finer = solveSection(section, fineness)
    if (!finer.ok) return null
    const impedanceOhm = isPair ? getPairFigures(finer).differentialOhm : getLineFigures(finer).impedanceOhm
    refinement.push({ unknowns: finer.unknowns, impedanceOhm })
    yield
  }
  const overWidth = yield* follow(WIDTH_TIMES, (times) => [
    times * widthMm,
    line.makeSection('nominal', times * widthMm),
  ])
  const overCover =
    line.coverUm === 0
      ? []
      : yield* follow(COVER_TIMES, (times) => [times * line.coverUm, line.makeSection('nominal', widthMm, 1, times)])
  const widthForTargetMm = findWidthMm(line, widthMm, targetOhm)
  yield
  const distanceForTargetUm = findDistanceUm(line, widthMm, targetOhm)
  yield
  const share =
    // With openings in a plane the share would be that of another part.
    tolerancePct === null || line.open !== null
      ? null
      : findShareInBand(line, widthMm, {
          low: targetOhm * (1 - tolerancePct / 100),
          high: targetOhm * (1 + tolerancePct / 100),
        })
  yield
  return {
    section,
    faces,
    impedanceOhm: figures.impedanceOhm,
    effectivePermittivity: figures.effectivePermittivity,
    delayPsPerMm: figures.delayPsPerMm,
    modes:
      pair === null
        ? null
        : { evenOhm: pair.even.impedanceOhm, oddOhm: pair.odd.impedanceOhm, commonOhm: pair.commonOhm },
    refinement,
    overWidth,
    overCover,
    widthForTargetMm,
    distanceForTargetUm,
    distanceUm: line.distanceUm,
    share,
    crosstalk: isPair ? [] : yield* followOffsets(studied),
    overSpace: isPair ? [] : yield* followSpaces(line, widthMm),
    losses: listLosses(section, studied.resistivityOhmMm2PerM).map(({ mode, points }) => ({
      mode,
      points: points.filter(({ frequencyMhz }) =>
        isQuasiStatic(studied.acrossUm, figures.effectivePermittivity, frequencyMhz),
      ),
    })),
  }
}

function* follow(
  times: readonly number[],
  make: (times: number) => readonly [size: number, section: LineSection],
): Generator<undefined, CurvePoint[]> {
  const points: CurvePoint[] = []
  for (const each of times) {
    const [size, section] = make(each)
    const answer = solveRoughly(section)
    if (!('faults' in answer)) points.push({ size, impedanceOhm: answer.impedanceOhm })
    yield
  }
  return points
}

/** A second line of the same width on each other layer of the section, moved aside. */
function* followOffsets({ line, widthMm, otherLayers }: StudiedLine): Generator<undefined, LineStudy['crosstalk']> {
  const found: { layerName: string; points: OffsetPoint[] }[] = []
  for (const { layerId, name } of otherLayers) {
    const points: OffsetPoint[] = []
    for (const widths of OFFSETS) {
      const section = line.addLine(layerId, widthMm, widthMm, widths * widthMm)
      const coupling = section === null ? null : solveCoupling(section)
      yield
      if (coupling === null) continue
      const { nearEndFraction, backwardFraction, farEndFraction } = coupling
      points.push({
        offsetMm: widths * widthMm,
        nearEndFraction,
        backwardFraction,
        farEndFraction,
        overlapFraction: Math.max(0, 1 - widths),
      })
    }
    if (points.length > 1) found.push({ layerName: name, points })
  }
  return found
}

function listLosses(section: LineSection, resistivityOhmMm2PerM: number | null): readonly ModeLosses[] {
  if (resistivityOhmMm2PerM === null) return []
  return findLossBases(section).map((basis) => ({
    mode: basis.mode,
    points: FREQUENCIES_MHZ.map((frequencyMhz) => {
      const smooth = findLineLoss(basis, frequencyMhz, { resistivityOhmMm2PerM, roughnessUm: 0 })
      const rough = findLineLoss(basis, frequencyMhz, { resistivityOhmMm2PerM, roughnessUm: smooth.skinDepthUm })
      return { frequencyMhz, smooth, rough }
    }),
  }))
}
