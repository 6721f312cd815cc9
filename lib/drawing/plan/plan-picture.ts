import type { Design, LengthUnit } from '@/lib/engine'
import { countOf, digitsOfEnteredLength, getShownUnit, withUnit } from '@/lib/engine/units'
import { areasOf, measureDimension } from '@/lib/plan'
import type { Palette } from '../palette'
import type { Picture } from '../picture'
import { boundsOfPlan } from './frame'
import { layPlanFigure } from './lay-figure'
import { makePlanReferences } from './references'

const FONT_PX = 11
/** At this the figure's lines and type stand to each other as on a sheet: 2.73 mm of type are 11 px. */
const PX_PER_MM = FONT_PX / 2.73
const HIGHEST_PX = 620

export interface PlanPictureOptions {
  readonly palette: Palette
  readonly widthPx: number
  readonly unit?: LengthUnit
  readonly withRoutes?: boolean
}

/** The plan as the drawing sheet shows it, filling a width, for pages and the report; null where no outline is drawn. */
export function drawPlanPicture(
  design: Design,
  { palette, widthPx, unit: chosen = 'mm', withRoutes = false }: PlanPictureOptions,
): Picture | null {
  const { plan } = design
  const bounds = plan === null ? null : boundsOfPlan(plan)
  if (plan === null || bounds === null) return null
  const unit = getShownUnit('mm', chosen)
  const digits = (mm: number) => digitsOfEnteredLength(Math.round(mm * 1e6) / 1e6, 'mm', unit)
  const laid = layPlanFigure(design, plan, [0, 0], {
    palette,
    perMm: PX_PER_MM,
    fontSize: FONT_PX,
    width: widthPx,
    highest: HIGHEST_PX,
    scales: null,
    textOf: (dimension) => {
      const size = digits(measureDimension(dimension))
      return dimension.isReference ? `(${size})` : size
    },
    withRoutes,
    withPoints: false,
    detailsAt: null,
  })
  if (laid === null) return null
  const names = makePlanReferences(design)
  const { areas } = areasOf(plan)
  const [width, height] = [bounds.maxMm[0] - bounds.minMm[0], bounds.maxMm[1] - bounds.minMm[1]]
  const unnamed = laid.leftOut.labels.length
  return {
    title: 'Part in plan',
    description: `${digits(width)} × ${withUnit(digits(height), unit)}, ${countOf(areas.length, 'area')}, ${countOf(plan.bendLines.length, 'bend axis', 'bend axes')}. Dash-dotted axes bend away from the reader, dashed ones towards the reader; stiffeners are hatched.${unnamed === 0 ? '' : ` ${countOf(unnamed, 'name finds', 'names find')} no room in the picture.`}`,
    widthPx,
    heightPx: laid.height,
    nodes: laid.nodes,
    table: {
      caption: 'Areas of the plan',
      columns: [
        { key: 'zone', label: 'Zone', numeric: false },
        { key: 'name', label: 'Name', numeric: false },
        { key: 'area', label: 'Area, mm²', numeric: true },
      ],
      rows: areas.map(({ zoneId, name, areaMm2 }) => ({
        zone: zoneId === null ? '–' : (names.zones.get(zoneId) ?? zoneId),
        name: name ?? '–',
        area: String(Math.round(areaMm2 * 100) / 100),
      })),
    },
  }
}
