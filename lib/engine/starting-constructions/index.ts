export { beginWithKept, makeKeptConstruction } from './kept'
export {
  findStartingConstruction,
  listStartingConstructions,
} from './starting-constructions'
