import * as Plot from '@observablehq/plot'
import { type BendResult, type ConductorStrainResult, callByName, type LengthUnit, RANGE_OVER } from '@/lib/engine'
import {
  asComputed,
  asEntered,
  digitsOfRadius,
  getShownUnit,
  getUnitSymbol,
  lengthFromUm,
  withUnit,
} from '@/lib/engine/units'
import { formatDesignation, type LayerDesignation } from './layer-designations'
import type { Picture } from './picture'
import { makePlotPicture, type PlotFrame } from './plot-picture'
import { listStateRows } from './state-table'

export interface StatePlotOptions extends PlotFrame {
  readonly unit: LengthUnit
  readonly designations: ReadonlyMap<string, LayerDesignation>
  /** A motion to both sides of flat: half of its range stands against the allowable. */
  readonly isReversed: boolean
}

/** A fold or a limit that lies farther out than this many times the rest is written at the edge: the rest would shrink to nothing. Our choice. */
const FARTHEST = 5

/** One copper layer at its depth, with what it strains from and to. */
interface Row {
  readonly label: string
  readonly depth: number
  readonly thickness: number
  /** Parts of the bar, from the inside out: bending or the range of a cycle, pull, edge of a twist. */
  readonly parts: readonly { readonly from: number; readonly to: number; readonly kind: 'bending' | 'pull' | 'twist' }[]
  /** Middle of a cycle; null where nothing moves, or an earlier fold leaves one that nobody knows. */
  readonly mean: number | null
  /** All together, loads and shear included; where there is no mean. */
  readonly total: number | null
  readonly allowed: readonly number[]
  readonly fold: number | null
}

/**
 * What the copper of each layer goes through, at its depth: the range of a cycle about its mean, or the parts of a strain one after the other;
 * the allowance dashed, an earlier fold as a diamond.
 *
 * @returns null where the bend is made from flat and nothing else loads it, or its states cannot be told
 */
export function drawStatePlot(bend: BendResult, options: StatePlotOptions): Picture | null {
  const table = listStateRows(bend, options.designations)
  if (table === null || bend.modelLimits.some(({ kind }) => kind === 'states')) return null
  const { palette, unit } = options
  const rows = bend.conductors.flatMap((conductor) => describeRow(conductor, options))
  if (rows.length === 0) return null
  const hasMean = rows.some(({ mean }) => mean !== null)
  const core = Math.max(
    ...rows.flatMap(({ parts, total }) => [
      ...parts.flatMap(({ from, to }) => [Math.abs(from), Math.abs(to)]),
      total ?? 0,
    ]),
    1e-6,
  )
  const isShown = (value: number) => Math.abs(value) <= FARTHEST * core
  const folds = rows.flatMap(({ fold, depth }) => (fold !== null && isShown(fold) ? [{ fold, depth }] : []))
  const limits = rows.flatMap(({ allowed, depth, thickness }) =>
    allowed.filter(isShown).map((x) => ({ x, y1: depth - thickness, y2: depth + thickness })),
  )
  const extremes = [
    0,
    ...rows.flatMap(({ parts, total }) => [
      ...parts.flatMap(({ from, to }) => [from, to]),
      ...(total === null ? [] : [total]),
    ]),
    ...folds.map(({ fold }) => fold),
    ...limits.map(({ x }) => x),
  ]
  const [left, right] = [Math.min(...extremes), Math.max(...extremes)]
  const pad = 0.08 * (right - left)
  const domain: [number, number] = [left < 0 ? left - pad : 0, right + pad]
  const height = lengthFromUm(bend.sectionThicknessUm, unit)
  const bars = rows.flatMap(({ parts, depth, thickness }) =>
    parts.map((part) => ({ ...part, y1: depth - thickness / 2, y2: depth + thickness / 2 })),
  )
  const ofKind = (kind: Row['parts'][number]['kind']) => bars.filter((bar) => bar.kind === kind)
  return makePlotPicture(
    options,
    {
      title: `States and loads of the copper in ${callByName('bend', bend.name)}`,
      description: describe(bend, rows, { unit, hasMean, hasLimits: limits.length > 0 }),
      table,
    },
    {
      marginLeft: 58,
      marginRight: 64,
      marginBottom: 40,
      marginTop: 18,
      x: {
        domain,
        label: hasMean ? 'strain over a cycle, % (tension positive)' : 'strain, %',
        labelArrow: 'none',
        labelAnchor: 'center',
        nice: false,
        ticks: 5,
      },
      y: {
        domain: [0, height],
        label: `depth from the inside face, ${getUnitSymbol(unit)}`,
        labelArrow: 'none',
        nice: false,
      },
      marks: [
        Plot.gridX({ stroke: palette.hairline, strokeOpacity: 0.5, ticks: 5 }),
        Plot.ruleX([0], { stroke: palette.inkSoft, strokeWidth: 0.75 }),
        Plot.rect(ofKind('bending'), { x1: 'from', x2: 'to', y1: 'y1', y2: 'y2', fill: palette.strain }),
        Plot.rect(ofKind('pull'), {
          x1: 'from',
          x2: 'to',
          y1: 'y1',
          y2: 'y2',
          fill: palette.strain,
          fillOpacity: 0.45,
          stroke: palette.strain,
        }),
        Plot.rect(ofKind('twist'), {
          x1: 'from',
          x2: 'to',
          y1: 'y1',
          y2: 'y2',
          fill: palette.paper,
          stroke: palette.strain,
          strokeWidth: 1.3,
        }),
        Plot.ruleX(
          rows.flatMap(({ mean, depth, thickness }) =>
            mean === null ? [] : [{ mean, y1: depth - thickness, y2: depth + thickness }],
          ),
          { x: 'mean', y1: 'y1', y2: 'y2', stroke: palette.ink, strokeWidth: 1.6 },
        ),
        Plot.ruleX(limits, {
          x: 'x',
          y1: 'y1',
          y2: 'y2',
          stroke: palette.limit,
          strokeWidth: 1.3,
          strokeDasharray: '3 2',
        }),
        Plot.dot(
          rows.flatMap(({ total, depth }) => (total === null ? [] : [{ total, depth }])),
          { x: 'total', y: 'depth', r: 3.5, fill: palette.paper, stroke: palette.strain, strokeWidth: 1.6 },
        ),
        Plot.dot(folds, {
          x: 'fold',
          y: 'depth',
          symbol: 'diamond',
          r: 4.5,
          fill: palette.paper,
          stroke: palette.ink,
          strokeWidth: 1.4,
        }),
        Plot.text(rows, { x: domain[1], y: 'depth', text: 'label', textAnchor: 'start', dx: 5, fill: palette.ink }),
      ],
    },
  )
}

