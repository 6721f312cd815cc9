/** A message before it has a form: the plain text and the HTML are both made from it, so they say the same. */
export interface Letter {
  readonly subject: string
  readonly paragraphs: readonly string[]
  /** What somebody wrote, set off from our own words. */
  readonly quote?: string | null
  readonly list?: readonly { readonly text: string; readonly href: string }[]
  /** The one next act. */
  readonly act?: { readonly label: string; readonly href: string }
  /** Why the person gets it, and how to do without. */
  readonly footer: string
}

export interface MailText {
  readonly subject: string
  readonly text: string
  readonly html: string
}

/** RFC 5322 (2008), 2.1.1: a line has at most 998 characters; readers cut a subject far earlier. */
const LONGEST_SUBJECT = 150
const LONGEST_QUOTE = 2_000

export function renderLetter(letter: Letter): MailText {
  const quote = letter.quote ? shorten(letter.quote, LONGEST_QUOTE) : null
  return {
    subject: makeSubject(letter.subject),
    text: renderText(letter, quote),
    html: renderHtml(letter, quote),
  }
}

/** A header is one line: whatever would end it or hide in it is a space. */
function makeSubject(subject: string): string {
  return shorten(subject.replaceAll(/[\p{Cc}\p{Zl}\p{Zp}\s]+/gu, ' ').trim(), LONGEST_SUBJECT)
}

function shorten(text: string, longest: number): string {
  const signs = [...text]
  return signs.length <= longest ? text : `${signs.slice(0, longest - 1).join('')}…`
}

function renderText({ paragraphs, list, act, footer }: Letter, quote: string | null): string {
  const parts = [
    ...paragraphs,
    ...(quote === null
      ? []
      : [
          quote
            .split(/\r?\n/)
            .map((line) => `> ${line}`)
            .join('\n'),
        ]),
    ...(list === undefined ? [] : [list.map(({ text, href }) => `- ${text}\n  ${href}`).join('\n')]),
    ...(act === undefined ? [] : [`${act.label}:\n${act.href}`]),
    `-- \n${footer}`,
  ]
  return `${parts.join('\n\n')}\n`
}

const PAGE = 'font:15px/1.45 sans-serif;color:#1c2126;background:#ffffff;max-width:40em'

function renderHtml({ paragraphs, list, act, footer }: Letter, quote: string | null): string {
  const parts = [
    ...paragraphs.map((paragraph) => `<p>${escapeHtml(paragraph)}</p>`),
    ...(quote === null
      ? []
      : [
          `<blockquote style="margin:0;padding-left:1em;border-left:3px solid #8a949e;white-space:pre-wrap">${escapeHtml(quote)}</blockquote>`,
        ]),
    ...(list === undefined
      ? []
      : [`<ul>${list.map((entry) => `<li>${link(entry.href, entry.text)}</li>`).join('')}</ul>`]),
    ...(act === undefined ? [] : [`<p>${link(act.href, act.label)}</p>`]),
    `<p style="color:#59636e;font-size:13px">${escapeHtml(footer)}</p>`,
  ]
  return `<!doctype html>\n<html lang="en"><head><meta charset="utf-8"></head><body style="${PAGE}">\n${parts.join('\n')}\n</body></html>\n`
}

function link(href: string, text: string): string {
  return `<a href="${escapeHtml(href)}">${escapeHtml(text)}</a>`
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

function escapeHtml(text: string): string {
  return text.replaceAll(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign)
}
