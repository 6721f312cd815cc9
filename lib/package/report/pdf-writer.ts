import { createRequire } from 'node:module'
import path from 'node:path'
import * as fontkit from 'fontkit'
import pdfmake from 'pdfmake'
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces'
import { tagContent } from './pdf-tags'
import { shareWordLayouts } from './shared-layouts'
import { makeRuns } from './stand-in-font'
import { installTags } from './tagged-renderer'

/** The family of screens, report and drawing sheets. */
export const PDF_FONT = 'Source Sans 3'

/** Stands in for characters that the family lacks: other scripts, signs of mathematics. */
const STAND_IN_FONT = 'DejaVu'

/**
 * Fonts lie in packages of the project's dependencies. They are looked up from the project's root, since a bundled
 * server no longer knows where this file lay.
 */
function findFontFolder(packageName: string, folder: string): string {
  const fromRoot = createRequire(path.join(/* turbopackIgnore: true */ process.cwd(), 'package.json'))
  return path.join(path.dirname(fromRoot.resolve(`${packageName}/package.json`)), folder)
}

interface Fonts {
  readonly has: (codePoint: number) => boolean
}

let ready: Fonts | null = null

function prepare(): Fonts {
  if (ready !== null) return ready
  const own = findFontFolder('source-sans', 'TTF')
  const standIn = findFontFolder('dejavu-fonts-ttf', 'ttf')
  const regular = path.join(own, 'SourceSans3-Regular.ttf')
  pdfmake.setFonts({
    [PDF_FONT]: {
      normal: regular,
      bold: path.join(own, 'SourceSans3-Semibold.ttf'),
      italics: path.join(own, 'SourceSans3-It.ttf'),
      bolditalics: path.join(own, 'SourceSans3-SemiboldIt.ttf'),
    },
    [STAND_IN_FONT]: {
      normal: path.join(standIn, 'DejaVuSansCondensed.ttf'),
      bold: path.join(standIn, 'DejaVuSansCondensed-Bold.ttf'),
      italics: path.join(standIn, 'DejaVuSansCondensed-Oblique.ttf'),
      bolditalics: path.join(standIn, 'DejaVuSansCondensed-BoldOblique.ttf'),
    },
  })
  // Documents are made of what is passed in: nothing is fetched, and no file is read but the fonts.
  pdfmake.setUrlAccessPolicy(() => false)
  pdfmake.setLocalAccessPolicy((file) => [own, standIn].includes(path.dirname(path.resolve(file))))
  installTags()
  shareWordLayouts()
  const covered = new Set((fontkit.openSync(regular) as fontkit.Font).characterSet)
  ready = { has: (codePoint) => covered.has(codePoint) }
  return ready
}

export interface PdfIdentity {
  readonly title: string
  readonly subject: string
  readonly author: string
  /** ISO 8601; stands for the time of making, so that the same content gives the same bytes. */
  readonly at: string
}

/**
 * Lays out and writes a PDF for archives: PDF/A-2, level B (ISO 19005-2, 2011), with language and title, and tagged: a tree of
 * structure says what is a heading, a row, a picture and what it shows. Level A and PDF/UA are not claimed. `archival-pdf.test.ts` holds the files to the rules
 * of level B that can be read from them; no validator for the standard has judged them.
 * Streams stay uncompressed: the archive's checks then cover every byte in one form.
 */
export async function writePdf(definition: TDocumentDefinitions, identity: PdfIdentity): Promise<Uint8Array> {
  const { has } = prepare()
  const date = new Date(identity.at)
  const document = pdfmake.createPdf({
    ...definition,
    content: tagContent(makeRuns(definition.content, has, STAND_IN_FONT)) as Content,
    tagged: true,
    compress: false,
    version: '1.7',
    subset: 'PDF/A-2b',
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
