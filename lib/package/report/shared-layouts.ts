import imported from 'pdfmake/js/PDFDocument.js'

/** It is a CommonJS module: Node.js hands over what it exports, a bundler the default of that. */
const PDFDocument = 'default' in imported ? imported.default : imported

/** Words of several long reports, about 20 MB; a face that has more starts empty with the next document. */
const MOST_WORDS = 20_000

/** Known to every copy of this module in the process, as the layout library is one for all of them. */
const IS_WRAPPED = Symbol.for('bendworthy: documents share the layouts of words')

/**
 * Lets the documents of a process share what each face works out of a word (glyphs, kerning): the library keeps it for one document alone, and
 * that takes two fifths of the time of a report. The words of reports and sheets are much the same, and the faces are the same files, so each
 * document comes out as it would by itself. Further calls do nothing.
 */
export function shareWordLayouts(): void {
  const prototype: typeof PDFDocument.prototype & { [IS_WRAPPED]?: true } = PDFDocument.prototype
  if (prototype[IS_WRAPPED] === true) return
  prototype[IS_WRAPPED] = true
  const known = new Map<string, Record<string, object>>()
  const shared = new WeakSet<object>()
  const { font } = prototype
  // Text of the layout and text in pictures both choose their faces here.
  prototype.font = function (...choice) {
    font.apply(this, choice)
    const face = this._font
    if (face.layoutCache === undefined || shared.has(face)) return this
    shared.add(face)
    const layouts = known.get(face.name)
    if (layouts === undefined || Object.keys(layouts).length > MOST_WORDS) known.set(face.name, face.layoutCache)
    else face.layoutCache = layouts
    return this
  }
}
