import 'server-only'
import type { AttachmentView, CompanyView, PersonView } from '../views'
import { getPersonName, type RevisionRecord } from './revision-record'

export function toPersonView(record: Pick<RevisionRecord, 'people'>, userId: string): PersonView {
  return { id: userId, name: getPersonName(record, userId) }
}

export function toCompanyView(company: { id: string; kind: string; name: string }): CompanyView {
  return { id: company.id, kind: company.kind === 'fabricator' ? 'fabricator' : 'team', name: company.name }
}

interface FileRow {
  readonly id: string
  readonly originalName: string
  readonly sizeBytes: number
  readonly mediaType: string
  readonly sha256: string
  readonly uploadedById: string
  readonly createdAt: Date
}

export function toAttachmentView(record: Pick<RevisionRecord, 'people'>, file: FileRow): AttachmentView {
  return {
    id: file.id,
    fileName: file.originalName,
    sizeBytes: file.sizeBytes,
    mediaType: file.mediaType,
    sha256: file.sha256,
    uploadedBy: toPersonView(record, file.uploadedById),
    at: file.createdAt.toISOString(),
  }
}
