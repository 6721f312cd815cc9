/** Raised whenever the same files are drawn otherwise: kept pictures of the version before are then made again. */
export const PICTURE_VERSION = '1'
