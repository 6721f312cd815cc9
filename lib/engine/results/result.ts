/** One thing wrong with an input, and where. */
export interface Issue {
  /** Stable word for programs: `too-large`, `unknown-material`, `layer-in-no-zone` ... */
  readonly code: string
  /** Where, as keys and indices from the root of the document: `['bends', 0, 'insideRadiusMm']`. */
  readonly path: readonly (string | number)[]
  /** A sentence for people that names the value found and what is expected. */
  readonly message: string
}

/** Outcome of a reader: a value, or every issue found. */
export type Result<T, E = Issue[]> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: E }

/** `bends[0].insideRadiusMm`, as people write a path. */
export function formatIssuePath(path: readonly (string | number)[]): string {
  let text = ''
  for (const key of path) {
    if (typeof key === 'number') text += `[${key}]`
    else text += text === '' ? key : `.${key}`
  }
  return text === '' ? 'document' : text
}
