import { formatIssuePath } from '@/lib/engine'

/** Where a field's value lies in the design, and a key that stays when rows move. */
export interface Place {
  readonly path: string
  readonly key: string
  /** What the row is called, for labels that a screen reader hears without the column beside it. */
  readonly rowName: string
}

/** Places of the fields of one entry. */
export function makePlaces(
  path: readonly (string | number)[],
  key: string,
  rowName: string,
): (...field: (string | number)[]) => Place {
  return (...field) => ({
    path: formatIssuePath([...path, ...field]),
    key: [key, ...field].join('.'),
    rowName,
  })
}
