import type { Art } from './art.ts'
import { fromSvg } from './raster.ts'

/** Shapes that stand in for the drawings of a package, which need not be at hand. */
export const standInArt: Art = {
  pick: (chance) => {
    const fill = chance.one(['#d22', '#28c', '#3a3', '#fd2', '#111'])
    const points = Array.from({ length: 10 }, (_, n) => {
      const far = n % 2 === 0 ? 100 : 45
      const way = (n * Math.PI) / 5
      return `${100 + far * Math.sin(way)},${100 - far * Math.cos(way)}`
    })
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 200"><polygon points="${points.join(' ')}" fill="${fill}"/></svg>`
    return fromSvg(svg, 200, 200)
  },
}
