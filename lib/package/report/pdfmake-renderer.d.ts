/** The class that draws the laid-out pages; the library's types leave it out. */
declare module 'pdfmake/js/Renderer' {
  import type { TaggableDocument } from './tagged-renderer'

  export default class Renderer {
    readonly pdfDocument: TaggableDocument
    renderLine(line: object, ...place: number[]): void
    renderVector(vector: object): void
    renderImage(image: object): void
    renderSVG(svg: object): void
    renderPages(pages: object): void
  }
}
