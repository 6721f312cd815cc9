import type { Waiver } from '@/lib/review'
import { asSentence } from './words'

/**
 * What a waiver is given for, sentence by sentence: consequence, parts, last day, and the customer's word.
 * @param shorten  for places with little room; how many parts and until when is never cut
 */
export function listWaiverTerms(waiver: Waiver, shorten: (text: string) => string = (text) => text): string[] {
  const { consequence = '', customerConsent = '', quantityLimit = null, validUntil = null } = waiver
  return [
    ...(consequence === ''
      ? []
      : [`Consequence: ${asSentence(shorten(consequence)).replace(/^./, (letter) => letter.toLowerCase())}`]),
    ...(quantityLimit === null ? [] : [`At most ${quantityLimit} parts.`]),
    ...(validUntil === null ? [] : [`Until ${validUntil}.`]),
    ...(customerConsent === '' ? [] : [`Customer’s consent: ${asSentence(shorten(customerConsent))}`]),
  ]
}
