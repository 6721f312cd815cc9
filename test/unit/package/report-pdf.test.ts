import { describe, expect, test } from 'vitest'
import { CAUTIONS, LIFE_CAUTION_SHORT } from '@/lib/engine'
import { markPdf } from '@/lib/package/mark-pdf'
import { makeDocuments } from '@/lib/package/report'
import { makeContent, makeSnapshot, readSeedDesign } from '../../integration/package/content-factory'
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

  test('the decision stands on the first page alone, whatever the review holds', async () => {
    const content = makeContent()
    const long =
      'A reason that goes on for longer than a line of the report is wide, and says what was seen, by whom and when. '
    const waiver = {
      id: 'waiver-1',
      state: 'approved' as const,
      proposedBy: 'member',
      proposedByName: 'Mara Tolland',
      proposedAt: '2027-03-01T10:00:00.000Z',
      decidedBy: 'second-lead',
      decidedByName: 'Ines Calder',
      decidedAt: '2027-03-01T11:00:00.000Z',
      decisionNote: '',
      consequence: 'Some parts may crack.',
      basisHash: '',
    }
    const action = (number: number) => ({
      id: `action-${number}`,
      number,
      origin: { kind: 'revision' as const, id: '', label: 'the revision' },
      audienceCompanyId: null,
      text: long.repeat(3),
      ownerId: 'lead',
      ownerName: 'Ines Calder',
      ownerCompanyName: 'Quillmoor Instruments',
      due: 'before-series' as const,
      dueOn: '2027-05-01',
      isAfterRelease: false,
      state: 'open' as const,
      takenOnByName: 'Ines Calder',
      takenOnAt: '2027-03-01T09:00:00.000Z',
      evidence: '',
      files: [],
      reportedByName: null,
      reportedAt: null,
      closedByName: null,
      closedAt: null,
      closeNote: '',
    })
    const crowded = {
      ...content,
      release: {
        ...content.release,
        terms: { ...content.release.terms, conditions: long.repeat(6), reason: long.repeat(4) },
      },
      changes: {
        sinceIssue: Array.from({ length: 30 }, () => long),
        sinceLooked: Array.from({ length: 5 }, () => ({
          company: 'Brackenfold Circuits',
          changes: [long, long, long],
        })),
      },
      snapshot: {
        ...content.snapshot,
        waivers: content.snapshot.items
          .slice(0, 12)
          .map(({ id }) => ({ ...waiver, itemId: id, reason: long.repeat(3) })),
        answers: content.snapshot.items.map(({ id }) => ({
          itemId: id,
          state: 'concern' as const,
          reason: long.repeat(2),
          answeredBy: 'member',
          answeredByName: 'Mara Tolland',
          answeredAt: '2027-03-01T10:00:00.000Z',
          evidence: [],
        })),
        actions: Array.from({ length: 11 }, (_, at) => action(at + 1)),
        authors: Array.from({ length: 9 }, (_, at) => ({
          userId: `author-${at}`,
          name: `Author Number ${at}`,
          parts: ['design' as const],
          changes: null,
        })),
      },
    }
    const [report] = await makeDocuments(crowded)
    if (report === undefined) throw new Error('no report')
    const [first = '', second = ''] = readPdfPages(report.bytes).map(lettersOf)
    expect(first).toContain(lettersOf('Open actions, the first 3 of 11; all in part 9'))
    expect(first).toContain(lettersOf('before series production, planned for 2027-05-01'))
    expect(second).toContain(lettersOf('1  Summary'))
    expect(second).not.toContain(lettersOf('Open actions'))
    expect(first).not.toContain(lettersOf('not stated'))
  })

  test('every drawing sheet carries the cautions', () => {
    const pages = pagesOf('drawing/sheets.pdf')
    expect(pages.length).toBeGreaterThan(1)
    for (const page of pages) for (const caution of CAUTIONS) expect(page).toContain(lettersOf(caution))
  })

  // ISO 19005-2 (2011), from memory: 6.2.3 output intent, 6.2.11.4 fonts embedded, 6.6.2 and 6.6.4 metadata, 6.1.3 identifier and no encryption,
  // 6.5.1 no scripts or files carried along, 6.3.2 links that print. Not every rule of the standard: no validator is at hand.
  test.each(['report.pdf', 'drawing/sheets.pdf'])('%s is written as PDF/A-2b', (path) => {
    const text = new TextDecoder('latin1').decode(files.find((each) => each.path === path)?.bytes)
    expect(text).toContain('<pdfaid:part>2</pdfaid:part>')
    expect(text).toContain('<pdfaid:conformance>B</pdfaid:conformance>')
    expect(text).toMatch(/\/Type \/OutputIntent\s+\/S \/GTS_PDFA1[\s\S]*?\/DestOutputProfile \d+ 0 R/)
    expect(text).toMatch(/\/Metadata \d+ 0 R/)
    expect(text).toMatch(/\/ID \[<[0-9a-f]+> <[0-9a-f]+>\]/i)
    expect(text).toMatch(/\/Lang \(en-GB\)/)
    const descriptors = [...text.matchAll(/\/Type \/FontDescriptor[\s\S]*?endobj/g)].map(([body]) => body)
    expect(descriptors.length).toBeGreaterThan(0)
    for (const body of descriptors) expect(body).toMatch(/\/FontFile[23] \d+ 0 R/)
    expect(text).not.toMatch(/\/(Encrypt|JavaScript|JS|EmbeddedFiles|Launch|Movie|Sound)\b/)
    // The standard fonts that a reader brings are never named.
    expect(text).not.toMatch(/\/BaseFont \/(Helvetica|Times|Courier|Symbol|ZapfDingbats)/)
    // Tagged (`tagged-pdf.test.ts`), and no more than level B claimed.
    expect(/\/Marked true/.test(text)).toBe(true)
    expect(/pdfaid:conformance>B</.test(text)).toBe(true)
    const created = /<xmp:CreateDate>([^<]+)</.exec(text)?.[1] ?? ''
    expect(new Date(created).toISOString()).toBe(new Date(makeContent().release.at).toISOString())
  })

  test('a copy that is marked as obsolete no longer says that it is PDF/A: its mark is set in a face that is not embedded', () => {
    const report = files.find(({ path }) => path === 'report.pdf')
    if (report === undefined) throw new Error('no report')
    const catalogues = (bytes: Uint8Array) =>
      new TextDecoder('latin1').decode(bytes).match(/<<\n\/Type \/Catalog\n(?:(?!endobj)[\s\S])*/g) ?? []
    const [whole] = catalogues(report.bytes)
    expect(whole).toContain('/Metadata')
    const marked = catalogues(markPdf(report.bytes, ['OBSOLETE']))
    expect(marked).toHaveLength(2)
    expect(marked.at(-1)).toMatch(/\/Pages \d+ 0 R[\s\S]*\/Lang \(en-GB\)|\/Lang \(en-GB\)[\s\S]*\/Pages \d+ 0 R/)
    expect(marked.at(-1)).not.toMatch(/Metadata|OutputIntents/)
  })
})

describe('the report of a bend with two states', async () => {
  const design = readSeedDesign('skua-rev-b')
  const hinge = design.bends.find(({ id }) => id === 'hinge')
  if (hinge === undefined) throw new Error('no hinge')
  hinge.flexesFromRadiusMm = 3 * hinge.insideRadiusMm
  const files = await makeDocuments(makeContent(makeSnapshot(design)))
  const text = readPdfPages(files.find(({ path }) => path === 'report.pdf')?.bytes ?? new Uint8Array())
    .map(lettersOf)
    .join('')

  test('draws its life over the radius, and says what that counts', () => {
    expect(text).toContain(lettersOf(`Life over inside radius, bend ${hinge.name}`))
    expect(text).toContain(
      lettersOf('Life over inside radius: worked out as the verdict is, with the flatter end of the motion.'),
    )
  })
})
