/** The class of a document in the making; the library's types leave it out. */
declare module 'pdfmake/js/PDFDocument.js' {
  /** A face as one document uses it. */
  interface Face {
    /** Of its file: the same for the same face in every document. */
    readonly name: string
    /** What it worked out of each word; read and added to by the library, never changed. A face that every reader of PDF brings along has none. */
    layoutCache?: Record<string, object>
  }

  class PDFDocument {
    /** The face that was chosen last. */
    readonly _font: Face
    font(source: unknown, ...familyAndSize: readonly unknown[]): this
  }

  const imported: typeof PDFDocument | { readonly default: typeof PDFDocument }
  export default imported
}
