import imported from 'pdfmake/js/Renderer.js'
import { TAG_KEY, type Tag } from './pdf-tags'

/** It is a CommonJS module: Node.js hands over what it exports, a bundler the default of that. */
const Renderer = 'default' in imported ? imported.default : imported

/** A piece of marked content, as the PDF library makes and takes it. */
type Piece = object

interface Element {
  readonly dictionary: { readonly data: Record<string, unknown> }
  add(child: Element | Piece): void
  end(): void
}

/** What of the PDF library's document is used here. */
export interface TaggableDocument {
  readonly options: { readonly tagged?: boolean }
  markContent(tag: string, options?: { readonly type: string }): void
  markStructureContent(tag: string): Piece
  endMarkedContent(): void
  struct(type: string, options?: { readonly alt?: string }): Element
  addStructure(element: Element): void
}

type Carrier = Readonly<Record<string, unknown>>

interface Drawn extends Carrier {
  readonly inlines?: readonly Carrier[]
}

/** Of each document that is being drawn: the root of its tree, and what was drawn already. */
interface Progress {
  root: Tag<Piece> | null
  readonly drawn: WeakSet<object>
}

const PROGRESS = new WeakMap<object, Progress>()

/** Known to every copy of this module in the process: bundles and reloads share the layout library, and wrapping it twice would mark twice. */
const IS_WRAPPED = Symbol.for('bendworthy: drawing functions mark what they draw')

/**
 * Wraps the drawing functions of the layout library, which marks nothing itself: each line of text and each picture that carries a tag becomes a
 * piece of it; all else, and the head of a table that is repeated on its next page, is an artifact (ISO 32000-1:2008, 14.8.2.2). Further calls do
 * nothing.
 */
export function installTags(): void {
  const prototype: typeof Renderer.prototype & { [IS_WRAPPED]?: true } = Renderer.prototype
  if (prototype[IS_WRAPPED] === true) return
  prototype[IS_WRAPPED] = true
  const { renderLine, renderVector, renderImage, renderSVG, renderPages } = prototype
  prototype.renderLine = function (line, ...place) {
    mark(this.pdfDocument, (line as Drawn).inlines?.[0] ?? {}, () => renderLine.call(this, line, ...place))
  }
  prototype.renderVector = function (vector) {
    mark(this.pdfDocument, {}, () => renderVector.call(this, vector))
  }
  prototype.renderImage = function (image) {
    mark(this.pdfDocument, image as Carrier, () => renderImage.call(this, image))
  }
  prototype.renderSVG = function (svg) {
    mark(this.pdfDocument, svg as Carrier, () => renderSVG.call(this, svg))
  }
  prototype.renderPages = function (pages) {
    renderPages.call(this, pages)
    const root = PROGRESS.get(this.pdfDocument)?.root ?? null
    if (root !== null) this.pdfDocument.addStructure(writeTree(this.pdfDocument, root))
  }
}

function mark(document: TaggableDocument, carrier: Carrier, draw: () => void): void {
  if (document.options.tagged !== true) {
    draw()
    return
  }
  const progress = PROGRESS.get(document) ?? { root: null, drawn: new WeakSet() }
  PROGRESS.set(document, progress)
  const tag = carrier[TAG_KEY] as Tag<Piece> | undefined
  if (tag === undefined) document.markContent('Artifact', { type: 'Layout' })
  else if (progress.drawn.has(carrier)) document.markContent('Artifact', { type: 'Pagination' })
  else {
    tag.pieces.push(document.markStructureContent(tag.type))
    progress.root ??= findRoot(tag)
  }
  progress.drawn.add(carrier)
  draw()
  document.endMarkedContent()
}

const findRoot = (tag: Tag<Piece>): Tag<Piece> => (tag.parent === null ? tag : findRoot(tag.parent))

/** Cells of a table stay where they are empty; any other element that drew nothing is left out. */
const isDrawn = (tag: Tag<Piece>): boolean =>
  tag.type === 'TH' || tag.type === 'TD' || tag.pieces.length > 0 || tag.children.some(isDrawn)

function writeTree(document: TaggableDocument, tag: Tag<Piece>): Element {
  const element = document.struct(tag.type, tag.alt === undefined ? {} : { alt: tag.alt })
  const attributes = {
    ...(tag.scope === undefined ? {} : { Scope: tag.scope }),
    ...(tag.colSpan === undefined ? {} : { ColSpan: tag.colSpan }),
  }
  if (Object.keys(attributes).length > 0) element.dictionary.data.A = { O: 'Table', ...attributes }
  for (const piece of tag.pieces) element.add(piece)
  for (const child of tag.children) if (isDrawn(child)) element.add(writeTree(document, child))
  element.end()
  return element
}
