import * as Plot from '@observablehq/plot'
import type { LineStudy, StudiedLine } from '@/lib/engine/line-study'
import {
  asComputed,
  capitalise,
  digitsAsComputed,
  digitsOfLength,
  formatLength,
  getShownUnit,
  type LengthUnit,
  lengthFromUm,
  umFromLength,
  withUnitInHead,
} from '@/lib/engine/units'
import type { Picture } from './picture'
import { makePlotPicture, type PlotFrame } from './plot-picture'

type Curve = readonly { readonly size: number; readonly impedanceOhm: number }[]

export interface LinePlotOptions extends PlotFrame {
  readonly unit: LengthUnit
}

const MARGINS = { marginLeft: 52, marginRight: 24, marginBottom: 40, marginTop: 22 }

/** Impedance over the width of the line; the band shaded, the design's width as a ring. */
export function drawImpedanceOverWidth(studied: StudiedLine, study: LineStudy, options: LinePlotOptions): Picture {
  return drawImpedance(studied, study, options, {
    title: `Impedance over width, ${studied.conductorName} in ${studied.zoneName}`,
    curve: study.overWidth,
    sizeName: 'width',
    kept: 'mm',
    now: studied.widthMm,
    says:
      study.widthForTargetMm === null
        ? 'no width in reach has the stated impedance'
        : `${formatPlan(study.widthForTargetMm, options.unit)} has the stated impedance`,
  })
}

/** Impedance over the dielectrics on the side without the reference, bare copper first; null where there are none. */
export function drawImpedanceOverCover(
  studied: StudiedLine,
  study: LineStudy,
  options: LinePlotOptions,
): Picture | null {
  if (study.overCover.length < 2) return null
  const [bare] = study.overCover
  const drop = bare === undefined || bare.size !== 0 ? null : 100 * (study.impedanceOhm / bare.impedanceOhm - 1)
  return drawImpedance(studied, study, options, {
    title: `Impedance over cover, ${studied.conductorName} in ${studied.zoneName}`,
    curve: study.overCover,
    sizeName: 'dielectrics over the line',
    kept: 'um',
    now: studied.line.coverUm,
    says:
      drop === null
        ? 'the cover as it is is ringed'
        : `the cover as it is moves it by ${asComputed(drop, 'sharePct')} from bare copper`,
  })
}

interface Shown {
  readonly title: string
  readonly curve: Curve
  readonly sizeName: string
  readonly kept: 'um' | 'mm'
  /** The design's own size. */
  readonly now: number
  readonly says: string
}

function drawImpedance(
  { targetOhm, tolerancePct }: StudiedLine,
  { impedanceOhm }: LineStudy,
  options: LinePlotOptions,
  { title, curve: kept, sizeName, kept: keptUnit, now, says }: Shown,
): Picture {
  const { palette } = options
  const unit = getShownUnit(keptUnit, options.unit)
  const toShown = (size: number) => lengthFromUm(umFromLength(size, keptUnit), unit)
  const curve = kept.map((point) => ({ ...point, size: toShown(point.size) }))
  const share = (tolerancePct ?? 0) / 100
  const [low, high] = [targetOhm * (1 - share), targetOhm * (1 + share)]
  const sizes = curve.map(({ size }) => size)
  const ohms = [...curve.map((point) => point.impedanceOhm), low, high]
  return makePlotPicture(
    options,
    {
      title,
      description: `${asComputed(impedanceOhm, 'impedanceOhm')} as it is, ${asComputed(low, 'impedanceOhm')} to ${asComputed(high, 'impedanceOhm')} is the band; ${says}.`,
      table: {
        caption: title,
        columns: [
          { key: 'size', label: withUnitInHead(capitalise(sizeName), unit), numeric: true },
          { key: 'ohm', label: 'Impedance, Ω', numeric: true },
        ],
        rows: kept.map((point) => ({
          size: digitsOfLength(umFromLength(point.size, keptUnit), unit, keptUnit === 'um' ? 'thickness' : 'plan'),
          ohm: digitsAsComputed(point.impedanceOhm, 'impedanceOhm'),
        })),
      },
    },
    {
      ...MARGINS,
      x: {
        label: withUnitInHead(sizeName, unit),
        labelArrow: 'none',
        labelAnchor: 'center',
        domain: [Math.min(...sizes), Math.max(...sizes)],
        ticks: 6,
      },
      y: {
        label: 'impedance, Ω',
        labelArrow: 'none',
        domain: [0.95 * Math.min(...ohms), 1.05 * Math.max(...ohms)],
        ticks: 6,
      },
      marks: [
        Plot.gridY({ stroke: palette.hairline, strokeOpacity: 0.5 }),
        Plot.rectY([{ x1: Math.min(...sizes), x2: Math.max(...sizes), y1: low, y2: high }], {
          x1: 'x1',
          x2: 'x2',
          y1: 'y1',
          y2: 'y2',
          fill: palette.limit,
          fillOpacity: 0.12,
        }),
        Plot.ruleY([targetOhm], { stroke: palette.limit, strokeDasharray: '3 2' }),
        Plot.line(curve, { x: 'size', y: 'impedanceOhm', stroke: palette.strain, strokeWidth: 1.8 }),
        Plot.dot([{ size: toShown(now), impedanceOhm }], {
          x: 'size',
          y: 'impedanceOhm',
          r: 4,
          fill: palette.paper,
          stroke: palette.strain,
          strokeWidth: 1.8,
        }),
      ],
    },
  )
}

