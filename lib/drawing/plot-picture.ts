import * as Plot from '@observablehq/plot'
import type { Palette } from './palette'
import { type DrawingNode, makeNode, type Picture, type PictureTable } from './picture'

/** What a plot needs beside its marks. `document` is the page's, or one made by a DOM library outside a browser. */
export interface PlotFrame {
  readonly document: Document
  readonly palette: Palette
  readonly widthPx: number
  readonly heightPx: number
}

/**
 * Runs the charting library and keeps only shapes and text: no classes, no style sheets, no current colour, so that
 * the same picture serves a page and a PDF writer.
 */
export function makePlotPicture(
  frame: PlotFrame,
  words: { readonly title: string; readonly description: string; readonly table: PictureTable },
  options: Plot.PlotOptions,
  /** Draws over the plot at the places of its values, which only the rendered plot knows. */
  annotate: (place: {
    readonly x: (value: number) => number
    readonly y: (value: number) => number
  }) => readonly DrawingNode[] = () => [],
): Picture {
  const rendered = Plot.plot({
    ...options,
    document: frame.document,
    width: frame.widthPx,
    height: frame.heightPx,
    style: {},
  })
  const root = rendered.tagName.toLowerCase() === 'svg' ? rendered : rendered.querySelector('svg')
  if (root === null) throw new Error('the charting library gave no drawing')
  const group = makeNode(
    'g',
    { 'font-family': frame.palette.fontFamily, 'font-size': 11, 'text-anchor': 'middle', fill: frame.palette.ink },
    [...convertChildren(root, frame.palette), ...annotate({ x: placeBy(rendered, 'x'), y: placeBy(rendered, 'y') })],
  )
  return { ...words, widthPx: frame.widthPx, heightPx: frame.heightPx, nodes: [group] }
}

function placeBy(rendered: ReturnType<typeof Plot.plot>, name: 'x' | 'y'): (value: number) => number {
  return (value) => {
    const px: unknown = rendered.scale(name)?.apply(value)
    if (typeof px !== 'number') throw new Error(`the charting library has no scale for ${name}`)
    return px
  }
}

const DROPPED_ELEMENTS = new Set(['style', 'title', 'desc'])
const DROPPED_ATTRIBUTES = /^(class|style|aria-.*|role|font-variant|xmlns.*)$/

function convertChildren(element: Element, palette: Palette): (DrawingNode | string)[] {
  const children: (DrawingNode | string)[] = []
  for (const child of Array.from(element.childNodes)) {
    // 1 and 3 are the DOM's numbers of element and text nodes; the constants hang on a global that Node lacks.
    if (child.nodeType === 3) {
      if (child.textContent !== null && child.textContent !== '') children.push(child.textContent)
    } else if (child.nodeType === 1) {
      const node = convertElement(child as Element, palette)
      if (node !== null) children.push(node)
    }
  }
  return children
}

function convertElement(element: Element, palette: Palette): DrawingNode | null {
  const tag = element.tagName.toLowerCase()
  if (DROPPED_ELEMENTS.has(tag)) return null
  const attributes: Record<string, string> = {}
  for (const { name, value } of Array.from(element.attributes)) {
    if (DROPPED_ATTRIBUTES.test(name)) continue
    attributes[name] = replaceColour(value, palette)
  }
  return { tag, attributes, children: convertChildren(element, palette) }
}

function replaceColour(value: string, palette: Palette): string {
  if (value === 'currentColor') return palette.ink
  if (value.includes('--plot-background')) return palette.paper
  return value
}
