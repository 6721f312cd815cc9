import * as Plot from '@observablehq/plot'
import {
  type BendResult,
  CANNOT_TELL,
  callByName,
  describeCounted,
  formatComputedReading,
  type LengthUnit,
  LIFE_CAUTION_SHORT,
  type LifeCurvePoint,
  readBendLife,
} from '@/lib/engine'
import {
  asEntered,
  digitsAsComputed,
  digitsAsEntered,
  digitsOfRadius,
  formatEnteredLength,
  getShownUnit,
  lengthFromUm,
  umFromLength,
  withUnit,
  withUnitInHead,
} from '@/lib/engine/units'
import type { Picture, PictureTable } from './picture'
import { makePlotPicture, type PlotFrame } from './plot-picture'

/**
 * Life over inside radius on two logarithmic axes: median dashed, survival percentile full; the requirement as a
 * level line, the design's radius as a ring, the least radius for the requirement as an upright line.
 *
 * @param insideRadiusMm  the design's own radius
 * @returns null where the bend has no life curve (not dynamic, or inputs missing)
 */
export function drawLifePlot(
  bend: BendResult,
  insideRadiusMm: number,
  { unit: chosen = 'mm', ...frame }: PlotFrame & { readonly unit?: LengthUnit },
): Picture | null {
  const unit = getShownUnit('mm', chosen)
  const curve = bend.lifeCurve.filter((point) => point.medianLifeCycles > 0 && point.survivalLifeCycles > 0)
  if (curve.length < 2) return null
  const { palette } = frame
  const required = bend.requiredCycles
  const shown = (radiusMm: number) => lengthFromUm(umFromLength(radiusMm, 'mm'), unit)
  const radii = [insideRadiusMm, ...curve.map((point) => point.insideRadiusMm)]
  if (bend.minRadiusByLifeMm !== null) radii.push(bend.minRadiusByLifeMm)
  const lives = curve.flatMap((point) => [point.medianLifeCycles, point.survivalLifeCycles])
  if (required !== null) lives.push(required)
  const yDomain: [number, number] = [
    10 ** Math.floor(Math.log10(Math.max(1, Math.min(...lives)))),
    10 ** Math.ceil(Math.log10(Math.min(1e12, Math.max(...lives)))),
  ]
  const inRange = (cycles: number) => Math.min(yDomain[1], Math.max(yDomain[0], cycles))
  const survivalName = `${bend.survivalPct} % survive`
  const last = curve.at(-1)
  const own = bend.survivalLifeCycles
  return makePlotPicture(
    frame,
    {
      title: `Life over inside radius, ${callByName('bend', bend.name)}`,
      description: describeLife(bend, insideRadiusMm, unit),
      table: listLifeRows(bend, unit),
    },
    {
      marginLeft: 58,
      marginRight: 76,
      marginBottom: 40,
      marginTop: 18,
      x: {
        type: 'log',
        domain: [shown(Math.min(...radii)), shown(Math.max(...radii))],
        label: withUnitInHead('inside radius', unit),
        labelArrow: 'none',
        labelAnchor: 'center',
        ticks: 5,
        tickFormat: (radius: number) => digitsAsComputed(radius, 'tick'),
      },
      y: {
        type: 'log',
        domain: yDomain,
        label: `cycles to failure, ${LIFE_CAUTION_SHORT}`,
        labelArrow: 'none',
        ticks: Math.min(8, Math.round(Math.log10(yDomain[1] / yDomain[0]))),
        tickFormat: formatPower,
      },
      marks: [
        Plot.gridY({ stroke: palette.hairline, strokeOpacity: 0.5, ticks: 8 }),
        ...(required === null
          ? []
          : [
              Plot.ruleY([required], { stroke: palette.limit, strokeWidth: 1.3, strokeDasharray: '3 2' }),
              Plot.text([required], {
                y: required,
                frameAnchor: 'left',
                textAnchor: 'start',
                dx: 4,
                dy: -7,
                text: () => `needed: ${asEntered(required, 'cycles')}`,
                fill: palette.limit,
              }),
            ]),
        ...(bend.minRadiusByLifeMm === null
          ? []
          : [
              Plot.ruleX([shown(bend.minRadiusByLifeMm)], { stroke: palette.limit, strokeWidth: 1 }),
              Plot.text([bend.minRadiusByLifeMm], {
                x: shown(bend.minRadiusByLifeMm),
                frameAnchor: 'bottom',
                textAnchor: 'start',
                dx: 4,
                dy: -6,
                text: (radiusMm: number) => `${formatRadius(radiusMm, unit)} needed`,
                fill: palette.limit,
              }),
            ]),
        Plot.line(curve, {
          x: (point: LifeCurvePoint) => shown(point.insideRadiusMm),
          y: (point: LifeCurvePoint) => inRange(point.medianLifeCycles),
          stroke: palette.strain,
          strokeWidth: 1.4,
          strokeDasharray: '6 3',
        }),
        Plot.line(curve, {
          x: (point: LifeCurvePoint) => shown(point.insideRadiusMm),
          y: (point: LifeCurvePoint) => inRange(point.survivalLifeCycles),
          stroke: palette.strain,
          strokeWidth: 1.8,
        }),
        ...(last === undefined
          ? []
          : [
              Plot.text([last], {
                x: (point: LifeCurvePoint) => shown(point.insideRadiusMm),
                y: (point: LifeCurvePoint) => inRange(point.medianLifeCycles),
                text: () => 'median',
                textAnchor: 'start',
                dx: 5,
                fill: palette.ink,
              }),
              Plot.text([last], {
                x: (point: LifeCurvePoint) => shown(point.insideRadiusMm),
                y: (point: LifeCurvePoint) => inRange(point.survivalLifeCycles),
                text: () => survivalName,
                textAnchor: 'start',
                dx: 5,
                dy: 11,
                fill: palette.ink,
              }),
            ]),
        ...(own === null
          ? []
          : [
              Plot.dot([own], {
                x: shown(insideRadiusMm),
                y: inRange(own),
                r: 4,
                fill: palette.paper,
                stroke: palette.strain,
                strokeWidth: 1.8,
              }),
              Plot.text([own], {
                x: shown(insideRadiusMm),
                y: inRange(own),
                text: () => 'this design',
                textAnchor: 'start',
                dx: 7,
                dy: 9,
                fill: palette.ink,
              }),
            ]),
      ],
    },
  )
}

