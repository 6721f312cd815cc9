import imported from 'pdfmake/js/PDFDocument.js'

/** It is a CommonJS module: Node.js hands over what it exports, a bundler the default of that. */
const PDFDocument = 'default' in imported ? imported.default : imported

/** Words of several long reports, about 20 MB; a face that has more starts empty with the next document. */
const MOST_WORDS = 20_000

type Layouts = Record<string, object>

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
  const known = new Map<string, Layouts>()
  const shared = new WeakSet<object>()
  const { provideFont } = prototype
  prototype.provideFont = function (family, isBold, isItalic) {
    const face = provideFont.call(this, family, isBold, isItalic)
    if (shared.has(face)) return face
    shared.add(face)
    const key = `${family} ${isBold === true} ${isItalic === true}`
    const layouts = known.get(key)
    if (layouts === undefined || Object.keys(layouts).length > MOST_WORDS) known.set(key, face.layoutCache)
    else face.layoutCache = layouts
    return face
  }
}