/** Coupling to a line of the same width on another layer, over the offset of their middles; the share of width that lies one over the other beside it. */
export function drawCrosstalk(
  { conductorName, zoneName, widthMm }: StudiedLine,
  { layerName, points }: LineStudy['crosstalk'][number],
  limitPct: number,
  options: LinePlotOptions,
): Picture {
  const { palette } = options
  const unit = getShownUnit('mm', options.unit)
  const toShown = (mm: number) => lengthFromUm(umFromLength(mm, 'mm'), unit)
  const title = `Crosstalk over offset, ${conductorName} and ${layerName} in ${zoneName}`
  const kept = points.find(({ nearEndFraction }) => 100 * nearEndFraction <= limitPct)
  const shownPoints = points.map(({ offsetMm, nearEndFraction }) => ({
    offset: toShown(offsetMm),
    nearPct: 100 * nearEndFraction,
  }))
  const mostPct = 1.1 * Math.max(limitPct, ...shownPoints.map(({ nearPct }) => nearPct))
  const farthest = Math.max(...shownPoints.map(({ offset }) => offset))
  return makePlotPicture(
    options,
    {
      title,
      description: `One over the other ${asComputed(100 * (points[0]?.nearEndFraction ?? 0), 'crosstalkPct')} at the near end; ${kept === undefined ? 'no offset shown keeps the limit' : `middles ${formatPlan(kept.offsetMm, options.unit)} apart keep the limit of ${asComputed(limitPct, 'crosstalkPct')}`}. From ${formatPlan(widthMm, options.unit)} on the lines are staggered: copper over copper stiffens a bend there and moves its neutral axis.`,
      table: {
        caption: `${title}. Lines of equal width, saturated`,
        columns: [
          { key: 'offset', label: withUnitInHead('Offset of middles', unit), numeric: true },
          { key: 'near', label: 'Near end, % of the step', numeric: true },
          { key: 'backward', label: 'Backward coefficient, %', numeric: true },
          { key: 'far', label: 'Far end, % per delay over rise time', numeric: true },
          { key: 'overlap', label: 'Copper over copper in the bend, % of width', numeric: true },
        ],
        rows: points.map((point) => ({
          offset: digitsOfLength(umFromLength(point.offsetMm, 'mm'), unit, 'plan'),
          near: digitsAsComputed(100 * point.nearEndFraction, 'crosstalkPct'),
          backward: digitsAsComputed(100 * point.backwardFraction, 'crosstalkPct'),
          far: digitsAsComputed(100 * point.farEndFraction, 'crosstalkPct'),
          overlap: digitsAsComputed(100 * point.overlapFraction, 'roughSharePct'),
        })),
      },
    },
    {
      ...nearEndScales(withUnitInHead('offset of middles', unit), farthest, mostPct),
      marks: [
        Plot.rectY([{ x1: 0, x2: toShown(widthMm) }], {
          x1: 'x1',
          x2: 'x2',
          y1: 0,
          y2: mostPct,
          fill: palette.hairline,
          fillOpacity: 0.35,
        }),
        Plot.text(['copper over copper'], {
          x: toShown(widthMm) / 2,
          frameAnchor: 'top',
          dy: 8,
          text: (word: string) => word,
          fill: palette.ink,
        }),
        ...nearEndMarks(palette, limitPct),
        Plot.line(shownPoints, { x: 'offset', y: 'nearPct', stroke: palette.strain, strokeWidth: 1.8 }),
      ],
    },
  )
}

