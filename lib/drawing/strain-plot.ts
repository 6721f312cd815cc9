import * as Plot from '@observablehq/plot'
import { type BendResult, callByName, type LengthUnit, RANGE_OVER, type ZoneResult } from '@/lib/engine'
import {
  asComputed,
  digitsAsComputed,
  digitsOfLength,
  formatLength,
  getUnitSymbol,
  lengthFromUm,
  withSign,
} from '@/lib/engine/units'
import { formatDesignation, type LayerDesignation } from './layer-designations'
import type { Picture, PictureTable } from './picture'
import { makePlotPicture, type PlotFrame } from './plot-picture'

export interface StrainPlotOptions extends PlotFrame {
  readonly unit: LengthUnit
  readonly designations: ReadonlyMap<string, LayerDesignation>
}

/** Bend depth of a layer's two faces, from the inside face of the bend. */
interface Band {
  readonly layerId: string
  readonly name: string
  readonly kind: string
  readonly from: number
  readonly to: number
  /** Allowed magnitude of strain in this layer, per cent; null where none is known or it is no conductor. */
  readonly allowedPct: number | null
}

/**
 * Strain through the thickness of a bend: depth from the inside face upwards, strain across; conductors shaded with
 * the allowed span between two limit lines, the axis of each formed leaf dash-dotted, and its elastic axis dotted where copper past yield
 * has moved it.
 *
 * @param zone  the zone that the bend lies in, as evaluated
 */
export function drawStrainPlot(
  bend: BendResult,
  zone: ZoneResult,
  insideFace: 'top' | 'bottom',
  options: StrainPlotOptions,
): Picture {
  const { palette, unit, designations } = options
  const convert = (valueUm: number) => lengthFromUm(valueUm, unit)
  const bands = listBands(bend, zone, insideFace, convert)
  const copper = bands.filter((band) => band.kind === 'conductor')
  const points = bend.strainProfile.map((point) => ({
    strain: point.strainPct,
    depth: convert(point.depthUm),
    leaf: point.leafIndex,
  }))
  const extremes = [...points.map((point) => point.strain), 0]
  const limited = copper.filter((band) => band.allowedPct !== null)
  for (const { allowedPct } of limited) extremes.push(allowedPct ?? 0, -(allowedPct ?? 0))
  const left = Math.min(...extremes)
  const right = Math.max(...extremes)
  const pad = (right - left) * 0.06 || 0.1
  const domain: [number, number] = [left - pad, right + pad]
  const total = convert(bend.sectionThicknessUm)
  const nameOf = (band: Band) => {
    const designation = designations.get(band.layerId)
    return designation === undefined ? band.name : formatDesignation(designation)
  }
  const worst = findWorst(bend)
  return makePlotPicture(
    options,
    {
      title: `Strain through the thickness in ${callByName('bend', bend.name)}`,
      description: describeStrain(bend, unit),
      table: listStrainRows(bend, options),
    },
    {
      marginLeft: 58,
      marginRight: 64,
      marginBottom: 40,
      marginTop: 18,
      x: { domain, label: 'strain, % (tension positive)', labelArrow: 'none', labelAnchor: 'center', nice: false },
      y: {
        domain: [0, total],
        label: `depth from the inside face, ${getUnitSymbol(unit)}`,
        labelArrow: 'none',
        nice: false,
      },
      marks: [
        Plot.rect(copper, {
          x1: domain[0],
          x2: domain[1],
          y1: 'from',
          y2: 'to',
          fill: palette.copper,
          fillOpacity: 0.22,
        }),
        Plot.ruleY(
          bands.filter((band) => band.from > 0),
          { y: 'from', stroke: palette.hairline, strokeWidth: 0.5 },
        ),
        Plot.rect(limited, {
          x1: (band: Band) => -(band.allowedPct ?? 0),
          x2: 'allowedPct',
          y1: 'from',
          y2: 'to',
          fill: palette.allowed,
          stroke: palette.limit,
          strokeWidth: 1,
          strokeDasharray: '3 2',
        }),
        Plot.ruleX([0], { stroke: palette.inkSoft, strokeWidth: 0.75 }),
        Plot.ruleY(bend.leaves, {
          y: (leaf: BendResult['leaves'][number]) => convert(leaf.formedAxisDepthUm),
          stroke: palette.axis,
          strokeWidth: 1.4,
          strokeDasharray: '12 3 2 3',
        }),
        Plot.ruleY(
          bend.leaves.filter(({ formedAxisDepthUm, neutralAxisDepthUm }) => formedAxisDepthUm !== neutralAxisDepthUm),
          {
            y: (leaf: BendResult['leaves'][number]) => convert(leaf.neutralAxisDepthUm),
            stroke: palette.axis,
            strokeWidth: 0.8,
            strokeDasharray: '1 3',
          },
        ),
        Plot.line(points, { x: 'strain', y: 'depth', z: 'leaf', stroke: palette.strain, strokeWidth: 1.8 }),
        ...(worst === null
          ? []
          : [
              Plot.dot([worst], {
                x: 'strainPct',
                y: (point: { depthUm: number }) => convert(point.depthUm),
                r: 3.5,
                fill: palette.paper,
                stroke: palette.strain,
                strokeWidth: 1.6,
              }),
            ]),
        Plot.text(copper, {
          x: domain[1],
          y: (band: Band) => (band.from + band.to) / 2,
          text: nameOf,
          textAnchor: 'start',
          dx: 5,
          fill: palette.ink,
        }),
        Plot.text(bend.leaves, {
          x: domain[0],
          y: (leaf: BendResult['leaves'][number]) => convert(leaf.formedAxisDepthUm),
          text: () => 'N',
          textAnchor: 'start',
          dx: 4,
          dy: -7,
          fill: palette.axis,
          fontWeight: 'bold',
        }),
      ],
    },
  )
}

