'use client'

import { useState } from 'react'
import { UploadForm } from '@/app/_components/review/upload-form'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Notice } from '@/app/_components/ui/notices'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { asFileSize, countOf } from '@/lib/engine/units'
import type { PackageFindings } from '../check-package'

export function VerifyForm({ maxBytes }: { maxBytes: number }) {
  const [findings, setFindings] = useState<PackageFindings | null>(null)
  return (
    <div className="stack">
      <UploadForm<PackageFindings>
        purpose="package-check"
        input={{}}
        label="Package"
        hint="The ZIP file of a released revision, or its files repacked. It is checked and not stored."
        buttonLabel="Verify"
        accept=".zip,.tar,.gz,.tgz,application/zip,application/x-tar,application/gzip"
        maxBytes={maxBytes}
        onSend={() => setFindings(null)}
        onDone={setFindings}
      />
      {findings !== null && <Findings findings={findings} />}
    </div>
  )
}

const COLUMNS = {
  file: { head: 'File', isRowHead: true },
  size: { head: 'Size', isNumeric: true },
  hash: { head: 'SHA-256' },
} satisfies Columns

function Findings({ findings }: { findings: PackageFindings }) {
  return (
    <>
      <Notice tone="done" role="status">
        <p>
          {findings.isRepacked
            ? 'Contents intact, repacked: every file is as released and signed by this installation; another program wrote the archive.'
            : 'The package is whole, unchanged, and signed by this installation.'}
        </p>
      </Notice>
      <Notice tone={findings.status.word === 'in force' ? 'done' : 'refused'} role="status">
        <p>Today {findings.status.sentence}.</p>
      </Notice>
      <dl className="terms">
        <dt>revision</dt>
        <dd>
          {findings.project}, {findings.revision}
        </dd>
        <dt>released</dt>
        <dd>
          {findings.releasedBy}, <Timestamp at={findings.releasedAt} /> UTC
        </dd>
        <dt>edition for</dt>
        <dd>{findings.edition}</dd>
        <dt>engine</dt>
        <dd>{findings.engineVersion ?? 'not evaluated'}</dd>
        <dt>holds</dt>
        <dd>
          {countOf(findings.signatureCount, 'signature')}, {countOf(findings.trailRecordCount, 'trail record')}
        </dd>
        <dt>key</dt>
        <dd>
          <span className="hash">{findings.keyFingerprint}</span>
          <br />
          {findings.key}
        </dd>
        <dt>time stamp</dt>
        <dd>{findings.timeStamp}</dd>
      </dl>
      <DataTable label="Files of the package" columns={COLUMNS}>
        {findings.files.map((file) => (
          <DataRow
            key={file.path}
            columns={COLUMNS}
            cells={{
              file: file.path,
              size: asFileSize(file.sizeBytes),
              hash: (
                <span className="hash muted" title={file.sha256}>
                  {file.sha256.slice(0, 16)}
                </span>
              ),
            }}
          />
        ))}
      </DataTable>
    </>
  )
}
