import { describe, expect, test } from 'vitest'
import { markPdf } from '@/lib/package/mark-pdf'
import { makeDocuments } from '@/lib/package/report'
import { PDF_FONT, writePdf } from '@/lib/package/report/pdf-writer'
import { makeContent } from '../../integration/package/content-factory'
import { readPdf } from './pdf-a/document'
import { findFileFaults } from './pdf-a/file-rules'
import { findFontFaults } from './pdf-a/font-rules'
import { findPageFaults } from './pdf-a/page-rules'

const findFaults = async (bytes: Uint8Array): Promise<string[]> => {
  const pdf = await readPdf(bytes)
  return [...findFileFaults(pdf), ...findPageFaults(pdf), ...findFontFaults(pdf)]
}

/** The same file with one thing changed and the length kept, so that everything else stays where it was. */
function change(bytes: Uint8Array, from: string, to: string): Uint8Array {
  if (to.length > from.length) throw new Error('longer than what it replaces')
  const text = Buffer.from(bytes).toString('latin1')
  if (!text.includes(from)) throw new Error(`there is no ${from}`)
  return Buffer.from(text.replace(from, to.padEnd(from.length, ' ')), 'latin1')
}

/**
 * What ISO 19005-2:2011 (PDF/A-2, level B) asks of files of the kind that we write, read by a general library. The clauses are from
 * memory, and no validator for part 2 could be had: rules about what our writer never makes (signatures, JPEG 2000, layers, separations) are
 * tested by its absence. Report and drawing of the demo were held once against a validator for part 1, level B (PDFBox Preflight 2.0.27, Apache-2.0,
 * 2026-11): it named the part number in the metadata, transparency, and CIDSet in subsets of fonts, in which the two parts differ (6.2.10 and
 * 6.2.11.4.2 of part 2 allow them), and nothing else.
 */
describe('PDFs for archives', async () => {
  const files = new Map(
    (await makeDocuments(makeContent())).flatMap(({ path, bytes }) =>
      path.endsWith('.pdf') ? [[path, bytes] as const] : [],
    ),
  )
  const bytesOf = (name: string): Uint8Array => {
    const found = files.get(name)
    if (found === undefined) throw new Error(`no ${name}`)
    return found
  }

  test('keep every rule that can be read from the files', async () => {
    expect(files.size).toBeGreaterThan(1)
    for (const [name, bytes] of files) expect([name, await findFaults(bytes)]).toEqual([name, []])
  })

  /** What a report is made of, on one page: the rules take seconds for a whole one. */
  const small = await writePdf(
    {
      content: [
        { text: 'Thickness 0.2 mm' },
        {
          svg: '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><rect width="9" height="9" fill="#fff"/></svg>',
        },
      ],
      defaultStyle: { font: PDF_FONT },
    },
    { title: 'One page', subject: 'Rules', author: 'Nobody', at: '2026-11-30T08:00:00.000Z' },
  )

  test.each([
    ['6.1.3', '/ID [<', '/IX [<'],
    ['6.2.3', '/GTS_PDFA1', '/GTS_PDFX'],
    ['6.2.4.3', '1 1 1 scn', '1 1 1 1 k'],
    ['6.2.11.4.1', '/FontFile2', '/FontFileX'],
    ['6.6.4', '<pdfaid:part>2<', '<pdfaid:part>3<'],
    ['6.6.4', 'conformance>B<', 'conformance>A<'],
    ['6.6.3', '<xmp:CreateDate>20', '<xmp:CreateDate>19'],
    ['6.5.1', '/S /GTS_PDFA1', '/S /Launch'],
    ['6.1.2', '%PDF-1.', '%PDF-2.'],
    ['6.1.4', '0 obj', '1 obj'],
  ])('a file that breaks %s is seen: %s', async (clause, from, to) => {
    expect(await findFaults(small)).toEqual([])
    const faults = await findFaults(change(small, from, to))
    expect(faults.filter((fault) => fault.startsWith(clause))).not.toEqual([])
  })

  test('a copy that is marked as obsolete breaks rules, and no longer claims to keep them', async () => {
    const faults = await findFaults(markPdf(bytesOf('report.pdf'), ['OBSOLETE']))
    expect(faults.some((fault) => fault.startsWith('6.2.11.4.1'))).toBe(true)
    expect(faults).toContain('6.6.2.1: the file has no metadata')
  })
})
