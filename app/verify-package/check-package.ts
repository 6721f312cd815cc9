import 'server-only'

import { z } from 'zod'
import { now } from '@/lib/config'
import type { ActResult } from '@/lib/data'
import { requestKeySchema } from '@/lib/inputs'
import {
  describeEntry,
  judgeStatus,
  type KeyRegister,
  type PackageStatus,
  type StatusEntry,
  type VerifiedPackage,
  verifyPackage,
} from '@/lib/package'

export const packageInput = z.strictObject({
  fileName: z.string().max(200, 'is longer than 200 characters'),
  bytes: z.instanceof(Uint8Array),
  requestKey: requestKeySchema,
})

/** A package is read as a whole, in memory. */
export const MAX_UPLOADED_PACKAGE_BYTES = 128 * 1024 * 1024

/** What the page says of a package that is whole. */
export interface PackageFindings {
  /** Whole, in an archive that somebody else packed. */
  readonly isRepacked: boolean
  readonly project: string
  readonly revision: string
  readonly releasedAt: string
  readonly releasedBy: string
  readonly edition: string
  readonly engineVersion: string | null
  readonly keyFingerprint: string
  /** What the key register says of it. */
  readonly key: string
  readonly timeStamp: string
  readonly trailRecordCount: number
  readonly signatureCount: number
  readonly status: PackageStatus
  readonly files: readonly { readonly path: string; readonly sizeBytes: number; readonly sha256: string }[]
}

/** Checks an uploaded package against this installation's own keys. Nothing of it is kept. */
export async function checkPackage(
  input: z.infer<typeof packageInput>,
  trust: { readonly register: Pick<KeyRegister, 'keys'>; readonly timeStampCaPem?: string | undefined },
  findStatus: (revisionId: string) => Promise<StatusEntry | null>,
): Promise<ActResult<PackageFindings>> {
  const result = verifyPackage(input.bytes, trust)
  if (result.ok) {
    const { manifest } = result.value
    const entry = await findStatus(manifest.revision.id)
    const status =
      entry === null ? judgeStatus(manifest.revision.id, null, now(), manifest.releasedAt) : describeEntry(entry, now())
    return { ok: true as const, value: { ...describePackage(result.value), status } }
  }
  return {
    ok: false as const,
    refusal: {
      kind: 'invalid' as const,
      message: `“${input.fileName}” is not an unchanged package of this installation. The differences are listed below.`,
      issues: result.issues,
    },
  }
}

function describePackage({
  form,
  manifest,
  keyFingerprint,
  keyFinding,
  timeStamp,
  trailRecordCount,
  signatureCount,
}: VerifiedPackage): Omit<PackageFindings, 'status'> {
  return {
    isRepacked: form === 'repacked',
    project: manifest.project.name,
    revision: manifest.revision.label,
    releasedAt: manifest.releasedAt,
    releasedBy: manifest.releasedBy,
    edition: manifest.edition.companyName ?? 'the team',
    engineVersion: manifest.engineVersion,
    keyFingerprint,
    key: keyFinding?.sentence ?? '',
    timeStamp:
      timeStamp === null
        ? 'none'
        : `${timeStamp.at} by ${timeStamp.authority}${timeStamp.isTrusted ? '' : ' (certificate not compared with a trusted one)'}`,
    trailRecordCount,
    signatureCount,
    files: manifest.files,
  }
}
