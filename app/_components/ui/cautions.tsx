import { CAUTIONS, LIFE_CAUTION_SHORT } from '@/lib/engine/cautions'

/** What results cannot promise: beside every act by which they leave (release, declare, download). */
export function Cautions() {
  return (
    <ul className="cautions small" aria-label="Cautions">
      {CAUTIONS.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  )
}

/** After a life figure, or after the name of a column of them. */
export function LifeCaution() {
  return <span className="muted small"> ({LIFE_CAUTION_SHORT})</span>
}
