const MS_PER_DAY = 86_400_000

/** Whole days from one calendar day to a later one, ISO 8601; negative when it is earlier. */
export function countDays(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / MS_PER_DAY)
}
