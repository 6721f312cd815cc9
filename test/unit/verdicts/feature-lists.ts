/** The lists of features whose silence a review once took for "none". */
export const FEATURE_LISTS = [
  'conductors',
  'holes',
  'pads',
  'outlineCorners',
  'widthSteps',
  'coverlayOpenings',
  'slits',
  'components',
] as const
