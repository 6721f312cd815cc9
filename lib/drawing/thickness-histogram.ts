import * as Plot from '@observablehq/plot'
import { callByName, type LengthUnit, type ThicknessSimulation } from '@/lib/engine'
import {
  digitsAsComputed,
  digitsOfLength,
  formatLength,
  getUnitSymbol,
  lengthFromUm,
  umFromLength,
} from '@/lib/engine/units'
import type { Picture } from './picture'
import { makePlotPicture, type PlotFrame } from './plot-picture'

export interface ThicknessHistogramOptions extends PlotFrame {
  readonly unit: LengthUnit
  readonly zoneName: string
  /** Worst case over all tolerances, for comparison. */
  readonly worstCaseUm: { readonly low: number; readonly high: number }
  /** Finger zones: what the connector accepts. */
  readonly windowUm: { readonly minUm: number; readonly maxUm: number } | null
}

/** Distribution of finished thickness from a seeded simulation, with the worst case and any connector window. */
export function drawThicknessHistogram(simulation: ThicknessSimulation, options: ThicknessHistogramOptions): Picture {
  const { palette, unit, windowUm } = options
  const convert = (valueUm: number) => lengthFromUm(valueUm, unit)
  const { edgesUm, counts } = simulation.histogram
  const bins = counts.map((count, index) => ({
    from: convert(edgesUm[index] ?? 0),
    to: convert(edgesUm[index + 1] ?? 0),
    percent: (count / simulation.draws) * 100,
  }))
  const limits = windowUm === null ? [] : [convert(windowUm.minUm), convert(windowUm.maxUm)]
  const extremes = [convert(options.worstCaseUm.low), convert(options.worstCaseUm.high)]
  const all = [...limits, ...extremes, ...bins.flatMap((bin) => [bin.from, bin.to])]
  const { p0135, p50, p99865 } = simulation.percentilesUm
  return makePlotPicture(
    options,
    {
      title: `Finished thickness of ${callByName('zone', options.zoneName)}`,
      description: `${simulation.draws} draws (seed ${simulation.seed}): median ${formatLength(p50, unit)}, 99.73 % between ${formatLength(p0135, unit)} and ${formatLength(p99865, unit)}; worst case ${formatLength(options.worstCaseUm.low, unit)} to ${formatLength(options.worstCaseUm.high, unit)}.`,
      table: {
        caption: `Share of draws by finished thickness, ${callByName('zone', options.zoneName)}`,
        columns: [
          { key: 'from', label: `From, ${getUnitSymbol(unit)}`, numeric: true },
          { key: 'to', label: `To, ${getUnitSymbol(unit)}`, numeric: true },
          { key: 'percent', label: 'Share, %', numeric: true },
        ],
        rows: bins.map((bin) => ({
          from: digitsOfLength(umFromLength(bin.from, unit), unit),
          to: digitsOfLength(umFromLength(bin.to, unit), unit),
          percent: digitsAsComputed(bin.percent, 'drawSharePct'),
        })),
      },
    },
    {
      marginLeft: 46,
      marginRight: 16,
      marginBottom: 40,
      marginTop: 22,
      x: {
        domain: [Math.min(...all), Math.max(...all)],
        label: `finished thickness, ${getUnitSymbol(unit)}`,
        labelArrow: 'none',
        labelAnchor: 'center',
        nice: true,
      },
      y: { label: 'share of draws, %', labelArrow: 'none', ticks: 4 },
      marks: [
        Plot.rectY(bins, {
          x1: 'from',
          x2: 'to',
          y: 'percent',
          fill: palette.hairline,
          stroke: palette.paper,
          strokeWidth: 0.5,
          inset: 0,
        }),
        Plot.ruleY([0], { stroke: palette.inkSoft }),
        Plot.ruleX(extremes, { stroke: palette.inkSoft, strokeDasharray: '2 3' }),
        Plot.text(extremes, {
          x: (value: number) => value,
          frameAnchor: 'top',
          dy: -10,
          text: () => 'worst case',
          fill: palette.inkSoft,
        }),
        Plot.ruleX(limits, { stroke: palette.limit, strokeWidth: 1.4 }),
        Plot.text(limits.slice(0, 1), {
          x: (value: number) => value,
          frameAnchor: 'top',
          textAnchor: 'start',
          dx: 4,
          dy: 4,
          text: () => 'connector, least',
          fill: palette.limit,
        }),
        Plot.text(limits.slice(1), {
          x: (value: number) => value,
          frameAnchor: 'top',
          textAnchor: 'end',
          dx: -4,
          dy: 18,
          text: () => 'connector, most',
          fill: palette.limit,
        }),
      ],
    },
  )
}
