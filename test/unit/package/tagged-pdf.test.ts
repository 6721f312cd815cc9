import { describe, expect, test } from 'vitest'
import { makeDocuments } from '@/lib/package/report'
import { makeContent } from '../../integration/package/content-factory'
import { readStructure, type StructureElement } from './pdf-structure'

/** Another copy of the module, as another bundle of one server or a reload makes: the layout library is the same one. */
const OTHER_COPY = '/lib/package/report/tagged-renderer.ts?other-copy'

const listElements = (element: StructureElement): StructureElement[] => [
  element,
  ...element.children.flatMap(listElements),
]

/**
 * Source  ISO 32000-1:2008, 14.7 (logical structure) and 14.8 (tagged PDF); ISO 14289-1:2014, 7.1 and 7.2 for what is real content, 7.3 for
 * pictures, 7.4.2 for levels of headings, 7.5 for tables. From memory.
 */
describe('tagged PDFs', async () => {
  const first: typeof import('@/lib/package/report/tagged-renderer') = await import(
    '@/lib/package/report/tagged-renderer'
  )
  const other: typeof first = await import(/* @vite-ignore */ OTHER_COPY)
  expect(other.installTags).not.toBe(first.installTags)
  first.installTags()
  other.installTags()
  const files = await makeDocuments(makeContent())
  const read = (path: string) => readStructure(files.find((file) => file.path === path)?.bytes ?? new Uint8Array())

  describe.each(['report.pdf', 'drawing/sheets.pdf'])('%s', (path) => {
    const { root, pages } = read(path)
    const elements = listElements(root)

    test('whatever is painted is marked, as content or as an artifact', () => {
      expect(pages.size).toBeGreaterThan(1)
      expect([...pages.values()].flatMap(({ unmarked }) => unmarked)).toEqual([])
    })

    test('each piece of content belongs to one element, and each element has content of the pages', () => {
      const marked = [...pages].flatMap(([id, { numbers }]) => numbers.map((number) => `${id}/${number}`))
      const owned = elements.flatMap(({ pieces }) => pieces)
      expect(marked.length).toBeGreaterThan(pages.size - 1)
      expect(new Set(owned).size).toBe(owned.length)
      expect([...owned].sort()).toEqual([...marked].sort())
    })

    test('every picture says what it shows', () => {
      const pictures = elements.filter(({ type }) => type === 'Figure')
      expect(pictures.length).toBeGreaterThan(0)
      for (const { alt } of pictures) expect(alt.length).toBeGreaterThan(20)
    })
  })

  const { root } = read('report.pdf')
  const elements = listElements(root)

  test('headings go down by one level at a time, from the title', () => {
    const levels = elements.flatMap(({ type }) => (/^H\d$/.test(type) ? [Number(type.slice(1))] : []))
    expect(levels[0]).toBe(1)
    expect(levels.filter((level) => level === 2).length).toBeGreaterThan(10)
    levels.forEach((level, at) => {
      if (at > 0) expect(level).toBeLessThanOrEqual((levels[at - 1] ?? 0) + 1)
    })
  })

  test('tables are of rows of one width, each with heads of columns or rows', () => {
    const tables = elements.filter(({ type }) => type === 'Table')
    expect(tables.length).toBeGreaterThan(20)
    for (const table of tables) {
      const widths = table.children.map(({ type, children }) => {
        expect(type).toBe('TR')
        return children.reduce((sum, { colSpan }) => sum + colSpan, 0)
      })
      expect(new Set(widths).size).toBe(1)
      const heads = table.children.flatMap(({ children }) => children).filter(({ type }) => type === 'TH')
      expect(heads.length).toBeGreaterThan(0)
      for (const { scope } of heads) expect(scope).toMatch(/^(Row|Column)$/)
    }
  })
})
