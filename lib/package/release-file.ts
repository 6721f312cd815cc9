import type { z } from 'zod'
import type { PackageContent } from './content'
import type { releaseFileSchema } from './schemas/release'

/** What a document system files a package by. */
export function makeReleaseFile({
  snapshot,
  edition,
  release,
  workspaceName,
}: PackageContent): z.infer<typeof releaseFileSchema> {
  const { terms, replaces } = release
  const token = release.stamped?.token
  const signatures = snapshot.signatures.filter(({ voided }) => voided === null)
  return {
    format: 'bendworthy-release',
    formatVersion: 1,
    number: snapshot.design.brief.partNumber,
    revision: snapshot.label,
    title: snapshot.design.name,
    project: snapshot.projectName,
    organisation: workspaceName,
    /** On the day of the release; what became of it since stands in a status list. */
    statusAtRelease: terms.isConditional ? 'released conditionally' : 'released',
    ...terms,
    releasedAt: release.at,
    releasedBy: release.byName,
    approvers: signatures.map(({ name, capacity, signedAt }) => ({ name, capacity, signedAt })),
    replaces,
    timeStamp: {
      isThere: token?.response != null,
      because: token === undefined ? 'none was asked for' : token.because,
    },
    edition: edition.kind === 'team' ? 'team' : edition.companyName,
  }
}
