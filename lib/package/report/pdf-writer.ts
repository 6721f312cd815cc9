import { createRequire } from 'node:module'
import path from 'node:path'
import pdfmake from 'pdfmake'
import type { TDocumentDefinitions } from 'pdfmake/interfaces'

/**
 * Fonts lie in a package of the project's dependencies. They are looked up from the project's root, since a bundled
 * server no longer knows where this file lay.
 */
function findFontFolder(): string {
  const fromRoot = createRequire(path.join(/* turbopackIgnore: true */ process.cwd(), 'package.json'))
  return path.join(path.dirname(fromRoot.resolve('dejavu-fonts-ttf/package.json')), 'ttf')
}

let isReady = false

function prepare(): void {
  if (isReady) return
  const folder = findFontFolder()
  const font = (name: string) => path.join(folder, `${name}.ttf`)
  pdfmake.setFonts({
    DejaVu: {
      normal: font('DejaVuSansCondensed'),
      bold: font('DejaVuSansCondensed-Bold'),
      italics: font('DejaVuSansCondensed-Oblique'),
      bolditalics: font('DejaVuSansCondensed-BoldOblique'),
    },
    DejaVuMono: {
      normal: font('DejaVuSansMono'),
      bold: font('DejaVuSansMono-Bold'),
      italics: font('DejaVuSansMono'),
      bolditalics: font('DejaVuSansMono-Bold'),
    },
  })
  // Documents are made of what is passed in: nothing is fetched, and no file is read but the fonts.
  pdfmake.setUrlAccessPolicy(() => false)
  pdfmake.setLocalAccessPolicy((file) => path.dirname(path.resolve(file)) === folder)
  isReady = true
}

export interface PdfIdentity {
  readonly title: string
  readonly subject: string
  readonly author: string
  /** ISO 8601; stands for the time of making, so that the same content gives the same bytes. */
  readonly at: string
}

/** Lays out and writes a PDF. Streams stay uncompressed: the archive's checks then cover every byte in one form. */
export async function writePdf(definition: TDocumentDefinitions, identity: PdfIdentity): Promise<Uint8Array> {
  prepare()
  const date = new Date(identity.at)
  const document = pdfmake.createPdf({
    ...definition,
    compress: false,
    version: '1.7',
    language: 'en-GB',
    displayTitle: true,
    info: {
      title: identity.title,
      subject: identity.subject,
      author: identity.author,
      creator: 'Bendworthy',
      creationDate: date,
      modDate: date,
    },
  })
  return new Uint8Array(await document.getBuffer())
}
