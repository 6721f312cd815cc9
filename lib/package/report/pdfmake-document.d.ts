/** The class of a document in the making; the library's types leave it out. */
declare module 'pdfmake/js/PDFDocument.js' {
  /** A face as one document uses it. */
  interface Face {
    /** What it worked out of each word; read and added to by the library, never changed. */
    layoutCache: Record<string, object>
  }

  class PDFDocument {
    provideFont(family: string, isBold?: boolean, isItalic?: boolean): Face
  }

  const imported: typeof PDFDocument | { readonly default: typeof PDFDocument }
  export default imported
}
