/** Milliseconds since 1970, UTC. Handed in, so that a test can hold time still. */
export type Clock = () => number

export const systemClock: Clock = () => Date.now()

export const days = (n: number): number => n * 24 * 60 * 60 * 1000
