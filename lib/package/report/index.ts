import { toSvg } from '@/lib/drawing'
import type { PackageContent, PackageFile } from '../content'
import { drawSheet } from './drawing-sheet'
import { writePdf } from './pdf-writer'
import { makeReport } from './report'

/** The readable documents of a package: report, and drawing sheet as SVG and PDF. */
export async function makeDocuments(content: PackageContent): Promise<PackageFile[]> {
  const { snapshot, release } = content
  const subject = `${snapshot.projectName}, revision ${snapshot.label}`
  const identity = { subject, author: release.byName, at: release.at }
  const report = await writePdf(makeReport(content), { ...identity, title: `Manufacturability review, ${subject}` })
  const sheet = drawSheet(content)
  const svg = toSvg(sheet)
  const drawing = await writePdf(
    {
      pageSize: { width: sheet.widthPx, height: sheet.heightPx },
      pageMargins: 0,
      defaultStyle: { font: 'DejaVu' },
      content: [{ svg, width: sheet.widthPx }],
    },
    { ...identity, title: sheet.title },
  )
  return [
    { path: 'report.pdf', bytes: report },
    { path: 'drawing/sheet.pdf', bytes: drawing },
    { path: 'drawing/sheet.svg', bytes: new TextEncoder().encode(`<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`) },
  ]
}
