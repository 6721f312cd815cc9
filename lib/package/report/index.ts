import type { PackageContent, PackageFile } from '../content'
import { writePdf } from './pdf-writer'
import { makeReport } from './report'

/** The readable documents of a package: report, and drawing sheet as SVG and PDF. */
export async function makeDocuments(content: PackageContent): Promise<PackageFile[]> {
  const { snapshot, release } = content
  const identity = {
    subject: `${snapshot.projectName}, revision ${snapshot.label}`,
    author: release.byName,
    at: release.at,
  }
  const report = await writePdf(makeReport(content), {
    ...identity,
    title: `Manufacturability review, ${identity.subject}`,
  })
  return [{ path: 'report.pdf', bytes: report }]
}
