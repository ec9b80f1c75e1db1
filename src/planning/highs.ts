import loader, { type Highs } from 'highs'

/**
 * A solver of programmes in whole numbers. The package's types are those of its CommonJS form, where the
 * loader is one level deeper than in the module that is loaded here.
 */
export const loadHighs = loader as unknown as () => Promise<Highs>