function describeRow(conductor: ConductorStrainResult, { unit, designations, isReversed }: StatePlotOptions): Row[] {
  const { states, name, layerId, innerDepthUm, outerDepthUm, cycleRangePct, peakStrainPct, allowablePct } = conductor
  if (states === null) return []
  const designation = designations.get(layerId)
  const { meanPct, bendingPct, pullPct, twistEdgePct, fold } = states
  const sign =
    Math.abs(conductor.innerStrainPct) > Math.abs(conductor.outerStrainPct) && conductor.innerStrainPct < 0 ? -1 : 1
  const common = {
    label: designation === undefined ? name : formatDesignation(designation),
    depth: lengthFromUm((innerDepthUm + outerDepthUm) / 2, unit),
    thickness: lengthFromUm(outerDepthUm - innerDepthUm, unit),
  }
  // A load comes and goes with the cycle: about which mean, nobody knows.
  const isLoaded = pullPct > 0 || twistEdgePct > 0
  if (meanPct !== null && cycleRangePct !== null && !isLoaded) {
    const half = cycleRangePct / 2
    const allowedHalf = allowablePct === null ? null : isReversed ? allowablePct : allowablePct / 2
    return [
      {
        ...common,
        parts: [{ from: meanPct - half, to: meanPct + half, kind: 'bending' }],
        mean: meanPct,
        total: null,
        allowed: allowedHalf === null ? [] : [meanPct - allowedHalf, meanPct + allowedHalf],
        fold: fold === null ? null : sign * fold.strainPct,
      },
    ]
  }
  const parts: Row['parts'] = [
    { from: 0, to: bendingPct, kind: 'bending' },
    { from: bendingPct, to: bendingPct + pullPct, kind: 'pull' },
    { from: bendingPct + pullPct, to: bendingPct + pullPct + twistEdgePct, kind: 'twist' },
  ]
  return [
    {
      ...common,
      parts: parts.filter(({ from, to }) => to > from),
      mean: null,
      total: peakStrainPct,
      allowed: allowablePct === null ? [] : [allowablePct],
      fold: fold?.strainPct ?? null,
    },
  ]
}

function describe(
  { states, allowablePct, peakRangePct }: BendResult,
  rows: readonly Row[],
  {
    unit: chosen,
    hasMean,
    hasLimits,
  }: { readonly unit: LengthUnit; readonly hasMean: boolean; readonly hasLimits: boolean },
): string {
  const unit = getShownUnit('mm', chosen)
  const limits = hasLimits ? '; dashed is what is allowed' : '; what is allowed lies farther out'
  const said: string[] = []
  if (hasMean) said.push(`Bars are the range of one cycle about its mean, which is the upright mark${limits}.`)
  else {
    const kinds = new Set(rows.flatMap(({ parts }) => parts.map(({ kind }) => kind)))
    const words = [
      'full bars are bending',
      ...(kinds.has('pull') ? ['pale ones the pull'] : []),
      ...(kinds.has('twist') ? ['open ones the edge of the twist'] : []),
    ]
    said.push(
      `${words.join(', ')}; the ring is all together, shear included${limits}.`.replace(/^./, (first) =>
        first.toUpperCase(),
      ),
    )
  }
  if (states !== null && states.fromRadiusMm !== null) {
    said.push(`The flatter end has an inside radius of ${withUnit(digitsOfRadius(states.fromRadiusMm, unit), unit)}.`)
  }
  if (states !== null && states.pullN > 0) said.push(`Pull ${asEntered(states.pullN, 'newton')}.`)
  if (states !== null && states.twistDeg > 0) said.push(`Twist ${asEntered(states.twistDeg, 'deg')}.`)
  const folds = rows.flatMap(({ fold }) => (fold === null ? [] : [Math.abs(fold)]))
  if (folds.length > 0) {
    said.push(
      `The fold before strained it by ${asComputed(Math.max(...folds), 'strainPct')}, the diamond where the picture reaches that far.`,
    )
  }
  if (peakRangePct !== null && allowablePct !== null) {
    said.push(
      `What decides is ${asComputed(peakRangePct.high, 'strainPct')} at most ${RANGE_OVER.both}; allowed ${asComputed(allowablePct, 'strainPct')}.`,
    )
  }
  return said.join(' ')
}
