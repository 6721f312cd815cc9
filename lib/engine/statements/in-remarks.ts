/**
 * Facts that people write into answers, waivers and conditions, each with the words that mark it. As in names and notes, a number without its words
 * is not read, and what is read is only held against what the program knows.
 */
const PARTS_PER_PANEL =
  /(?<![\d.,])(\d{1,3}(?:[ ,]\d{3})+|\d+)\s+(?:parts?|circuits?|pieces?)\s+(?:per|on|to|from)\b[^.;:]{0,40}?\bpanel/giu
const SHARE_CHEAPER = /(?<![\d.,])(\d+(?:[.,]\d+)?)\s*%\s+(?:cheaper|less|saved)\b/giu
const NOTE_NUMBERS = /\bnotes?\s+(?:no\.?\s*|number\s+)?(\d{1,3})\b(?!\s*(?:mm|um|µm|%))/giu
const NAMED_THICKNESS =
  /(?<![\d.,])(\d+(?:[.,]\d+)?)\s*(?:µm|μm|um)\s+(?:[a-z-]+\s+){0,2}?(?:copper|foil|clad|coverlay|film|polyimide|adhesive|stiffener)\b/giu

/** How parts are cut, by the words that people use for it. */
const CUTS = {
  laser: /\blaser/iu,
  punch: /\bpunch/iu,
  die: /\b(?:hard[- ]die|die[- ]cut|cut by (?:a )?die)\b/iu,
  rout: /\brout(?:ed|er|ing)\b/iu,
  'steel-rule': /\bsteel[- ]rule/iu,
  drill: /\bdrill(?:ed|ing)?\b/iu,
} as const

export type Cut = keyof typeof CUTS

const toNumber = (digits: string | undefined): number => Number((digits ?? '').replace(/[ ]/g, '').replace(',', '.'))

const readAll = (text: string, pattern: RegExp): number[] =>
  [...text.matchAll(pattern)].map((match) => toNumber(match[1]))

/** How many parts a panel holds, as somebody says. */
export function readPartsPerPanel(text: string): number[] {
  return [...text.matchAll(PARTS_PER_PANEL)].map((match) => Number((match[1] ?? '').replace(/[ ,]/g, '')))
}

/** Percent that something else costs less. */
export const readSavingsPct = (text: string): number[] => readAll(text, SHARE_CHEAPER)

/** Numbers of notes on the drawing. */
export const readNoteNumbers = (text: string): number[] => readAll(text, NOTE_NUMBERS)

/** Micrometres of something that is named with them: `12 µm foil`. */
export const readNamedThicknesses = (text: string): number[] => readAll(text, NAMED_THICKNESS)

/** How a thing is cut, by the sentences that name the thing. */
export function readCuts(text: string, thing: RegExp): Cut[] {
  const sentences = text.split(/(?<=[.;!?])\s+/u).filter((sentence) => thing.test(sentence))
  return (Object.keys(CUTS) as Cut[]).filter((cut) => sentences.some((sentence) => CUTS[cut].test(sentence)))
}
