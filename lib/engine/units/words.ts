/** With a capital first, as a sentence or a head of a table begins. */
export function capitalise(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
