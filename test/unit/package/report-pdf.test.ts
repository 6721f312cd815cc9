import { describe, expect, test } from 'vitest'
import { CAUTIONS, LIFE_CAUTION_SHORT } from '@/lib/engine'
import { makeDocuments } from '@/lib/package/report'
import { makeContent } from '../../integration/package/content-factory'
import { readPdfPages } from './pdf-text'

/** Lines break where the layout wants: letters alone are compared. */
const lettersOf = (text: string) => text.replaceAll(/\s+/g, '')

describe('PDFs as they are written', async () => {
  const files = await makeDocuments(makeContent())
  const pagesOf = (path: string) => {
    const file = files.find((each) => each.path === path)
    if (file === undefined) throw new Error(`no ${path}`)
    return readPdfPages(file.bytes).map(lettersOf)
  }

  test('every glyph of the report is a character that a reader can search for', () => {
    const pages = pagesOf('report.pdf')
    expect(pages.length).toBeGreaterThan(3)
    expect(pages.join('')).not.toContain('\uFFFD')
    expect(pages.join('')).toContain(lettersOf('Manufacturability review'))
  })

  test('report and drawing embed one family, and no file of another where nothing needs it', () => {
    for (const path of ['report.pdf', 'drawing/sheets.pdf']) {
      const text = new TextDecoder('latin1').decode(files.find((each) => each.path === path)?.bytes)
      const fonts = new Set([...text.matchAll(/\/BaseFont \/[A-Z]{6}\+([\w-]+)/g)].map(([, name]) => name))
      expect([...fonts].every((name) => name?.startsWith('SourceSans3-'))).toBe(true)
      expect(fonts).toContain('SourceSans3-Regular')
    }
  })

  test('the first page of the report carries the cautions, and its sources do again', () => {
    const [first = '', ...others] = pagesOf('report.pdf')
    for (const caution of CAUTIONS) {
      expect(first).toContain(lettersOf(caution))
      expect(others.join('')).toContain(lettersOf(caution))
    }
    expect(first + others.join('')).toContain(lettersOf(`Life at survival, ${LIFE_CAUTION_SHORT}`))
  })

  test('every drawing sheet carries the cautions', () => {
    const pages = pagesOf('drawing/sheets.pdf')
    expect(pages.length).toBeGreaterThan(1)
    for (const page of pages) for (const caution of CAUTIONS) expect(page).toContain(lettersOf(caution))
  })
})
