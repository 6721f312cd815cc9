import type { Design } from '@/lib/engine'

/**
 * A copy of a design with what stands wherever a pattern of its schema leads changed; a constant of a material by its value, and of a list of choices the list.
 *
 * @param change  of a stated value; undefined leaves it
 * @returns null where nothing is changed
 */
export function changeEverywhere(design: Design, pattern: string, change: (value: unknown) => unknown): unknown {
  const copy: unknown = structuredClone(design)
  let changed = 0
  const put = (owner: Record<string, unknown>, key: string): void => {
    const value = owner[key]
    if (value === undefined || value === null) return
    const after = change(value)
    if (after === undefined || after === value || Object.is(after, -0)) return
    owner[key] = after
    changed += 1
  }
  const visit = (at: unknown, [step, ...rest]: readonly string[]): void => {
    if (step === undefined || at === null || typeof at !== 'object') return
    const record = at as Record<string, unknown>
    if (step === '*') {
      for (const each of at as readonly unknown[]) visit(each, rest)
    } else if (rest.length > 1 || (rest.length === 1 && rest[0] !== '*')) visit(record[step], rest)
    else {
      const held = record[step]
      if (held !== null && typeof held === 'object' && 'value' in held) put(held as Record<string, unknown>, 'value')
      else put(record, step)
    }
  }
  visit(copy, pattern.split('.'))
  return changed === 0 ? null : copy
}

/** For `changeEverywhere`: the choice, or a list of it alone. */
export const toChoice =
  (choice: string | boolean) =>
  (value: unknown): unknown => {
    if (!Array.isArray(value)) return choice
    return value.length === 0 || (value.length === 1 && value[0] === choice) ? undefined : [choice]
  }

/** For `changeEverywhere`: numbers alone, counts in whole numbers. */
export const toNumber =
  (pattern: string, change: (value: number) => number) =>
  (value: unknown): unknown => {
    if (typeof value !== 'number') return undefined
    const exact = change(value)
    return /Count$|Cycles$|matings|quantity/.test(pattern) ? Math.round(exact) : exact
  }
