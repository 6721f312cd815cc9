import type { RevisionSummary } from '@/lib/data'
import { STAGE_WORDS } from './words'

type Stage = RevisionSummary['stage']

const PATH: readonly Stage[] = ['preparing', 'early-review', 'fabricator-review', 'awaiting-signature', 'released']

/** Where a revision stands on its path. A revision that left the path shows how. */
export function StagePath({ stage }: { stage: Stage }) {
  const position = PATH.indexOf(stage === 'superseded' ? 'released' : stage)
  return (
    <ol className="stage-path" aria-label="Stages of the revision">
      {PATH.map((step, index) => {
        const isHere = step === stage
        return (
          <li
            key={step}
            data-state={isHere ? 'here' : index < position ? 'past' : 'ahead'}
            aria-current={isHere ? 'step' : undefined}
          >
            {STAGE_WORDS[step]}
          </li>
        )
      })}
      {(stage === 'superseded' || stage === 'withdrawn') && (
        <li data-state="here" aria-current="step">
          {STAGE_WORDS[stage]}
        </li>
      )}
    </ol>
  )
}
