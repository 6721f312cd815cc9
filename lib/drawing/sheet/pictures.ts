import type { Construction, LengthUnit } from '@/lib/engine'
import { roundTo } from '@/lib/engine/numerics'
import { drawCrossSection } from '../cross-section'
import { nameConductorLayers } from '../layer-designations'
import type { Palette } from '../palette'
import { FILE_FONTS } from '../palette'
import { drawPartSection } from '../part-section'
import { type DrawingNode, makeNode, type Picture, roundPx } from '../picture'
import type { CrossSectionBlock } from './contents'
import { FONT_MM } from './marks'
import { type LaidBlock, makeTitle, type Strip } from './strips'

/** Sections are drawn with type of 11 px; at this scale it matches the sheet's. */
const MM_PER_PX = FONT_MM.body / 11

export interface SectionOptions {
  readonly construction: Construction
  readonly unit: LengthUnit
  readonly palette: Palette
  /** References of zones and layers by id. */
  readonly zoneNames: ReadonlyMap<string, string>
  readonly layerNumbers: ReadonlyMap<string, string>
}

/**
 * A section at a width, with its title. One that is higher than `highestMm` is drawn smaller as a whole, and says its
 * magnification accordingly.
 */
export function laySection(
  block: CrossSectionBlock,
  widthMm: number,
  highestMm: number,
  options: SectionOptions,
): LaidBlock {
  const title = makeTitle(block.title, widthMm, options.palette)
  const room = highestMm - title.heightMm
  const first = drawAt(block, widthMm, MM_PER_PX, options)
  const mmPerPx = Math.min(MM_PER_PX, room / first.heightPx)
  const picture = mmPerPx === MM_PER_PX ? first : drawAt(block, widthMm, mmPerPx, options)
  const strip: Strip = {
    heightMm: picture.heightPx * mmPerPx,
    draw: (x, y) => [place(picture, x, y, mmPerPx)],
  }
  return {
    id: block.id,
    title: block.title,
    widthMm,
    head: title,
    headContinued: title,
    strips: [strip],
    leastStrips: 1,
  }
}

function drawAt(block: CrossSectionBlock, widthMm: number, mmPerPx: number, options: SectionOptions): Picture {
  const { construction, unit, zoneNames, layerNumbers } = options
  const common = {
    palette: { ...options.palette, fontFamily: FILE_FONTS },
    unit,
    widthPx: widthMm / mmPerPx,
    designations: nameConductorLayers(construction),
  }
  const [zone] = block.zones
  if (block.of === 'part' || zone === undefined) {
    return drawPartSection(construction, block.zones, { ...common, zoneNames })
  }
  return drawCrossSection(zone, { ...common, layerNumbers, mmPerPx, findMaterialName: () => null })
}

function place(picture: Picture, x: number, y: number, mmPerPx: number): DrawingNode {
  return makeNode(
    'g',
    { transform: `translate(${roundPx(x)} ${roundPx(y)}) scale(${roundTo(mmPerPx, 5)})` },
    picture.nodes,
  )
}
