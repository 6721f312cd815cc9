import type { FitParameterView } from '@/lib/data'

/** Parameters for which the design has no value, and why: what it does not state a fabricator would have to ask. */
export function FitUnknown({ parameters }: { parameters: readonly FitParameterView[] }) {
  const without = parameters.flatMap(({ key, name, without: found }) =>
    found === null ? [] : [{ key, name, ...found }],
  )
  const unknown = without.filter(({ kind }) => kind === 'unknown')
  const absent = without.filter(({ kind }) => kind === 'absent')
  return (
    <>
      {unknown.length > 0 && (
        <details>
          <summary>The design does not say: {unknown.length} questions</summary>
          <ReasonList entries={unknown} />
        </details>
      )}
      {absent.length > 0 && (
        <details>
          <summary>The design has no such thing: {absent.length} questions</summary>
          <ReasonList entries={absent} />
        </details>
      )}
    </>
  )
}

function ReasonList({ entries }: { entries: readonly { key: string; name: string; reason: string }[] }) {
  return (
    <ul className="small">
      {entries.map(({ key, name, reason }) => (
        <li key={key}>
          {name} <span className="muted">{reason}</span>
        </li>
      ))}
    </ul>
  )
}
