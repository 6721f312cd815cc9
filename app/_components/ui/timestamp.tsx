/** Moments are shown in Coordinated Universal Time, as the trail keeps them: one record, one time, wherever it is read. */
export function Timestamp({ at, dateOnly = false }: { at: Date | string; dateOnly?: boolean }) {
  const iso = typeof at === 'string' ? at : at.toISOString()
  const day = iso.slice(0, 10)
  return (
    <time dateTime={iso} className="nowrap" title={`${day} ${iso.slice(11, 19)} UTC`}>
      {dateOnly ? day : `${day} ${iso.slice(11, 16)}`}
    </time>
  )
}