/** Coupling to a line of the same width on the same layer, over the space between them, with and without a grounded guard; null for a pair. */
export function drawCrosstalkOverSpace(
  { conductorName, zoneName, widthMm }: StudiedLine,
  { overSpace }: LineStudy,
  limitPct: number,
  options: LinePlotOptions,
): Picture | null {
  if (overSpace.length < 2) return null
  const { palette } = options
  const unit = getShownUnit('mm', options.unit)
  const toShown = (mm: number) => lengthFromUm(umFromLength(mm, 'mm'), unit)
  const title = `Crosstalk over space, ${conductorName} in ${zoneName}`
  const kept = overSpace.find(({ nearEndFraction }) => 100 * nearEndFraction <= limitPct)
  const alone = overSpace.map(({ spaceMm, nearEndFraction }) => ({
    space: toShown(spaceMm),
    nearPct: 100 * nearEndFraction,
  }))
  const guarded = overSpace.flatMap(({ spaceMm, guardedFraction }) =>
    guardedFraction === null ? [] : [{ space: toShown(spaceMm), nearPct: 100 * guardedFraction }],
  )
  const mostPct = 1.1 * Math.max(limitPct, ...alone.map(({ nearPct }) => nearPct))
  return makePlotPicture(
    options,
    {
      title,
      description: `${kept === undefined ? 'No space shown keeps' : `A space of ${formatPlan(kept.spaceMm, options.unit)} keeps`} the limit of ${asComputed(limitPct, 'crosstalkPct')} without a guard. Dashed: with a guard of ${formatPlan(widthMm, options.unit)} midway, grounded all along by vias at both ends and in between. A guard that is open, or grounded at its ends alone, can couple more than none.`,
      table: {
        caption: `${title}. Lines of equal width, saturated`,
        columns: [
          { key: 'space', label: withUnitInHead('Space between the lines', unit), numeric: true },
          { key: 'near', label: 'Near end, % of the step', numeric: true },
          { key: 'backward', label: 'Backward coefficient, %', numeric: true },
          { key: 'guarded', label: 'Near end with a grounded guard, %', numeric: true },
        ],
        rows: overSpace.map((point) => ({
          space: digitsOfLength(umFromLength(point.spaceMm, 'mm'), unit, 'plan'),
          near: digitsAsComputed(100 * point.nearEndFraction, 'crosstalkPct'),
          backward: digitsAsComputed(100 * point.backwardFraction, 'crosstalkPct'),
          guarded:
            point.guardedFraction === null ? 'no room' : digitsAsComputed(100 * point.guardedFraction, 'crosstalkPct'),
        })),
      },
    },
    {
      ...nearEndScales(
        withUnitInHead('space between the lines', unit),
        Math.max(...alone.map(({ space }) => space)),
        mostPct,
      ),
      marks: [
        ...nearEndMarks(palette, limitPct),
        Plot.line(alone, { x: 'space', y: 'nearPct', stroke: palette.strain, strokeWidth: 1.8 }),
        Plot.line(guarded, {
          x: 'space',
          y: 'nearPct',
          stroke: palette.strain,
          strokeWidth: 1.8,
          strokeDasharray: '5 3',
        }),
      ],
    },
  )
}

/** Near-end crosstalk upwards, a length to the right. */
const nearEndScales = (label: string, farthest: number, mostPct: number) =>
  ({
    ...MARGINS,
    x: { label, labelArrow: 'none', labelAnchor: 'center', domain: [0, farthest], ticks: 6 },
    y: { label: 'near end, % of the step', labelArrow: 'none', domain: [0, mostPct], ticks: 6 },
  }) satisfies Plot.PlotOptions

const nearEndMarks = (palette: LinePlotOptions['palette'], limitPct: number) => [
  Plot.gridY({ stroke: palette.hairline, strokeOpacity: 0.5 }),
  Plot.ruleY([limitPct], { stroke: palette.limit, strokeDasharray: '3 2' }),
]

const formatPlan = (mm: number, unit: LengthUnit): string =>
  formatLength(umFromLength(mm, 'mm'), getShownUnit('mm', unit), 'plan')
