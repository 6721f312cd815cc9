'use client'

import { useState } from 'react'
import { ActionButton } from '@/app/_components/ui/action-button'
import { LinkButton } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notices'
import { paths } from '@/lib/addresses'
import { asFileSize, countOf } from '@/lib/engine/units'
import { checkTrail, createBackup } from '../actions'

interface TrailAnswer {
  recordCount: number
  firstBad: { sequence: number; reason: string } | null
  checkpointCount: number
  vouchedUpTo: number
  state: { fitCount: number; olderCount: number; misfits: readonly { what: string; reason: string }[] }
}

const MOST_MISFITS = 20

function TrailResult({ trail }: { trail: TrailAnswer }) {
  const { firstBad, state } = trail
  const isFit = firstBad === null && state.misfits.length === 0
  return (
    <Notice tone={isFit ? 'done' : 'refused'} role="status">
      {firstBad === null ? (
        <p>
          All {countOf(trail.recordCount, 'record')} fit together. {countOf(trail.checkpointCount, 'signed checkpoint')}{' '}
          up to record {trail.vouchedUpTo} would show if the end were cut off.
        </p>
      ) : (
        <p>
          Record {firstBad.sequence} is the first that does not fit: {firstBad.reason}.
        </p>
      )}
      {state.misfits.length === 0 ? (
        <p>In the database, {countOf(state.fitCount, 'row')} match the record that last changed them.</p>
      ) : (
        <>
          <p>Not as the trail says ({state.misfits.length}):</p>
          <ul>
            {state.misfits.slice(0, MOST_MISFITS).map(({ what, reason }) => (
              <li key={`${what} ${reason}`}>
                {what} {reason}
              </li>
            ))}
          </ul>
          {state.misfits.length > MOST_MISFITS && (
            <p>
              And {state.misfits.length - MOST_MISFITS} more: <code>npm run trail:check</code> lists them.
            </p>
          )}
        </>
      )}
      {state.olderCount > 0 && (
        <p>
          {countOf(state.olderCount, 'row')} recorded before hashes were kept: nothing says whether they are as they
          were.
        </p>
      )}
      {!isFit && <p>Keep a copy of the data folder before anything else is done.</p>}
    </Notice>
  )
}

/** Acts of the administrator of the installation: is the trail whole, and is there a copy of everything. */
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
      {trail !== null && <TrailResult trail={trail} />}
      <div className="row">
        <ActionButton action={createBackup} input={{}} pendingLabel="Copying…" onDone={setBackup}>
          Make a backup now
        </ActionButton>
      </div>
      {backup !== null && (
        <Notice tone="done" role="status">
          <p>
            {asFileSize(backup.sizeBytes)} copied into <code>{backup.folder}</code>. Take the folder to another machine:
            a backup on the same disk is lost with it. The backup does not contain the secrets of this installation:
            keep the folder <code>secrets</code> of the data folder elsewhere, because a restored trail is checked with
            its key.
          </p>
        </Notice>
      )}
    </div>
  )
}
