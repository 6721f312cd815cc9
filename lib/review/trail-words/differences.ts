import { because, word } from './word'

type Differing = { fact: string; said: string; against: string; reason: string }

/** Where words and numbers differ, and what was decided on it. */
export const DIFFERENCE_WORDS = {
  'difference-let-stand': word<Differing>()({
    subject: 'difference',
    sentence: (details) =>
      `let stand: ${details.text('fact')}, ${details.text('said')}; against it: ${details.text('against')}${because(details)}`,
  }),
  'difference-taken-up': word<Differing>()({
    subject: 'difference',
    sentence: (details) =>
      `took up again: ${details.text('fact')}, ${details.text('said')}; against it: ${details.text('against')}${because(details)}`,
  }),
} as const
