import { z } from 'zod'

/** `bends.hinge.insideRadiusMm`: a list, the id of one of its entries, and the field. */
export const assumedMarkSchema = z
  .string()
  .max(100)
  .regex(
    /^(layers|zones|bends|conductors|pads|widthSteps)\.[a-z0-9-]+\.[A-Za-z]+$/,
    'names no value that can be assumed',
  )
