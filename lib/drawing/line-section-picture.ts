import type { LineStudy, StudiedLine } from '@/lib/engine/line-study'
import {
  digitsAsComputed,
  digitsOfLength,
  formatLength,
  getShownUnit,
  type LengthUnit,
  withUnitInHead,
} from '@/lib/engine/units'
import type { Palette } from './palette'
import { type DrawingNode, makeNode, type Picture, roundPx } from './picture'

const MARGIN_PX = 16
/** Longest bar of charge, in px. */
const BAR_PX = 22
/** Of the line's width, shown on either side of the lines. */
const SIDE_WIDTHS = 1.2

interface SectionFrame {
  readonly palette: Palette
  readonly widthPx: number
  readonly unit: LengthUnit
}

/**
 * The cross-section as it was solved, with the charge on the faces of the conductors as bars: the field is strong, and current crowds, where they are long. Width and height in
 * one scale.
 */
export function drawLineSection(
  { conductorName, zoneName, isPair }: StudiedLine,
  { section, faces }: LineStudy,
  { palette, widthPx, unit: chosen }: SectionFrame,
): Picture {
  const unit = getShownUnit('um', chosen)
  const length = (um: number) => digitsOfLength(um, unit)
  const halves = section.conductors.map(({ bottomWidthUm, topWidthUm }) => Math.max(bottomWidthUm, topWidthUm) / 2)
  const widest = Math.max(...halves) * 2
  const left =
    Math.min(...section.conductors.map(({ centreUm }, at) => centreUm - (halves[at] ?? 0))) - SIDE_WIDTHS * widest
  const right =
    Math.max(...section.conductors.map(({ centreUm }, at) => centreUm + (halves[at] ?? 0))) + SIDE_WIDTHS * widest
  const heightUm = section.slabs.reduce((sum, { thicknessUm }) => sum + thicknessUm, 0)
  const topUm = Math.max(heightUm, ...section.conductors.map(({ bottomUm, thicknessUm }) => bottomUm + thicknessUm))
  const scale = Math.min((widthPx - 2 * MARGIN_PX) / (right - left), 260 / topUm)
  const heightPx = Math.ceil(topUm * scale + 2 * (MARGIN_PX + BAR_PX))
  const x = (um: number) => MARGIN_PX + ((widthPx - 2 * MARGIN_PX) / 2 + (um - (left + right) / 2) * scale)
  const y = (um: number) => heightPx - MARGIN_PX - BAR_PX - um * scale
  const [fromPx, toPx] = [x(left), x(right)]
  const nodes: DrawingNode[] = []
  let bottom = 0
  for (const { thicknessUm, relativePermittivity } of section.slabs) {
    nodes.push(
      makeNode('rect', {
        x: fromPx,
        y: y(bottom + thicknessUm),
        width: toPx - fromPx,
        height: thicknessUm * scale,
        fill: palette.film,
        'fill-opacity': Math.min(0.9, 0.15 + 0.2 * (relativePermittivity - 1)),
        stroke: palette.hairline,
        'stroke-width': 0.7,
      }),
    )
    bottom += thicknessUm
  }
  for (const [isThere, atUm] of [
    [section.hasPlaneBelow, 0],
    [section.hasPlaneAbove, heightUm],
  ] as const) {
    if (isThere)
      nodes.push(
        makeNode('line', { x1: fromPx, x2: toPx, y1: y(atUm), y2: y(atUm), stroke: palette.copper, 'stroke-width': 3 }),
      )
  }
  for (const { centreUm, bottomUm, thicknessUm, bottomWidthUm, topWidthUm } of section.conductors) {
    const corners = [
      [centreUm - bottomWidthUm / 2, bottomUm],
      [centreUm + bottomWidthUm / 2, bottomUm],
      [centreUm + topWidthUm / 2, bottomUm + thicknessUm],
      [centreUm - topWidthUm / 2, bottomUm + thicknessUm],
    ]
    nodes.push(
      makeNode('polygon', {
        points: corners.map(([ux = 0, uy = 0]) => `${roundPx(x(ux))},${roundPx(y(uy))}`).join(' '),
        fill: palette.copper,
      }),
    )
  }
  // Corners carry charge without bound in theory: bars are drawn by the root, so that faces stay legible beside them.
  const most = Math.max(...faces.map(({ density }) => Math.sqrt(Math.abs(density))), 1e-12)
  for (const { fromUm, toUm, density, conductor } of faces) {
    const { centreUm = 0, bottomUm = 0, thicknessUm = 0 } = section.conductors[conductor] ?? {}
    const middle = [(fromUm[0] + toUm[0]) / 2, (fromUm[1] + toUm[1]) / 2] as const
    const along = [toUm[0] - fromUm[0], toUm[1] - fromUm[1]] as const
    const faceLength = Math.hypot(...along) || 1
    const outward = [along[1] / faceLength, -along[0] / faceLength] as const
    const away = (middle[0] - centreUm) * outward[0] + (middle[1] - bottomUm - thicknessUm / 2) * outward[1]
    const sign = away < 0 ? -1 : 1
    const barPx = (BAR_PX * Math.sqrt(Math.abs(density))) / most
    nodes.push(
      makeNode('line', {
        x1: x(middle[0]),
        y1: y(middle[1]),
        x2: x(middle[0]) + sign * outward[0] * barPx,
        y2: y(middle[1]) - sign * outward[1] * barPx,
        stroke: density < 0 ? palette.limit : palette.strain,
        'stroke-width': 1.1,
      }),
    )
  }
  const title = `Section and charge, ${conductorName} in ${zoneName}`
  let slabBottom = 0
  const rows = section.slabs.map(({ thicknessUm, relativePermittivity }) => {
    const from = slabBottom
    slabBottom += thicknessUm
    return {
      part: 'dielectric',
      from: length(from),
      thickness: length(thicknessUm),
      width: '',
      permittivity: digitsAsComputed(relativePermittivity, 'permittivity'),
    }
  })
  return {
    title,
    description: `${isPair ? 'The lines of the pair against each other' : 'The line against its planes'}; bars on the faces show the charge by its square root${isPair ? ', in two colours for its sign' : ''}. ${formatLength(topUm, unit)} high, width and height in one scale.`,
    widthPx,
    heightPx,
    nodes: [makeNode('g', { 'font-family': palette.fontFamily }, nodes)],
    table: {
      caption: `${title}: what was solved, from the reference upwards`,
      columns: [
        { key: 'part', label: 'Part', numeric: false },
        { key: 'from', label: withUnitInHead('From', unit), numeric: true },
        { key: 'thickness', label: withUnitInHead('Thickness', unit), numeric: true },
        { key: 'width', label: withUnitInHead('Lower and upper width', unit), numeric: true },
        { key: 'permittivity', label: 'Permittivity', numeric: true },
      ],
      rows: [
        ...rows,
        ...section.conductors.map(({ name, bottomUm, thicknessUm, bottomWidthUm, topWidthUm }) => ({
          part: name,
          from: length(bottomUm),
          thickness: length(thicknessUm),
          width: `${length(bottomWidthUm)}, ${length(topWidthUm)}`,
          permittivity: '',
        })),
      ],
    },
  }
}
