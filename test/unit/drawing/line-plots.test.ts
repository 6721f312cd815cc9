import { parseHTML } from 'linkedom'
import { expect, test } from 'vitest'
import {
  drawCrosstalk,
  drawCrosstalkOverSpace,
  drawImpedanceOverCover,
  drawImpedanceOverWidth,
  drawLineSection,
  PRINT_PALETTE,
  toSvg,
} from '@/lib/drawing'
import { makeLineDesign, studyAll } from '../lines/example-lines'

test('pictures of a line say what their tables hold, in the unit of the reader', () => {
  const [[studied, study] = []] = studyAll(makeLineDesign('single'))
  if (studied === undefined || study === undefined) throw new Error('no line')
  const document = parseHTML('<html></html>').document as unknown as Document
  const frame = { document, palette: PRINT_PALETTE, widthPx: 500, heightPx: 280 }
  const crosstalk = {
    layerName: 'L3',
    points: [0, 0.2].map((offsetMm) => ({
      offsetMm,
      nearEndFraction: 0.1 - offsetMm / 4,
      backwardFraction: 0.1,
      farEndFraction: 0,
      overlapFraction: offsetMm === 0 ? 1 : 0,
    })),
  }
  for (const unit of ['mm', 'mil'] as const) {
    const pictures = [
      drawLineSection(studied, study, { ...frame, unit }),
      drawImpedanceOverWidth(studied, study, { ...frame, unit }),
      drawImpedanceOverCover(studied, study, { ...frame, unit }),
      drawCrosstalk(studied, crosstalk, 6, { ...frame, unit }),
      drawCrosstalkOverSpace(studied, study, 6, { ...frame, unit }),
    ].filter((picture) => picture !== null)
    expect(pictures).toHaveLength(5)
    for (const { table, description, title } of pictures) {
      expect(title).toContain(studied.conductorName)
      expect(description).toMatch(/\.$/)
      expect(table.rows.length).toBeGreaterThan(1)
      for (const row of table.rows) for (const { key } of table.columns) expect(row[key]).toBeDefined()
    }
    expect(pictures.map((picture) => toSvg(picture)).join('')).not.toContain('NaN')
    expect(pictures[1]?.table.columns[0]?.label).toContain(unit)
  }
})
