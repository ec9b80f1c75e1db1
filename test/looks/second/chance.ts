/** Chance for the second maker: xorshift32, begun anew for each photo; one is drawn at a time. */
let s = 1
export const reseed = (n: number) => {
  s = (n * 2654435761) >>> 0 || 1
  for (let i = 0; i < 10; i++) share()
}
export function share() {
  s ^= s << 13
  s ^= s >>> 17
  s ^= s << 5
  return (s >>> 0) / 2 ** 32
}
export const between = (a: number, b: number) => a + (b - a) * share()
export const whole = (a: number, b: number) => Math.floor(between(a, b + 1))
export const oneOf = <T>(x: readonly T[]): T => x[Math.floor(share() * x.length)]!
export const coloured = (h: number, sa: number, l: number) =>
  `hsl(${h.toFixed(0)},${sa.toFixed(0)}%,${l.toFixed(0)}%)`
export const anyColour = () =>
  share() < 0.3
    ? coloured(0, 0, between(5, 97))
    : coloured(between(0, 360), between(15, 90), between(12, 88))
export const cloth = () =>
  share() < 0.15
    ? coloured(between(0, 60), between(0, 8), between(90, 98))
    : share() < 0.18
      ? coloured(between(0, 360), between(0, 20), between(7, 16))
      : share() < 0.25
        ? coloured(between(0, 360), between(0, 10), between(20, 80))
        : coloured(between(0, 360), between(20, 85), between(20, 80))
// silhouettes in unit box about centre, y down, half-shapes mirrored with jitter
