export {
  findStartingConstruction,
  listStartingConstructions,
} from './starting-constructions'
