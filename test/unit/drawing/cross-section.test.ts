import { describe, expect, test } from 'vitest'
import type { DrawingNode } from '@/lib/drawing'
import { drawCrossSection, drawPartSection, type Picture, SCREEN_PALETTE, toSvg } from '@/lib/drawing'
import { evaluate } from '@/lib/engine'
import { makeOneBend } from '../verdicts/one-bend'
import { loadDesign, makeOptions } from './demo-design'

const { design, evaluation } = loadDesign('skua-rev-a.json')
const options = { ...makeOptions(design), widthPx: 640, findMaterialName: (id: string) => id }
const hinge = evaluation.zones.find((zone) => zone.kind === 'flex')
if (hinge === undefined) throw new Error('the demo design has a flex zone')

function listTexts(picture: Picture): string[] {
  const texts: string[] = []
  const visit = (node: DrawingNode | string) => {
    if (typeof node === 'string') texts.push(node)
    else node.children.forEach(visit)
  }
  picture.nodes.forEach(visit)
  return texts
}

describe('cross-section of a zone', () => {
  const picture = drawCrossSection(hinge, options)

  test('names every layer, conductors by their flex and conductor designation', () => {
    const texts = listTexts(picture)
    for (const layer of hinge.layers) expect(texts.some((text) => text.includes(layer.name))).toBe(true)
    expect(texts.some((text) => text.startsWith('F1 (L2)'))).toBe(true)
    expect(texts.some((text) => text.startsWith('F2 (L3)'))).toBe(true)
  })

  test('draws dielectric thickness to scale: bodies are in the ratio of finished thickness', () => {
    const films = hinge.layers.filter((layer) => layer.kind !== 'conductor')
    const rects = picture.nodes.filter((node) => node.tag === 'rect' && node.attributes.x === 52)
    const heights = rects.map((node) => Number(node.attributes.height))
    const total = heights.reduce((sum, height) => sum + height, 0)
    // Copper layers have a ground of their full height under their conductors, so all layers are there once.
    expect(rects).toHaveLength(hinge.layers.length)
    for (const film of films) {
      const expected = (film.nominalUm / hinge.thicknessUm) * total
      // Coordinates are rounded to a hundredth of a pixel.
      expect(heights.some((height) => Math.abs(height - expected) < 0.02)).toBe(true)
    }
  })

  test('draws copper with the share of the width that its coverage says', () => {
    const copper = hinge.layers.find((layer) => layer.kind === 'conductor')
    const conductors = picture.nodes.filter(
      (node) => node.tag === 'rect' && node.attributes.fill === options.palette.copper,
    )
    const perLayer = conductors.slice(0, 5)
    const drawn = perLayer.reduce((sum, node) => sum + Number(node.attributes.width), 0)
    const columnWidth = Number(picture.nodes.find((node) => node.tag === 'rect')?.attributes.width)
    expect(drawn / columnWidth).toBeCloseTo(copper?.coverageFraction ?? Number.NaN, 3)
  })

  test('has a table row per layer whose finished thicknesses add up to the zone', () => {
    expect(picture.table.rows).toHaveLength(hinge.layers.length)
    const sum = picture.table.rows.reduce((total, row) => total + Number(row.nominal), 0)
    // Each row is rounded to 0.1 um.
    expect(Math.abs(sum - hinge.thicknessUm)).toBeLessThanOrEqual(0.05 * hinge.layers.length)
  })

  test('is SVG that a PDF writer reads: no classes, style sheets, variables or current colour', () => {
    const svg = toSvg(picture)
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"/)
    expect(svg).toContain(`<title>Section of zone ${hinge.name}</title>`)
    expect(svg).not.toMatch(/class=|<style|currentColor|var\(|NaN|undefined|Infinity/)
  })

  test('takes the page theme through variables on screen', () => {
    expect(toSvg(drawCrossSection(hinge, { ...options, palette: SCREEN_PALETTE }))).toContain(
      'fill="var(--draw-copper)"',
    )
  })

  test('changes its scale and table with the length unit', () => {
    const inMil = drawCrossSection(hinge, { ...options, unit: 'mil' })
    expect(inMil.table.columns.find((column) => column.key === 'nominal')?.label).toBe('Finished, mil')
    const um = Number(picture.table.rows[0]?.nominal)
    expect(Number(inMil.table.rows[0]?.nominal)).toBeCloseTo(um / 25.4, 1)
  })

  test('puts the neutral axis at its depth from the inside face, whichever face that is', () => {
    const result = evaluation.bends.find((bend) => bend.zoneId === hinge.zoneId)
    if (result === undefined) throw new Error('the demo design has a bend in this zone')
    const axisY = (insideFace: 'top' | 'bottom') => {
      const drawn = drawCrossSection(hinge, { ...options, bend: { result, insideFace } })
      const axis = drawn.nodes.find((node) => node.attributes['stroke-dasharray'] === '12 3 2 3')
      return Number(axis?.attributes.y1)
    }
    const column = picture.nodes.filter((node) => node.tag === 'rect' && node.attributes.x === 52)
    const top = Math.min(...column.map((node) => Number(node.attributes.y)))
    const bottom = Math.max(...column.map((node) => Number(node.attributes.y) + Number(node.attributes.height)))
    const depth = (result.leaves[0]?.decidingAxisDepthUm ?? Number.NaN) / hinge.thicknessUm
    expect(axisY('top')).toBeCloseTo(top + depth * (bottom - top), 1)
    expect(axisY('bottom')).toBeCloseTo(bottom - depth * (bottom - top), 1)
  })

  test('draws the axis that the verdict rests on, and the elastic one as such where yield set them apart', () => {
    const design = makeOneBend({ insideRadiusMm: 1, bends: [{ use: 'fold-once' }] })
    const [bend] = evaluate(design).bends
    const [zone] = evaluate(design).zones
    const [conductor] = bend?.conductors ?? []
    const [leaf] = bend?.leaves ?? []
    if (bend === undefined || zone === undefined || conductor === undefined || leaf === undefined)
      throw new Error('no bend')
    const drawn = drawCrossSection(zone, { ...options, bend: { result: bend, insideFace: 'top' } })
    const depthOf = (dash: string) => {
      const axis = drawn.nodes.find((node) => node.attributes['stroke-dasharray'] === dash)
      return ((Number(axis?.attributes.y1) - 34) / (drawn.heightPx - 34 - 38 - 13)) * zone.thicknessUm
    }
    // Strain at both faces of the copper tells where it would be nothing: e = (y - y_0) / (R + y_0).
    const { innerStrainPct, outerStrainPct, innerDepthUm, outerDepthUm } = conductor
    const noStrainUm =
      innerDepthUm - (innerStrainPct * (outerDepthUm - innerDepthUm)) / (outerStrainPct - innerStrainPct)
    expect(depthOf('12 3 2 3')).toBeCloseTo(noStrainUm, 2)
    expect(depthOf('1 3')).toBeCloseTo(leaf.neutralAxisDepthUm, 2)
    expect(Math.abs(noStrainUm - leaf.neutralAxisDepthUm)).toBeGreaterThan(0.5)
    const texts = drawn.nodes.filter(({ tag }) => tag === 'text').map(({ children }) => String(children[0]))
    expect(texts).toEqual(expect.arrayContaining(['N', 'E']))
    expect(texts.join(' ')).toContain('N: neutral axis, which strain is measured from; E: while nothing yields')
    expect(drawn.description).toContain('while nothing yields')
  })

  test('stays readable with 400 layers: no two labels closer than their spacing', () => {
    const layer = hinge.layers[0]
    if (layer === undefined) throw new Error('the zone has layers')
    const layers = Array.from({ length: 400 }, (_, index) => ({
      ...layer,
      layerId: `film-${index}`,
      name: `Film ${index}`,
      topDepthUm: index * 10,
      nominalUm: 10,
    }))
    const many = drawCrossSection({ ...hinge, layers, thicknessUm: 4000 }, options)
    const ys = many.nodes
      .filter((node) => node.tag === 'text' && String(node.children[0]).startsWith('Film '))
      .map((node) => Number(node.attributes.y))
    expect(ys).toHaveLength(400)
    for (let index = 1; index < ys.length; index += 1) {
      expect((ys[index] ?? 0) - (ys[index - 1] ?? 0)).toBeGreaterThan(14.9)
    }
    expect(Math.max(...ys)).toBeLessThan(many.heightPx)
  })
})

describe('section along the part', () => {
  test('lets the common flex layer run through all zones at one level', () => {
    const picture = drawPartSection(design.construction, evaluation.zones, { ...makeOptions(design), widthPx: 720 })
    expect(picture.table.rows.map((row) => row.zone)).toEqual(evaluation.zones.map((zone) => zone.name))
    const common = evaluation.zones.map((zone) => zone.layers.find((layer) => layer.name === 'PI 2'))
    expect(common.every((layer) => layer !== undefined)).toBe(true)
    const width = 720 - 52 - 80
    const columnWidth = width / evaluation.zones.length
    const levels = evaluation.zones.map((_, index) => {
      const x = Math.round((52 + index * columnWidth) * 100) / 100
      return picture.nodes
        .filter((node) => node.tag === 'rect' && node.attributes.x === x && node.attributes.fill === '#e8d8a6')
        .map((node) => Number(node.attributes.y))
    })
    const shared = levels[0]?.[0] ?? Number.NaN
    for (const level of levels) expect(level.some((y) => Math.abs(y - shared) < 0.02)).toBe(true)
  })
})
