/** The class that draws the laid-out pages; the library's types leave it out. */
declare module 'pdfmake/js/Renderer.js' {
  import type { TaggableDocument } from './tagged-renderer'

  class Renderer {
    readonly pdfDocument: TaggableDocument
    renderLine(line: object, ...place: number[]): void
    renderVector(vector: object): void
    renderImage(image: object): void
    renderSVG(svg: object): void
    renderPages(pages: object): void
  }

  const imported: typeof Renderer | { readonly default: typeof Renderer }
  export default imported
}
