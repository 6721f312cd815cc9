/** A file's name out of a design's. */
export function makeFileStem(name: string): string {
  const stem = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
  return stem === '' ? 'design' : stem
}
