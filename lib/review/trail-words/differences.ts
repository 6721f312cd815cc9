import { because, word } from './word'

type Differing = { fact: string; said: string; against: string; reason: string }

/** Where words and numbers differ, and what was decided on it. */
export const DIFFERENCE_WORDS = {
  'difference-let-stand': word<Differing>()({
    subject: 'difference',
    sentence: (details) =>
      `let stand that ${details.text('said')} differs from ${details.text('against')} (${details.text('fact')})${because(details)}`,
  }),
  'difference-taken-up': word<Differing>()({
    subject: 'difference',
    sentence: (details) =>
      `no longer lets stand that ${details.text('said')} differs from ${details.text('against')} (${details.text('fact')})${because(details)}`,
  }),
} as const