function listBands(
  bend: BendResult,
  zone: ZoneResult,
  insideFace: 'top' | 'bottom',
  convert: (valueUm: number) => number,
): Band[] {
  const allowed = new Map(bend.conductors.map((conductor) => [conductor.layerId, conductor.allowablePct]))
  return zone.layers.map((layer) => {
    const from = insideFace === 'top' ? layer.topDepthUm : zone.thicknessUm - layer.topDepthUm - layer.nominalUm
    return {
      layerId: layer.layerId,
      name: layer.name,
      kind: layer.kind,
      from: convert(from),
      to: convert(from + layer.nominalUm),
      allowedPct: allowed.get(layer.layerId) ?? null,
    }
  })
}

/** The conductor face with the largest strain. */
function findWorst(bend: BendResult): { strainPct: number; depthUm: number } | null {
  let worst: { strainPct: number; depthUm: number } | null = null
  for (const conductor of bend.conductors) {
    const faces = [
      { strainPct: conductor.innerStrainPct, depthUm: conductor.innerDepthUm },
      { strainPct: conductor.outerStrainPct, depthUm: conductor.outerDepthUm },
    ]
    for (const face of faces) {
      if (worst === null || Math.abs(face.strainPct) > Math.abs(worst.strainPct)) worst = face
    }
  }
  return worst
}

function describeStrain(bend: BendResult, unit: LengthUnit): string {
  const axes = bend.leaves.map((leaf) => formatLength(leaf.formedAxisDepthUm, unit)).join(', ')
  const elastic = bend.leaves.map((leaf) => formatLength(leaf.neutralAxisDepthUm, unit)).join(', ')
  const peak =
    bend.peakStrainPct === null
      ? 'No conductor strain could be computed'
      : bend.cycleRangePct === null
        ? `Largest copper strain ${asComputed(bend.peakStrainPct, 'strainPct')}`
        : `Copper strain that decides ${asComputed(bend.peakStrainPct, 'strainPct')}, range of a cycle ${asComputed(bend.cycleRangePct, 'strainPct')}`
  const limit =
    bend.allowablePct === null
      ? 'no allowable strain is known'
      : `allowable ${asComputed(bend.allowablePct, 'strainPct')}`
  return `${peak}; ${limit}. Neutral axis ${axes} from the inside face (${elastic} while nothing yields), in a section ${formatLength(bend.sectionThicknessUm, unit)} thick.`
}

/** The table behind the strain plot: one row per conductor layer, inside of the bend first. */
export function listStrainRows(
  bend: BendResult,
  options: Pick<StrainPlotOptions, 'unit' | 'designations'>,
): PictureTable {
  const unitLabel = getUnitSymbol(options.unit)
  const bare = (valueUm: number) => digitsOfLength(valueUm, options.unit)
  const isFlexed = bend.conductors.some(({ cycleRangePct }) => cycleRangePct !== null)
  const isPlated = bend.conductors.some(({ parts }) => parts.length > 1)
  const isLoaded = bend.conductors.some(({ states }) => (states?.pullPct ?? 0) > 0) || (bend.states?.twistDeg ?? 0) > 0
  return {
    caption: `Copper strain in ${callByName('bend', bend.name)} when first bent${isLoaded ? ', faces by bending alone' : ''}, inside of the bend first`,
    columns: [
      { key: 'layer', label: 'Layer', numeric: false },
      { key: 'innerDepth', label: `Inner face at, ${unitLabel}`, numeric: true },
      { key: 'outerDepth', label: `Outer face at, ${unitLabel}`, numeric: true },
      { key: 'inner', label: 'Strain inside, %', numeric: true },
      { key: 'outer', label: 'Strain outside, %', numeric: true },
      ...(isFlexed ? [{ key: 'cycle', label: 'Range of a cycle, %', numeric: true }] : []),
      { key: 'range', label: `Largest ${RANGE_OVER.both}, %`, numeric: true },
      { key: 'allowed', label: 'Allowed, %', numeric: true },
      { key: 'leastAllowed', label: `Least allowed ${RANGE_OVER.constants}, %`, numeric: true },
      { key: 'yield', label: 'Past yield', numeric: false },
      ...(isPlated ? [{ key: 'copper', label: 'Governing copper', numeric: false }] : []),
    ],
    rows: bend.conductors.map((conductor) => {
      const designation = options.designations.get(conductor.layerId)
      return {
        layer: designation === undefined ? conductor.name : `${formatDesignation(designation)} ${conductor.name}`,
        innerDepth: bare(conductor.innerDepthUm),
        outerDepth: bare(conductor.outerDepthUm),
        inner: formatStrain(conductor.innerStrainPct),
        outer: formatStrain(conductor.outerStrainPct),
        ...(isFlexed && { cycle: digitsAsComputed(conductor.cycleRangePct, 'strainPct') }),
        range: digitsAsComputed(conductor.peakRangePct.high, 'strainPct'),
        allowed: conductor.allowablePct === null ? 'not known' : digitsAsComputed(conductor.allowablePct, 'strainPct'),
        leastAllowed: digitsAsComputed(conductor.allowableRangePct?.low ?? null, 'strainPct'),
        yield: conductor.pastYield ? 'yes' : 'no',
        ...(isPlated && { copper: conductor.governingMaterial?.name ?? '–' }),
      }
    }),
  }
}

const formatStrain = (strainPct: number): string => withSign(digitsAsComputed(strainPct, 'strainPct'))