function describeLife(bend: BendResult, insideRadiusMm: number, unit: LengthUnit): string {
  const parts: string[] = []
  if (bend.survivalLifeCycles !== null) {
    parts.push(`At ${formatEnteredLength(insideRadiusMm, 'mm', unit)} inside radius ${describeLifeAtRadius(bend)}`)
  }
  if (bend.requiredCycles !== null) parts.push(`${asEntered(bend.requiredCycles, 'cycles')} are needed`)
  if (bend.minRadiusByLifeMm !== null) parts.push(`which takes ${formatRadius(bend.minRadiusByLifeMm, unit)}`)
  const counted = describeCounted(bend)
  if (counted !== null) parts.push(counted.charAt(0).toLowerCase() + counted.slice(1))
  parts.push(`an ${LIFE_CAUTION_SHORT}, not a guarantee: qualify by test`)
  return `${parts.join('; ')}.`
}

function formatRadius(radiusMm: number, unit: LengthUnit): string {
  return withUnit(digitsOfRadius(radiusMm, unit), unit)
}

function describeLifeAtRadius(bend: BendResult): string {
  const life = readBendLife(bend)
  const share = asEntered(bend.survivalPct, 'pct')
  return life === CANNOT_TELL
    ? `nobody can tell the life that ${share} of parts survive`
    : `${share} of parts are estimated to survive ${formatComputedReading(life, 'lifeCycles')}`
}

/** The table behind the life plot. */
export function listLifeRows(bend: BendResult, unit: LengthUnit = 'mm'): PictureTable {
  const counted = describeCounted(bend)
  return {
    caption: `Estimated life over inside radius, ${callByName('bend', bend.name)}; ${LIFE_CAUTION_SHORT}${counted === null ? '' : `. ${counted}`}`,
    columns: [
      { key: 'radius', label: withUnitInHead('Inside radius', unit), numeric: true },
      { key: 'survival', label: `${asEntered(bend.survivalPct, 'pct')} survive, cycles`, numeric: true },
      { key: 'median', label: 'Median, cycles', numeric: true },
    ],
    rows: bend.lifeCurve.map((point) => ({
      radius: digitsOfRadius(point.insideRadiusMm, unit),
      survival: digitsAsComputed(point.survivalLifeCycles, 'lifeCycles'),
      median: digitsAsComputed(point.medianLifeCycles, 'lifeCycles'),
    })),
  }
}

/** Labels whole powers of ten only; the ticks between stay bare. */
function formatPower(value: number): string {
  const exponent = Math.log10(value)
  return Math.abs(exponent - Math.round(exponent)) > 1e-6 ? '' : digitsAsEntered(10 ** Math.round(exponent))
}
