import { parseHTML } from 'linkedom'
import { describe, expect, test } from 'vitest'
import {
  type DrawingNode,
  drawCrossSection,
  drawOutline,
  drawPartSection,
  drawRemedyPlot,
  type Picture,
  REMEDY_EFFECTS,
} from '@/lib/drawing'
import { measureText } from '@/lib/drawing/sheet'
import { findMaterial } from '@/lib/engine'
import { findRemedies } from '@/lib/engine/remedies'
import { loadDesign, makeOptions } from './demo-design'

interface Text {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Texts that stand at a place of their own, with the box that each takes. */
function listTexts({ nodes }: Picture): Text[] {
  const texts: Text[] = []
  const visit = (node: DrawingNode) => {
    const [text] = node.children
    if (node.tag === 'text' && typeof text === 'string' && typeof node.attributes.x === 'number') {
      const size = Number(node.attributes['font-size'])
      const width = measureText(text, size, node.attributes['font-weight'] === 'bold')
      const anchor = node.attributes['text-anchor'] ?? 'start'
      const x = node.attributes.x
      const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x
      const y = Number(node.attributes.y)
      texts.push({ text, left, right: left + width, top: y - size * 0.73, bottom: y + size * 0.2 })
    }
    for (const child of node.children) if (typeof child !== 'string') visit(child)
  }
  nodes.forEach(visit)
  return texts
}

function listOverprints(picture: Picture): string[] {
  const texts = listTexts(picture)
  expect(texts.length).toBeGreaterThan(1)
  return texts.flatMap((a, at) =>
    texts
      .slice(at + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `"${a.text}" over "${b.text}"`),
  )
}

const DESIGNS = ['skua-rev-a.json', 'skua-rev-b.json', 'pipit-rev-a.json'] as const

describe.each(DESIGNS)('labels of %s', (file) => {
  const { design, evaluation } = loadDesign(file)

  test.each([300, 430, 640])('of the section of a zone %i px wide are whole, inside, and apart', (widthPx) => {
    const findMaterialName = (id: string) => findMaterial(design, id)?.name ?? null
    for (const zone of evaluation.zones) {
      const picture = drawCrossSection(zone, { ...makeOptions(design), widthPx, findMaterialName })
      const said = listTexts(picture)
        .map(({ text }) => text)
        .join(' ')
      expect(said).not.toContain('…')
      for (const { name } of zone.layers) for (const word of name.split(' ')) expect(said).toContain(word)
      for (const { text, right, bottom } of listTexts(picture)) {
        expect(right, text).toBeLessThanOrEqual(widthPx)
        expect(bottom, text).toBeLessThanOrEqual(picture.heightPx)
      }
      expect(listOverprints({ ...picture, nodes: picture.nodes.filter(({ tag }) => tag === 'text') })).toEqual([])
    }
  })

  test('of the zones side by side are whole and apart, however narrow the columns', () => {
    const widthPx = 150 + 64 * evaluation.zones.length
    const picture = drawPartSection(design.construction, evaluation.zones, { ...makeOptions(design), widthPx })
    const said = listTexts(picture)
      .map(({ text }) => text)
      .join(' ')
    expect(said).not.toContain('…')
    for (const { name } of evaluation.zones) for (const word of name.split(' ')) expect(said).toContain(word)
    expect(listOverprints(picture)).toEqual([])
  })

  // A phone, a column beside the editor at 1280 and 1440 px, and the whole width of a page.
  test.each([250, 340, 384, 400, 460, 900])(
    'of many zones side by side are whole and inside a picture %i px wide',
    (widthPx) => {
      const [first] = evaluation.zones
      if (first === undefined) throw new Error('the demo designs have zones')
      const named = ['Connector', 'Arm to the mirror', 'Stiffener under L1', 'Tail', 'Camera head', 'End', 'Grip']
      const zones = named.map((name, index) => {
        const zone = evaluation.zones[index % evaluation.zones.length] ?? first
        return { ...zone, zoneId: `z${index}`, name, kind: index === 2 ? ('stiffened' as const) : zone.kind }
      })
      for (const count of [1, 5, 7]) {
        const shown = zones.slice(0, count)
        const picture = drawPartSection(design.construction, shown, { ...makeOptions(design), widthPx })
        expect(picture.widthPx).toBe(widthPx)
        const texts = listTexts(picture)
        for (const { text, left, right, top, bottom } of texts) {
          expect([text, left >= 0 && right <= widthPx && top >= 0 && bottom <= picture.heightPx]).toEqual([text, true])
        }
        expect(listOverprints(picture)).toEqual([])
        const words = texts.map(({ text }) => text).join(' ')
        for (const { name } of shown) for (const word of name.split(' ')) expect(words).toContain(word)
        // Each zone's thickness is said once, whichever strip it stands in.
        expect(texts.filter(({ text }) => /^[\d.,]+ µm$/.test(text))).toHaveLength(count)
      }
    },
  )

  test('of the outline’s corners are each there once, and none over another', () => {
    const { outline } = design.features
    if (outline === null) throw new Error('the demo designs have an outline')
    const picture = drawOutline(outline, { palette: makeOptions(design).palette, widthPx: 460 })
    const numbers = listTexts(picture).flatMap(({ text }) => (/^\d+$/.test(text) ? [Number(text)] : []))
    expect(numbers.sort((a, b) => a - b)).toEqual(outline.verticesMm.map((_, index) => index + 1))
    expect(listOverprints(picture)).toEqual([])
  })

  test('of remedies are apart, and every remedy is numbered', () => {
    const [bend] = design.bends
    if (bend === undefined) throw new Error('the demo designs have a bend')
    const report = findRemedies(design, bend.id)
    const { document } = parseHTML('<!doctype html><html><body></body></html>')
    for (const effect of REMEDY_EFFECTS) {
      for (const widthPx of [340, 700]) {
        const picture = drawRemedyPlot(report, {
          document: document as unknown as Document,
          palette: makeOptions(design).palette,
          widthPx,
          heightPx: 340,
          unit: 'um',
          effect,
          chosen: null,
        })
        expect(listOverprints(picture), `${effect} at ${widthPx}`).toEqual([])
        const numbered = listTexts(picture).flatMap(({ text }) => expandRuns(text))
        expect(numbered.sort((a, b) => a - b)).toEqual(report.remedies.map((_, at) => at + 1))
      }
    }
  })
})

/** `1, 4 to 6` names 1, 4, 5 and 6; other texts name none. */
function expandRuns(text: string): number[] {
  if (!/^[\d, to]+$/.test(text)) return []
  return text.split(', ').flatMap((run) => {
    const [from = Number.NaN, to = from] = run.split(' to ').map(Number)
    return Array.from({ length: to - from + 1 }, (_, step) => from + step)
  })
}
