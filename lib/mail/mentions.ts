export interface Mentionable {
  readonly id: string
  readonly name: string
}

/**
 * People whom a text mentions: `@` and the name as the account has it, at the beginning or after a sign that is no part
 * of a word. Where one name begins another, the longer is meant.
 *
 * @param people  who may see the text; nobody else can be mentioned
 * @returns each person once, in the order of the text. Two people of one name are both meant.
 */
export function findMentions<P extends Mentionable>(text: string, people: readonly P[]): P[] {
  const byLength = people.toSorted((a, b) => b.name.length - a.name.length)
  const found = new Map<string, P>()
  for (const match of text.matchAll(/(?<![\p{L}\p{N}_.])@(?=\p{L})/gu)) {
    const rest = text.slice(match.index + 1).toLowerCase()
    const longest = byLength.find(({ name }) => beginsWithName(rest, name.toLowerCase()))
    if (longest === undefined) continue
    for (const person of people) {
      if (person.name.toLowerCase() === longest.name.toLowerCase()) found.set(person.id, person)
    }
  }
  return [...found.values()]
}

function beginsWithName(rest: string, name: string): boolean {
  return rest.startsWith(name) && !/^[\p{L}\p{N}]/u.test(rest.slice(name.length))
}

/** The beginning of a name that is being typed just before the caret; null where none is. */
export function findTypedMention(
  text: string,
  caret: number,
): { readonly start: number; readonly typed: string } | null {
  const match = /(?<![\p{L}\p{N}_.])@([\p{L}][\p{L}\p{N} .'-]{0,60})?$/u.exec(text.slice(0, caret))
  return match === null ? null : { start: match.index, typed: match[1] ?? '' }
}
