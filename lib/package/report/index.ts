import type { PackageContent, PackageFile } from '../content'

/** The readable documents of a package: report, and drawing sheet as SVG and PDF. */
export async function makeDocuments(_content: PackageContent): Promise<PackageFile[]> {
  return []
}
