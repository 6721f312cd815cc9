'use client'

import { useState } from 'react'
import { countOf, formatBytes } from '@/app/_components/review/words'
import { paths } from '@/app/_components/shell/paths'
import { ActionButton } from '@/app/_components/ui/action-button'
import { LinkButton } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notices'
import { checkTrail, createBackup } from '../actions'

interface TrailAnswer {
  recordCount: number
  firstBad: { sequence: number; reason: string } | null
  checkpointCount: number
  vouchedUpTo: number
}

/** Acts of whoever looks after the installation: is the trail whole, and is there a copy of everything. */
export function MaintenancePanel() {
  const [trail, setTrail] = useState<TrailAnswer | null>(null)
  const [backup, setBackup] = useState<{ folder: string; sizeBytes: number } | null>(null)
  return (
    <div className="stack">
      <div className="row">
        <ActionButton action={checkTrail} input={{}} pendingLabel="Checking…" onDone={setTrail}>
          Check the whole trail
        </ActionButton>
        <LinkButton href={paths.wholeTrail()} weight="quiet" download>
          Download the trail (JSON)
        </LinkButton>
      </div>
      {trail !== null && (
        <Notice tone={trail.firstBad === null ? 'done' : 'refused'} role="status">
          {trail.firstBad === null ? (
            <p>
              All {countOf(trail.recordCount, 'record')} fit together.{' '}
              {countOf(trail.checkpointCount, 'signed checkpoint')} up to record {trail.vouchedUpTo} would show if the
              end were cut off.
            </p>
          ) : (
            <p>
              Record {trail.firstBad.sequence} is the first that does not fit: {trail.firstBad.reason}. Keep a copy of
              the data folder before anything else is done.
            </p>
          )}
        </Notice>
      )}
      <div className="row">
        <ActionButton action={createBackup} input={{}} pendingLabel="Copying…" onDone={setBackup}>
          Make a backup now
        </ActionButton>
      </div>
      {backup !== null && (
        <Notice tone="done" role="status">
          <p>
            {formatBytes(backup.sizeBytes)} copied into <code>{backup.folder}</code>. Take the folder to another
            machine: a backup beside the original shares its fate. The secrets of this installation are not in it: keep
            the folder <code>secrets</code> of the data folder in another place, for a restored trail is vouched for by
            its key.
          </p>
        </Notice>
      )}
    </div>
  )
}
